import { describe, expect, it } from 'vitest';
import { pageOf } from '../../../src/cli/plan/pages.ts';
import { NO_OFFERS } from '../../../src/documents/parts/offeredPart.ts';
import { writtenLines } from '../../../src/output/escape/line.ts';
import { pageLines } from '../../../src/output/plan/pageText.ts';
import { reportWithPlan } from '../../../src/plan/reportWithPlan.ts';
import { textStyle } from '../../../src/shell/process/terminal.ts';
import { type Files, limitsOf, reportOf, shopOf } from '../../shopOf.ts';

const READ = `readings:
  - { measure: head_flatness, at: { L: 0.13, R: 0.14 } }
  - { measure: head_crack_test, at: { 1: pass, 2: pass, 3: pass, 4: pass } }
`;

const vee = (more: string, read = READ): Files => ({
  'e/engine.yaml': `kind: engine
name: Vee
units: { length: mm, torque: N m }
layout: { cylinders: 4, mains: 3, crankpins: { 1: [1, 3], 2: [2, 4] }, banks: { L: [1, 2], R: [3, 4] }, valves: [I, E] }
`,
  'e/limits.yaml': limitsOf('head_flatness: { new: { max: 0.05 }, wear: { max: 0.10 } }'),
  'e/session.yaml': `kind: session\nstage: teardown\ndate: 2026-03-01\n${more}${read}`,
});

function textOf(files: Files, reader: 'customer' | 'machine-shop'): string {
  const report = reportOf(files);
  const style = textStyle({ isTTY: true, columns: 200 }, { NO_COLOR: '1' }, false);
  const { page } = pageOf({ for: reader }, report, report.engine, () => NO_OFFERS);
  return writtenLines(pageLines(page, style)).replace(/\s+/g, ' ');
}

function asked(files: Files): readonly string[] {
  const { engine, registry } = shopOf(files);
  if (engine === undefined) throw new Error('not sound');
  return (reportWithPlan(engine, registry, {}).state?.findings ?? [])
    .filter(({ code }) => code.startsWith('plan/'))
    .map(({ message }) => message);
}

describe('each head of a vee goes to the machine shop by itself', () => {
  const AGREED = 'agreed: { by: Owner, date: 2026-03-02, items: [surface cylinder heads L and R] }\n';

  it('with its own mark, and to where it was sent', () => {
    const text = textOf(
      vee(
        `${AGREED}fitted: { head: { at: { L: { mark: H1 }, R: { mark: H2 } } } }\nsent: { part: head L, to: North milling, work: [surface head L] }\n`,
      ),
      'machine-shop',
    );
    expect(text).toContain('cylinder head L, cylinder head R; only what the customer agreed to');
    expect(text).toContain(
      'cylinder head L, marked H1 - to North milling surface cylinder head L - head flatness L: 0.13 mm',
    );
    expect(text).toContain('your figures: L ________ [ ]');
    expect(text).toContain('cylinder head R, marked H2 surface cylinder head R - head flatness R: 0.14 mm');
  });

  it('and one without a mark is to be marked', () => {
    const text = textOf(
      vee(`${AGREED}sent: { part: right head, mark: H7, to: North milling, work: [surface head R] }\n`),
      'machine-shop',
    );
    expect(text).toContain('cylinder head L, no mark stated');
    expect(text).toContain('cylinder head R, marked H7 - to North milling');
  });

  it.each(['head L', 'right head', 'cylinder heads'])('sent as %s: nothing to ask', (part) => {
    expect(
      asked(vee(`${AGREED}sent: { part: ${part}, to: North milling, work: [surface head L] }\n`)),
    ).toEqual([]);
  });
});

const TO_LEFT = ['surface head L', 'skim head L', 'surface cylinder head L', 'resurface left head'];

describe('a yes to one head of a vee', () => {
  it.each(TO_LEFT)('%s is no yes to the other', (item) => {
    const text = textOf(vee(`agreed: { by: Owner, date: 2026-03-02, items: [${item}] }\n`), 'machine-shop');
    expect(text).toContain('cylinder head L; only what the customer agreed to');
    expect(text).toContain('not agreed yet, not to be done - surface cylinder head R');
  });

  it.each(TO_LEFT)('%s is a yes where the other needs nothing', (item) => {
    const files = vee(
      `agreed: { by: Owner, date: 2026-03-02, items: [${item}] }\n`,
      READ.replace('0.14', '0.03'),
    );
    expect(textOf(files, 'machine-shop')).toContain('cylinder head L; only what the customer agreed to');
    expect(asked(files)).toEqual([]);
  });
});

it('the customer reads which head is cracked', () => {
  const text = textOf(vee('', READ.replace('4: pass', '4: fail')), 'customer');
  expect(text).toContain('Tested: cylinder head R is cracked.');
  expect(text).toContain('renew cylinder head R');
});
