import { describe, expect, it } from 'vitest';
import { refusalsOf, sessionOf } from '../shopOf.ts';

const ENGINE =
  'kind: engine\nname: E\nunits: { length: in }\nlayout: { cylinders: 4, mains: 3, crankpins: 4 }\n';
const told = (blocks: string, more = '') =>
  refusalsOf({ 'e/engine.yaml': ENGINE, 'e/s.yaml': sessionOf('teardown', blocks, more) }).map((each) =>
    each.replace(/^e.s.yaml:/, ''),
  );
const BLOCK = '- { measure: cylinder_bore, at: { 1: 4.1 } }';

describe('what the loader refused is reported once', () => {
  it.each([
    ['an alias for a reading', '- { measure: cylinder_bore, at: { 1: *a } }', '', ['5:40 alias']],
    ['an alias for what is measured', '- { measure: *a, at: { 1: 4.1 } }', '', ['5:16 alias']],
    ['an alias for all positions', '- { measure: cylinder_bore, at: *a }', '', ['5:35 alias']],
    ['an alias for a part', '- { work: honed, on: *a }', '', ['5:24 alias']],
    [
      'an alias for the position of a concession',
      BLOCK,
      'concessions: [{ measure: cylinder_taper, at: *a, up_to: 0.1, reason: r }]\n',
      ['4:46 alias'],
    ],
    [
      'an alias among its positions',
      BLOCK,
      'concessions: [{ measure: cylinder_taper, at: [1, *a], up_to: 0.1, reason: r }]\n',
      ['4:50 alias'],
    ],
    [
      'an escape in a reading',
      '- { measure: cylinder_bore, at: { 1: "4.1\\e" } }',
      '',
      ['5:40 control-character'],
    ],
    ['a control in a quoted text', BLOCK, 'by: "a\x1bb"\n', ['4:7 control-character']],
    ['an escape in a text', BLOCK, 'by: "a\\eb"\n', ['4:5 control-character']],
    [
      'an escape in a key',
      '- { measure: cylinder_bore, at: { "1\\e": 4.1, 1: 4.1 } }',
      '',
      ['5:37 control-character'],
    ],
  ])('%s', (_, blocks, more, expected) => expect(told(blocks, more)).toEqual(expected));
});
