import { describe, expect, it } from 'vitest';
import { sessionOf, shopOf } from '../../shopOf.ts';
import { refusedIn } from '../readBlock.ts';

describe('what stands beside other keys and would not be read is refused', () => {
  it.each([
    [
      'steps of what is measured at a main',
      '{ measure: main_journal_diameter, after: [{ step: a, value: 3.1 }] }',
      'value after',
    ],
    [
      'steps of what is measured once',
      '{ measure: crankshaft_end_play, after: [{ step: a, value: 0.006 }] }',
      'value after',
    ],
    [
      'steps beside positions',
      '{ measure: main_journal_diameter, at: { 1: 3.1 }, after: [{ step: a, value: 3.1 }] }',
      'value after',
    ],
    [
      'positions beside the one value',
      '{ measure: crankshaft_end_play, value: 0.006, at: { engine: 0.007 } }',
      'value at',
    ],
    [
      'a base beside the master',
      '{ measure: cylinder_bore, base: 4, set_to: 4.125, at: { 1: 0.001 } }',
      'value base',
    ],
    [
      'one reading beside repeated ones',
      '{ measure: cylinder_bore, at: { 1: { value: 4.1, repeat: [4.2, 4.3] } } }',
      'value value',
    ],
    [
      'the same within a list',
      '{ measure: cylinder_bore, stations: [a, b], at: { 1: [4.1, { value: 4.1, repeat: [4.2] }] } }',
      'value value',
    ],
    [
      'the same of the whole engine',
      '{ measure: crankshaft_end_play, value: { value: 0.006, repeat: [0.007] } }',
      'value value',
    ],
    [
      'a reading beside feelers',
      '{ measure: rod_side_clearance, at: { 1: { go: 0.017, no_go: 0.018, value: 0.0175 } } }',
      'value value',
    ],
    [
      'a reading beside the two halves',
      '{ measure: main_shell_thickness, at: { 1: { value: 0.12, upper: 0.12, lower: 0.12 } } }',
      'value value',
    ],
    [
      'a value beside the running torque',
      '{ measure: turning_torque, after: [{ step: a, running: 3, value: 4 }] }',
      'value value',
    ],
  ])('%s', (_, block, expected) => expect(refusedIn(block)).toEqual([expected]));

  it.each([
    '{ measure: turning_torque, after: [{ step: a, running: 3, breakaway: 4 }] }',
    '{ measure: main_shell_thickness, at: { 1: { upper: 0.12, lower: 0.12, note: worn } } }',
    '{ measure: cylinder_bore, set_to: 4.125, at: { 1: { value: 0.001, was: 0.010, why: misread } } }',
    '{ measure: cylinder_bore, base: 4, at: { 1: { repeat: [0.001], note: rough } } }',
    '{ measure: ring_end_gap, at: { 1: { top: { go: 0.017, no_go: 0.018 } } } }',
  ])('but not %s', (block) => expect(refusedIn(block)).toEqual([]));

  it('with what to write instead', () => {
    const helpOf = (block: string) =>
      shopOf({
        'e/engine.yaml':
          'kind: engine\nname: E\nunits: { length: in, torque: lbf in }\nlayout: { mains: 1 }\n',
        'e/s.yaml': sessionOf('trial', block),
      }).diagnostics[0]?.help;
    expect(helpOf('- { measure: main_journal_diameter, after: [{ step: a, value: 3.1 }] }')).toBe(
      'write `at: { 1: … }`',
    );
    expect(helpOf('- { measure: crankshaft_end_play, after: [{ step: a, value: 0.1 }] }')).toBe(
      'write `value:` and the reading',
    );
    expect(helpOf('- { measure: turning_torque, value: 3 }')).toBe('write `after: [{ step: …, value: … }]`');
  });
});
