import { describe, expect, it } from 'vitest';
import { type Files, limitsOf, reportOf } from '../../shopOf.ts';

const LIMITS = `piston_protrusion: { new: -0.0160 to -0.0030 }
liner_protrusion: { new: 0.0010 to 0.0050, wear: { min: 0.0005 } }
valve_lash_cold: { new: 0.0125 to 0.0155 }
valve_lash_hot: { new: 0.0085 to 0.0115 }
valve_stem_clearance: { new: 0.0012 to 0.0031, wear: { max: 0.0054 } }
valve_rock: { wear: { max: 0.0140 } }
compression_ratio: { new: 7 to 9 }
piston_crown_volume: { new: 9 to 11 }`;

const shop = (blocks: string): Files => ({
  'shop.yaml': 'kind: shop\nunits: { length: in, volume: cc }\n',
  'register.yaml': `kind: instruments
instruments:
  bridge: { type: dial indicator, resolution: 0.0005 in, max_error: 0.0005 in }
  dial: { type: dial indicator, resolution: 0.0005 in, max_error: 0.0005 in }
  feelers: { type: feeler gauge, max_error: 0.0002 in }
  burette: { type: burette, resolution: 0.1 cc, max_error: 0.1 cc }
  hole: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in }
`,
  'e/engine.yaml':
    'kind: engine\nname: A\nunits: { length: in, volume: cc }\nlayout: { cylinders: 4, mains: 5, crankpins: 4, valves: [I, E] }\nsizes: { bore: 4.0000, stroke: 4.0000 }\n',
  'e/limits.yaml': limitsOf(LIMITS),
  'e/s.yaml': `kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings:\n${blocks}\n`,
});

/** What is said of slips, without the numbers of the place. */
const said = (blocks: string): readonly string[] =>
  (reportOf(shop(blocks)).sessions[0]?.findings ?? [])
    .filter(({ code }) => code === 'reading/implausible' || code === 'reading/impossible')
    .map(({ message }) => message);

const cylinders = (measure: string, gauge: string, readings: readonly string[]): string =>
  `  - { measure: ${measure}, with: ${gauge}, at: { ${readings.map((each, index) => `${index + 1}: ${each}`).join(', ')} } }`;
const valves = (measure: string, gauge: string, reading: string): string =>
  cylinders(measure, gauge, Array(4).fill(`{ I: ${reading}, E: ${reading} }`));

/** A bore of 4 in, a stroke of 4 in, crowns and gasket as their limits have them: 7.9 to 1 over 96 cc. */
const ROOM = `${cylinders('cylinder_bore', 'hole', Array(4).fill('4.0004'))}
${cylinders('deck_volume', 'burette', Array(4).fill('2.1'))}
${cylinders('piston_crown_volume', 'burette', Array(4).fill('10.2'))}
${cylinders('gasket_volume', 'burette', Array(4).fill('8.4'))}`;

describe('a slip of the pen is reported', () => {
  it.each([
    [
      'a protrusion with the wrong sign',
      cylinders('piston_protrusion', 'bridge', ['-0.0085', '0.0090', '-0.0085', '-0.0080']),
      'piston protrusion 2: ',
      'the sign',
    ],
    [
      'all of them with the wrong sign',
      cylinders('piston_protrusion', 'bridge', ['0.0085', '0.0090', '0.0085', '0.0080']),
      'piston protrusion: all 4 readings ',
      'the sign',
    ],
    [
      'cubic inches among cubic centimetres',
      cylinders('chamber_volume', 'burette', ['96.2', '96.4', '5.87', '96.3']),
      'chamber volume 3: written 5.87',
      'cubic inches written as cubic centimetres',
    ],
    [
      'all of them in cubic inches, which their own limits show',
      cylinders('piston_crown_volume', 'burette', ['0.62', '0.61', '0.62', '0.63']),
      'piston crown volume: all 4 readings: ',
      'cubic inches written as cubic centimetres',
    ],
    [
      'all of them in cubic inches, which the compression ratio shows',
      `${ROOM}\n${cylinders('chamber_volume', 'burette', ['5.87', '5.88', '5.87', '5.86'])}`,
      'chamber volume: all 4 readings: ',
      'cubic inches written as cubic centimetres',
    ],
    [
      'all of them in cubic centimetres, headed as cubic inches',
      `${ROOM}\n${cylinders('chamber_volume', 'burette', ['96.2 in3', '96.4 in3', '96.2 in3', '96.3 in3'])}`,
      'chamber volume: all 4 readings: ',
      'cubic centimetres written as cubic inches',
    ],
    ['lash read hot', valves('valve_lash_cold', 'feelers', '0.010'), 'valve lash, cold: all 8', 'read hot?'],
    ['lash read cold', valves('valve_lash_hot', 'feelers', '0.014'), 'valve lash, hot: all 8', 'read cold?'],
    [
      'a valve that was rocked',
      valves('valve_stem_clearance', 'dial', '0.0090'),
      'valve stem clearance: all 8',
      'rocked',
    ],
  ])('%s', (_, blocks, about, words) => {
    const [first, ...more] = said(blocks);
    expect(first).toContain(about);
    expect(first).toContain(words);
    expect(more).toEqual([]);
  });
});

describe('nothing is said', () => {
  it.each([
    [
      'of protrusions as they are',
      cylinders('piston_protrusion', 'bridge', ['-0.0085', '-0.0090', '-0.0160', '-0.0030']),
    ],
    [
      'of one piston that stands out',
      cylinders('piston_protrusion', 'bridge', ['-0.0085', '-0.0090', '-0.0085', '-0.0010']),
    ],
    ['of chambers that differ', cylinders('chamber_volume', 'burette', ['96.2', '104.4', '88.0', '96.3'])],
    [
      'of a dish beside flat crowns',
      cylinders('piston_crown_volume', 'burette', ['21.2', '21.4', '21.0', '21.3']),
    ],
    [
      'of chambers that were cut until the ratio is out',
      `${ROOM}\n${cylinders('chamber_volume', 'burette', ['71.2', '71.4', '71.3', '71.2'])}`,
    ],
    [
      'of chambers and crowns as they are',
      `${ROOM}\n${cylinders('chamber_volume', 'burette', ['96.2', '96.4', '96.3', '96.2'])}`,
    ],
    [
      'of small chambers where nobody wrote what the ratio stands on',
      cylinders('chamber_volume', 'burette', ['5.87', '5.88', '5.87', '5.86']),
    ],
    ['of cold lash, some of it tight', valves('valve_lash_cold', 'feelers', '0.014')],
    ['of lash that is out both ways', valves('valve_lash_cold', 'feelers', '0.019')],
    [
      'of one liner a little below the deck',
      cylinders('liner_protrusion', 'bridge', ['0.0020', '0.0022', '-0.0004', '0.0021']),
    ],
    ['of a worn guide', valves('valve_stem_clearance', 'dial', '0.0050')],
    [
      'of guides that are worn out, by a gauge that does not rock them',
      cylinders('valve_stem_clearance', 'hole', Array(4).fill('{ I: 0.0031, E: 0.0065 }')),
    ],
    ['of valves that were rocked, and are said to be', valves('valve_rock', 'dial', '0.0090')],
  ])('%s', (_, blocks) => expect(said(blocks)).toEqual([]));
});
