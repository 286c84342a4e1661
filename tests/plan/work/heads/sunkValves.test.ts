import { describe, expect, it } from 'vitest';
import { jobsOf } from '../../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../../src/plan/work/jobTitle.ts';
import { limitsOf, sessionOf } from '../../../shopOf.ts';
import { contextOf } from '../../planOf.ts';

/** Of seats and faces: what is done, and what then. Read twice: one that is far from the others might be a slip. */
function jobsFor(second: string, flatness: string, banks = '', at = 'all') {
  const context = contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: mm }\n',
    'e/engine.yaml': `kind: engine\nname: Pump\nlayout: { cylinders: 2, valves: [E]${banks} }\n`,
    'e/limits.yaml': limitsOf(
      'valve_recession: { new: 0.70 to 1.10, wear: { max: 1.60 } }\nhead_flatness: { wear: { max: 0.10 } }',
    ),
    'e/session.yaml': sessionOf(
      'teardown',
      `- { measure: valve_recession, at: { 1: { E: 0.90 }, 2: { E: ${second} } } }
- { measure: head_flatness, at: { ${at}: ${flatness} } }
`.repeat(2),
    ),
  });
  return jobsOf(context)
    .filter(({ part, serves }) => /seat|head/.test(part?.id ?? '') && serves === undefined)
    .map((job) => ({ title: titleOf(job, context.engine.document), follows: job.follows }));
}

const BANKS = ', banks: { L: [1], R: [2] }';

describe('a valve that is sunk', () => {
  it.each([
    ['1.18', 'renew valve seat 2 E'],
    ['1.70', 'renew valve seat 2 E'],
    // What stands proud goes down where its seat is cut.
    ['0.60', 'machine or renew valve seat 2 E'],
  ])('by %s is not cut deeper', (read, title) => {
    expect(jobsFor(read, '0.02').map((job) => job.title)).toEqual([title]);
  });

  const AGAIN =
    'read valve recession again after surface cylinder head: the valve lies less deep below the new face';

  it.each([
    ['of the head', '', 'all', AGAIN],
    ['of its own head', BANKS, 'R', AGAIN.replace('head:', 'head R:')],
  ])('is read again once the face %s is surfaced', (_, banks, at, line) => {
    const seat = jobsFor('1.18', '0.15', banks, at).find(({ title }) => title === 'renew valve seat 2 E');
    expect(seat?.follows[0]).toBe(line);
  });

  it.each([
    ['no face is surfaced', '0.02', '', 'all'],
    ['the face of the other head is surfaced', '0.15', BANKS, 'L'],
  ])('is not where %s', (_, flatness, banks, at) => {
    const seat = jobsFor('1.18', flatness, banks, at).find(({ title }) => title === 'renew valve seat 2 E');
    expect(seat?.follows.filter((each) => each.startsWith('read'))).toEqual([]);
  });
});
