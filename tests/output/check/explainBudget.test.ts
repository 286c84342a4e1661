import { describe, expect, it } from 'vitest';
import { atTheBench } from '../../cli/bench.ts';
import { callHere } from '../../inProcess.ts';

const explained = (readings: string, words: readonly string[]): Promise<string> =>
  atTheBench(
    {
      'saw/engine.yaml':
        'kind: engine\nname: Saw\nunits: { length: in, mass: g, volume: cc }\nlayout: { cylinders: 2, mains: 3, crankpins: 2 }\n',
      'saw/limits.yaml':
        'kind: limits\nsource: Invented.\nlimits: { reciprocating_weight: { new: { max: 1000 } }, clearance_volume: { new: { max: 90 } } }\n',
      'saw/register.yaml':
        'kind: instruments\ninstruments:\n  balance: { type: balance, resolution: 0.1 g, max_error: 0.1 g }\n  mic: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in }\n',
      'saw/s.yaml': `kind: session\nstage: trial\ndate: 2026-02-03\nreadings:\n${readings}`,
    },
    async (cwd) => (await callHere(['explain', ...words, 'saw'], { cwd })).stdout,
  );

const WEIGHTS = `  - { measure: piston_weight, with: balance, at: { 1: 583.9 } }
  - { measure: piston_pin_weight, with: balance, at: { 1: 178.4 } }
  - { measure: ring_set_weight, with: balance, at: { 1: 69.5 } }
  - { measure: rod_small_end_weight, with: balance, at: { 1: 162.4 } }
`;

const VOLUMES = `  - { measure: chamber_volume, at: { 1: 48 } }
  - { measure: gasket_volume, at: { 1: 7.2 } }
  - { measure: deck_volume, at: { 1: 1.7 } }
  - { measure: piston_crown_volume, at: { 1: 5 } }
`;

describe('an error budget', () => {
  it('names the weight of which each reading of one balance is', async () => {
    const said = await explained(WEIGHTS, ['reciprocating_weight', '1']);
    expect(said).toMatch(/resolution of balance, piston weight 1, reading 583\.9/);
    expect(said).toMatch(/resolution of balance, piston pin weight 1, reading 178\.4/);
  });

  it('names the volume of which each unnamed burette is', async () => {
    const said = await explained(VOLUMES, ['clearance_volume', '1']);
    for (const volume of ['chamber', 'gasket', 'deck', 'piston crown'])
      expect(said).toMatch(new RegExp(`largest error of an unnamed burette, ${volume} volume`));
  });

  it('names none where all readings are of one input', async () => {
    const bores = '  - { measure: main_journal_diameter, with: mic, at: { 1: 3.2478 } }\n';
    const said = await explained(bores, ['main_journal_diameter', '1']);
    expect(said).toMatch(/resolution of mic, reading 3\.2478/);
  });
});
