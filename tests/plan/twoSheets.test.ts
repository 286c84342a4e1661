import { describe, expect, it } from 'vitest';
import { type PageChoice, pageOf } from '../../src/cli/plan/pages.ts';
import { NO_OFFERS } from '../../src/documents/parts/offeredPart.ts';
import { writtenLines } from '../../src/output/escape/line.ts';
import { pageLines } from '../../src/output/plan/pageText.ts';
import { textStyle } from '../../src/shell/process/terminal.ts';
import { type Files, limitsOf, REGISTER, reportOf, sessionOf } from '../shopOf.ts';

/** Sixty lines on each: letter or A4 at six lines to the inch, with a margin. */
const TWO_SHEETS = 120;

const all = (count: number, reading: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => `${index + 1}: ${reading(index)}`).join(', ');

/** A vee of twelve of which nothing can stay as it is: every journal, pin and bore worn by amounts of its own. */
const WORN_OUT: Files = {
  'shop.yaml': 'kind: shop\nunits: { length: in }\n',
  'register.yaml': REGISTER,
  'e/engine.yaml':
    'kind: engine\nname: Twelve\nunits: { length: in }\nlayout: { cylinders: 12, mains: 7, crankpins: { 1: [1, 2], 2: [3, 4], 3: [5, 6], 4: [7, 8], 5: [9, 10], 6: [11, 12] } }\n',
  'e/limits.yaml': limitsOf(`main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }
main_journal_out_of_round: { new: { max: 0.0003 }, wear: { max: 0.0010 } }
crankpin_diameter: { new: 2.4980 to 2.4990, wear: { min: 2.4970 } }
rod_side_clearance: { new: 0.006 to 0.010, wear: { max: 0.014 } }
crankshaft_end_play: { new: 0.004 to 0.008, wear: { max: 0.012 } }
cylinder_bore: { new: 4.2500 to 4.2510, wear: { max: 4.2550 } }
cylinder_out_of_round: { new: { max: 0.0005 }, wear: { max: 0.0020 } }`),
  'e/session.yaml': sessionOf(
    'teardown',
    `- { measure: main_journal_diameter, with: mic, at: { ${all(7, (n) => `[2.99${60 - n}, 2.99${45 - n}]`)} }, directions: [throw, square] }
- { measure: crankpin_diameter, with: mic, at: { ${all(6, (n) => `2.49${60 - n}`)} } }
- { measure: rod_side_clearance, at: { ${all(6, (n) => `0.0${15 + n}`)} } }
- { measure: crankshaft_end_play, value: 0.018 }
- { measure: cylinder_bore, with: bore, directions: [thrust, axial], at: { ${all(12, (n) => `[4.2${600 + n}, 4.2570]`)} } }`,
    `found:
  - { on: main 3 shell lower, is: wiped to copper, do: renew }
  - { on: crankpin 2, is: scored, do: machine, depth: 0.002 }
  - { on: head, is: warped, do: machine }
  - { on: oil pump, is: gears scored, do: renew }
  - { on: piston 4, is: cracked in its skirt, do: renew }
`,
  ),
};

const PAGES: readonly (readonly [name: string, choice: PageChoice])[] = [
  ['the work', {}],
  ['the page for the customer', { for: 'customer' }],
  ['the page for the machine shop', { for: 'machine-shop' }],
  ['the order list', { order: true }],
  ['the closing page', { closing: true }],
];

describe('of an engine of which nothing can stay as it is', () => {
  const report = reportOf(WORN_OUT);
  const style = textStyle({ isTTY: true, columns: 80 }, { NO_COLOR: '1' }, false);

  it.each(PAGES)('%s takes two sheets at most', (_, choice) => {
    const lines = writtenLines(pageLines(pageOf(choice, report, report.engine, () => NO_OFFERS).page, style))
      .trimEnd()
      .split('\n');
    expect(lines.length).toBeLessThanOrEqual(TWO_SHEETS);
    expect(Math.max(...lines.map((each) => each.length))).toBeLessThanOrEqual(80);
    if (choice.closing !== true) expect(lines.join('\n')).toMatch(/grind|ground|shells|machine/);
  });
});
