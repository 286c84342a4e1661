import { describe, expect, it } from 'vitest';
import { planSession } from '../../../src/bench/plan.ts';
import { pointsOfPlan } from '../../../src/bench/points.ts';
import { Headings } from '../../../src/cli/record/headings.ts';
import { feedbackLine, promptAt, refusalLines } from '../../../src/output/bench/recordText.ts';
import { writtenLines } from '../../../src/output/escape/line.ts';
import { textStyle } from '../../../src/shell/process/terminal.ts';
import { limitsOf, shopOf } from '../../shopOf.ts';

const { engine, registry } = shopOf({
  'shop.yaml':
    'kind: shop\ngrids: { main_journal: { stations: [front, rear], directions: [throw, square] } }\n',
  'e/engine.yaml':
    'kind: engine\nname: A\nunits: { length: in }\nlayout: { cylinders: 2, crankpins: 2, mains: 3 }\nlabels: { main: { 1: free end } }\n',
  'e/limits.yaml': limitsOf(
    'main_journal_diameter: { new: 3.2470 to 3.2485, wear: { min: 3.2460 } }\ncrankshaft_end_play: { wear: { max: 0.012 } }',
  ),
});
if (engine === undefined) throw new Error('the documents are not sound');
const plan = planSession(engine, registry, { stage: 'teardown' });
const points = pointsOfPlan(plan);

const about = (width: number) => ({
  engine,
  registry,
  style: { ...textStyle({}, {}, false), width },
});
const known = { last: '3.2478', now: undefined, nominal: undefined, again: false };

describe('a prompt in a narrow window', () => {
  it.each([40, 60, 80, 100])(
    'of %i columns leaves room to type, and keeps limits and last reading',
    (width) => {
      for (const point of points) {
        const { text, above } = promptAt({ point, ...known }, about(width));
        const wide = promptAt({ point, ...known }, about(1000));
        const [, beside = ''] = /\[(.*)\]/.exec(text) ?? [];
        const [, all = ''] = /\[(.*)\]/.exec(wide.text) ?? [];
        expect([above, beside].filter(Boolean).join('; ')).toBe(all);
        if (width >= 60) expect(text.length).toBeLessThanOrEqual(width - 10);
      }
      expect(points.length).toBeGreaterThan(6);
    },
  );

  it('says limits above it once for positions that share them, and again below a new heading', () => {
    const headings = new Headings(about(60));
    const [block] = plan.blocks;
    if (block === undefined) throw new Error('nothing is planned');
    const limits = 'new 3.2470 to 3.2485, wear min 3.2460';
    headings.above(block, 'mic', undefined);
    expect(writtenLines(headings.known(limits))).toBe(`  ${limits}\n`);
    expect(headings.known(limits)).toEqual([]);
    headings.above(block, 'another', undefined);
    expect(headings.known(limits)).toHaveLength(1);
  });

  it('wraps headings, what is said of a reading, and why a line was not taken', () => {
    const { style } = about(60);
    const zero = { setTo: '3.2500', counts: 'tenths' as const };
    const long = 'a word and another, '.repeat(8);
    const lines = writtenLines([
      ...plan.blocks.flatMap((each) => new Headings(about(60)).above(each, 'a-micrometer-of-the-shop', zero)),
      ...feedbackLine({ severity: 'error', word: 'out', message: long }, style, false),
      ...refusalLines(long, style),
    ]).split('\n');
    for (const line of lines) expect(line.replaceAll('\u0007', '').length).toBeLessThanOrEqual(60);
    expect(lines.length).toBeGreaterThan(12);
  });
});
