import fc from 'fast-check';
import { anyCharacter } from '../../anyCharacter.ts';

export const SESSION = `# yaml-language-server: $schema=../../../schemas/session.json
kind: session
stage: teardown
date: 2026-02-03
temperature: 64 degF
readings:
  - measure: main_journal_diameter
    with: mic-3-4
    stations: [front, rear]
    at:
      1: [[3.2478, 3.2477], [3.2477, 3.2477]]
      2: 3.2475   # a single reading
  - { measure: main_bearing_bore, in: tenths, set_to: 3.2500, at: { 1: +7, 2: 05 } }
  - measure: main_bearing_clearance
    conditions: { bearings: dry, oil_pump: off }
    at: { 5: { value: 0.0045, note: "stayed on the \\"shell\\"" } }
concessions:
  - measure: cylinder_taper
    reason: >
      Standby engine; owner agreed
      to run it.
`;
export const LIMITS = `kind: limits
source: 'Invented for this example. Use the engine maker''s manual.'
limits:
  main_bearing_clearance:
    target: { min: 0.0026, max: 0.0032 }
    at: { 5: { target: { min: 0.0028, max: 0.0036 } } }
  turning_torque: { new: { max: 9 lbf ft } }
  cylinder_taper: { wear: { max: { formula: "0.0005 * bore" } } }
`;

/** Pieces of YAML, and what its readers have stumbled over. */
const TOKENS = [
  ...[
    '- ',
    '? ',
    ': ',
    ', ',
    '[',
    ']',
    '{',
    '}',
    '\n',
    '\n  ',
    '\n    ',
    '\t',
    '\r\n',
    '\r',
    ' ',
    '#',
    ' # x',
    '---\n',
    '...\n',
  ],
  ...[
    '&a',
    '*a',
    '!t ',
    '!!str ',
    '%YAML 1.1\n',
    '%',
    '|',
    '>',
    '|2-\n',
    '"',
    "'",
    '\\',
    '"\\x"',
    '@',
    '`',
    '<<',
    '__proto__',
  ],
  ...[
    'readings:',
    'in: ',
    'at: ',
    '1',
    '05',
    '3,2478',
    '.5',
    '5.',
    '1_0',
    '1:30',
    '0x1',
    'yes',
    'null',
    'a',
    'b: ',
    'é',
    '\ufeff',
  ],
  ...['\0', '\x1b', '\u2028', '\ud800', '日本', '🔧', 'e\u0301'],
];

const soup = fc.array(fc.constantFrom(...TOKENS), { maxLength: 60 }).map((tokens) => tokens.join(''));

/** One of some documents with a few cuts, insertions and doublings. */
export const mutantOf = (texts: readonly string[]): fc.Arbitrary<string> =>
  fc
    .tuple(
      fc.constantFrom(...texts),
      fc.array(fc.tuple(fc.nat(), fc.nat(40), fc.constantFrom('', 'twice', ...TOKENS)), {
        minLength: 1,
        maxLength: 4,
      }),
    )
    .map(([text, edits]) => edits.reduce(edit, text));

export const mutated = mutantOf([SESSION, LIMITS]);

function edit(text: string, [position, length, what]: [number, number, string]): string {
  const start = position % (text.length + 1);
  const cut = text.slice(start, start + length);
  return text.slice(0, start) + (what === 'twice' ? cut + cut : what) + text.slice(start + length);
}

export const anyText = fc.oneof(fc.string({ unit: anyCharacter, maxLength: 80 }), soup, mutated);
