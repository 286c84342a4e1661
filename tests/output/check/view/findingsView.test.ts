import { describe, expect, it } from 'vitest';
import { findingsView } from '../../../../src/output/check/view/findingsView.ts';
import { lastJudged } from '../../../checks/bench.ts';

const shownOf = (limits: string, readings: string): readonly string[] =>
  findingsView(
    lastJudged({
      'engine.yaml': 'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 4 }\n',
      'limits.yaml': `kind: limits\nsource: invented\nlimits: { ${limits} }\n`,
      's.yaml': `kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings: [${readings}]\n`,
    }).findings,
    false,
  ).shown.map(({ message }) => message);

describe('positions that are missing', () => {
  it('are joined to the first of them', () => {
    expect(
      shownOf(
        'main_journal_diameter: { new: 3.2475 to 3.2485 }',
        '{ measure: main_journal_diameter, at: { 1: 3.2480 } }',
      ),
    ).toEqual(['main journal diameter 2 is missing; other positions were measured; likewise at 3, 4']);
  });

  it('of what is worked out say from what, in words', () => {
    expect(
      shownOf(
        'main_journal_taper: { new: { max: 0.0010 } }',
        '{ measure: main_journal_diameter, stations: [front, rear], at: { 1: [3.2480, 3.2481], 2: [3.2480, ~], 3: [3.2480, 3.2481], 4: [3.2480, 3.2481] } }',
      ),
    ).toEqual(['main journal taper 2 cannot be worked out from what was read of main journal diameter']);
  });
});
