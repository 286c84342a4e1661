import { describe, expect, it } from 'vitest';
import { engine, journals, standing, type Told } from './standing.ts';

const MEASURE = 'main_journal_diameter';
const fitted = (says: string): string => `fitted: { crankshaft: { ${says} } }`;

/**
 * A used shaft of which journal 2 was read, and what a later session says is fitted, in which a worn journal 1 is read: whether
 * the first reading holds, and whether the shaft still counts as used.
 */
function told(
  first: string,
  then: string,
  between: readonly Told[] = [],
): readonly [holds: boolean, isUsed: boolean] {
  const files = engine(
    ['machined', journals('2: 2.9985'), fitted([first, 'condition: used'].filter(Boolean).join(', '))],
    ...between,
    ['rebuild', journals('1: 2.9970'), fitted(then)],
  );
  return [standing(files, MEASURE, '2').includes('2.9985'), standing(files, MEASURE, '1') === '2.9970 worn'];
}

const [SAME, ANOTHER] = [
  [true, true],
  [false, false],
];

describe('what is said to be fitted', () => {
  it.each([
    ['of another mark', 'mark: K1', 'mark: K2'],
    ['of another code', 'code: A1', 'code: A2'],
    ['of another size', 'crankpin: 0.010 under', 'crankpin: 0.020 under'],
    ['of one mark and another size', 'mark: K1, crankpin: 0.010 under', 'mark: K1, crankpin: 0.020 under'],
    ['of one mark, and a size for the first time', 'mark: K1', 'mark: K1, crankpin: 0.010 under'],
    ['of a size for the first time', '', 'crankpin: 0.010 under'],
  ])('is another part, or was made anew: %s', (_, first, then) => {
    expect(told(first, then)).toEqual(ANOTHER);
  });

  it.each([
    ['the same again', 'mark: K1, crankpin: 0.010 under', 'mark: K1, crankpin: 0.010 under'],
    ['with fewer details', 'mark: K1, crankpin: 0.010 under', 'mark: K1'],
    ['with its mark for the first time', '', 'mark: K1'],
    ['with its code for the first time', 'mark: K1', 'mark: K1, code: A1'],
    ['without its mark, and its code for the first time', 'mark: K1', 'code: A1'],
    ['with the size that it had anyway', 'mark: K1', 'mark: K1, crankpin: std'],
    ['unmarked, with the size that it had anyway', '', 'crankpin: std'],
  ])('is the same part: %s', (_, first, then) => {
    expect(told(first, then)).toEqual(SAME);
  });

  it('is another where a session between says nothing of its mark', () => {
    expect(told('mark: K1', 'mark: K2', [['trial', '', fitted('condition: used')]])).toEqual(ANOTHER);
  });

  it.each([
    ['marked', 'mark: K1, main: std', 'mark: K1, main: 0.010 under', ', size: 0.010 under'],
    ['unmarked', 'main: std', 'main: 0.010 under', ', size: 0.010 under'],
    ['of which nobody said a size', 'mark: K1', 'mark: K1, main: 0.010 under', ', size: 0.010 under'],
    ['ground to a size that is stated later', 'mark: K1', 'mark: K1, main: 0.010 under', ''],
  ])('keeps what was read after it was ground to that size: %s', (_, first, then, size) => {
    const files = engine(
      ['teardown', journals('2: 2.9985'), fitted(`${first}, condition: used`)],
      ['machined', journals('2: 2.9885'), `machined: [{ part: main journals${size} }]`],
      ['rebuild', '', fitted(then)],
    );
    expect(standing(files, MEASURE, '2')).toBe('2.9885 ok');
  });

  it.each([
    ['what was ground is another part', 'machined: [{ part: cylinders, size: 0.020 over }]'],
    ['it was ground before that was said', ''],
  ])('is made anew where it has another size, and %s', (_, between) => {
    const before = between === '' ? 'machined: [{ part: main journals, size: 0.010 under }]\n' : '';
    const files = engine(
      ['machined', journals('2: 2.9885'), `${before}${fitted('mark: K1, main: 0.010 under')}`],
      ['trial', '', between],
      ['rebuild', '', fitted('mark: K1, main: 0.020 under')],
    );
    expect(standing(files, MEASURE, '2')).not.toContain('2.9885');
  });

  it('keeps what was read of a part since it was put in, when its mark is said later', () => {
    const files = engine(
      ['teardown', journals('2: 2.9985'), fitted('mark: K1')],
      ['trial', journals('2: 2.9984'), 'replaced: [{ part: crankshaft }]'],
      ['rebuild', '', fitted('mark: K2')],
    );
    expect(standing(files, MEASURE, '2')).toBe('2.9984 ok');
  });

  it('is another by its code, though the first was ground', () => {
    const files = engine(
      ['machined', journals('1: 2.9970, 2: 2.9985'), fitted('code: A1, condition: used')],
      ['trial', '', 'machined: [{ part: main journal 3 }]'],
      ['rebuild', journals('1: 2.9970'), fitted('code: A2')],
    );
    expect([standing(files, MEASURE, '1'), standing(files, MEASURE, '2')]).toEqual(['2.9970 out', 'missing']);
  });
});
