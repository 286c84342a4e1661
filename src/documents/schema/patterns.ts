import { UNIT_SPELLINGS } from '../../quantity/units.ts';
import { TEST_WORDS } from '../session/outcome.ts';

/*
 * Every pattern here is a row of fixed parts, none of which can match what its neighbour matches, so that no
 * text makes it try again and again. They are read with the `u` flag: nothing is escaped that need not be.
 */
const NUMBER = '[-+]?(?:(?:0|[1-9][0-9]*)(?:\\.[0-9]+)?|\\.[0-9]+)';
const LONGEST_FIRST = [...UNIT_SPELLINGS].sort((a, b) => b.length - a.length);
const UNIT = `(?:${LONGEST_FIRST.join('|')})`;
const AMOUNT = `${NUMBER}(?: ?${UNIT})?`;

export const PATTERNS = {
  withUnit: `^${NUMBER} ?${UNIT}$`,
  range: `^${AMOUNT} to ${AMOUNT}$`,
  /** What can stand at a point and is no plain number: of a test its result. */
  readingText: `^(?:(?:under|over) ${AMOUNT}|${NUMBER} ?${UNIT}|${AMOUNT} to ${AMOUNT}|${TEST_WORDS.join('|')})$`,
  withUnitOrRange: `^(?:${NUMBER} ?${UNIT}|${AMOUNT} to ${AMOUNT})$`,
  percent: `^${NUMBER} ?%$`,
  grade: `^(?:std|${AMOUNT} (?:under|over)(?: (?:each|set))?)$`,
  coefficient: '^(?:[0-9]+(?:\\.[0-9]+)?|\\.[0-9]+)(?:e-[0-9])? per deg[CF]$',
  date: '^[0-9]{4}-[0-9]{2}-[0-9]{2}$',
  identifier: '^[a-z][a-z0-9_]*$',
  notBlank: '\\S',
} as const;
