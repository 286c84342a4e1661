import { describe, expect, it } from 'vitest';
import { type ComparedState, diffStates } from '../../../src/compare/diff.ts';
import { diffLines } from '../../../src/output/diff/diffText.ts';
import { writtenLines } from '../../../src/output/escape/line.ts';
import { paintWith } from '../../../src/output/terminal/paint.ts';
import { LINES } from '../../../src/output/terminal/picture.ts';
import { widthOf } from '../../../src/output/terminal/width.ts';
import { type Files, session, shop, stateOfFiles } from '../../compare/shop.ts';

const A: ComparedState = { kind: 'session', name: 'teardown 2026-02-03', commit: null };
const B: ComparedState = { kind: 'session', name: 'rebuild 2026-03-14', commit: null };

function told(before: Files, after: Files, width = Number.POSITIVE_INFINITY, all = false): string {
  const [a, b] = [stateOfFiles(shop(before)), stateOfFiles(shop(after))];
  const style = { paint: paintWith(0), width, glyphs: LINES, detail: false };
  const engine = { path: 'engine', name: 'Mill pump', diff: diffStates(a, b), unitFor: b.unitFor };
  return writtenLines(diffLines(engine, { a: A, b: B }, { all }, style));
}

const at = (about: string, clearances: string, instrument = 'bore'): Files => ({
  'engine/a.yaml': session(about, [['main_bearing_clearance', instrument, clearances]]),
});
const TEARDOWN = 'stage: teardown; date: 2026-02-03';
const REBUILD = 'stage: rebuild; date: 2026-03-14';

describe('a comparison in print', () => {
  it('puts what is newly out first, then newly in, then real changes, and counts the rest', () => {
    const before = at(TEARDOWN, '{ 1: 0.0030, 2: 0.0056, 3: 0.0041 }');
    const after = at(REBUILD, '{ 1: 0.0041, 2: 0.0033, 3: 0.0035 }');
    expect(told(before, after)).toBe(`Mill pump  teardown 2026-02-03 → rebuild 2026-03-14

newly out
  main bearing clearance, in
    1  0.0030  0.0041  +0.0011 ±0.00016  ok → out, loose by 3 tenths

newly in
  main bearing clearance, in
    2  0.0056  0.0033  −0.0023 ±0.00016  out → off target, loose by 1 tenth

changed
  main bearing clearance, in
    3  0.0041  0.0035  −0.0006 ±0.00016  worn → off target, loose by 3 tenths

before, after, change of the mean ± its uncertainty (95 %)
`);
  });

  it('says of a change that is within its uncertainty that it is, even where the verdict changed', () => {
    const text = told(at(TEARDOWN, '{ 1: 0.0050, 2: 0.0030 }'), at(TEARDOWN, '{ 1: 0.0051, 2: 0.0030 }'));
    expect(text).toContain(
      '1  0.0050  0.0051  +0.0001 within ±0.00016  worn → out, loose by 1 tenth, near a limit',
    );
    expect(text).toContain('1 the same: --all lists them');
  });

  it('says once what all rows of a kind share, and beside a row what only it has', () => {
    const before = at(TEARDOWN, '{ 1: 0.0041, 2: 0.0042 }');
    const shared = told(before, at(TEARDOWN, '{ 1: 0.0031, 2: 0.0032 }', 'mic'));
    expect(shared).toContain('main bearing clearance, in  other instrument\n');
    expect(shared.match(/other instrument/g)).toHaveLength(1);
  });

  it('tells temperatures once, above everything, where they are more than a few degrees apart', () => {
    const warm = (degrees: number): Files =>
      at(`${TEARDOWN}; temperature: ${degrees} degF`, '{ 1: 0.0041, 2: 0.0042 }');
    expect(told(warm(64), warm(66))).not.toContain('temperature');
    const text = told(warm(64), warm(81), 80, true);
    expect(text.match(/temperature/g)).toHaveLength(1);
    expect(text.split('\n')[1]).toBe('at other temperatures: 64 degF, then 81 degF');
  });

  it('an accepted deviation is said to be out, and the concession to be opened', () => {
    const conceded = `${session(TEARDOWN, [['main_bearing_clearance', 'bore', '{ 1: 0.0055 }']])}concessions:\n  - { measure: main_bearing_clearance, at: 1, up_to: 0.0060, reason: the owner agreed }\n`;
    const text = told(at(TEARDOWN, '{ 1: 0.0045 }'), { 'engine/a.yaml': conceded });
    expect(text).toContain('worn → out, accepted: loose by 5 tenths');
    expect(text).toContain('concessions opened\n  main bearing clearance 1, up to 0.0060: the owner agreed');
  });

  it('names what was measured on one side only, and that it was out', () => {
    const text = told(at(TEARDOWN, '{ 1: 0.0041, 2: 0.0056 }'), at(TEARDOWN, '{ 1: 0.0041, 3: 0.0030 }'));
    expect(text).toContain('measured only after\n  main bearing clearance  3\n');
    expect(text).toContain('measured only before\n  main bearing clearance  2 (out)\n');
  });

  it.each([60, 72, 80, 100, 120])('fits a window of %d columns', (width) => {
    const before = at(TEARDOWN, '{ 1: { front: 0.0030, rear: 0.0031 }, 2: 0.0056, 3: 0.0041 }');
    const after = at(REBUILD, '{ 1: { front: 0.0039, rear: 0.0040 }, 2: 0.0033 }', 'mic');
    const text = told(before, after, width);
    expect(Math.max(...text.split('\n').map(widthOf))).toBeLessThanOrEqual(width);
    for (const word of ['newly out', 'newly in', 'other instrument', '0.0030 to 0.0031', '+0.0009']) {
      expect(text).toContain(word);
    }
  });

  it('shows a name that holds a control as what it is', () => {
    const state = stateOfFiles(shop(at(TEARDOWN, '{ 1: 0.0041 }')));
    const engine = {
      path: 'e',
      name: 'a\u001b[31m\nb',
      diff: diffStates(state, state),
      unitFor: state.unitFor,
    };
    const style = { paint: paintWith(0), width: 80, glyphs: LINES, detail: false };
    expect(writtenLines(diffLines(engine, { a: A, b: B }, { all: false }, style))).toMatch(
      /^a\\u\{1b\}\[31m\\nb {2}/,
    );
  });
});
