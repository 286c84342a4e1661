import { describe, expect, it } from 'vitest';
import { atTheShop } from '../../../../src/plan/handover/shopWork.ts';
import { orderList } from '../../../../src/plan/order/orderList.ts';
import { jobsOf } from '../../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../../src/plan/work/jobTitle.ts';
import { type Files, limitsOf } from '../../../shopOf.ts';
import { contextOf } from '../../planOf.ts';

const LAYOUT = `{ cylinders: 6, mains: 4, crankpins: { 1: [1, 4], 2: [2, 5], 3: [3, 6] }, banks: { L: [1, 2, 3], R: [4, 5, 6] }, valves: [I, E] }`;
const LIMITS = `head_flatness: { new: { max: 0.05 }, wear: { max: 0.10 } }
head_thickness: { new: 131.95 to 132.05, least_thickness: 131.75 }
valve_guide_bore: { new: 6.000 to 6.015, wear: { max: 6.030 } }`;

/** Sessions by their stage; an engine in line where its layout says so. */
const vee = (sessions: Readonly<Record<string, string>>, layout = LAYOUT): Files => ({
  'shop.yaml': 'kind: shop\nunits: { length: mm, torque: N m, pressure: bar }\n',
  'e/engine.yaml': `kind: engine\nname: Vee\nlayout: ${layout}\n`,
  'e/limits.yaml': limitsOf(LIMITS),
  ...Object.fromEntries(
    Object.entries(sessions).map(([stage, text], index) => [
      `e/${index}.yaml`,
      `kind: session\nstage: ${stage}\ndate: 2026-09-0${index + 1}\n${text}\n`,
    ]),
  ),
});

const inLine = (sessions: Readonly<Record<string, string>>): Files =>
  vee(sessions, '{ cylinders: 6, mains: 7, crankpins: 6, valves: [I, E] }');

function planOf(files: Files): readonly string[] {
  const context = contextOf(files);
  return jobsOf(context)
    .filter(({ operation, serves }) => serves === undefined && !operation.startsWith('measure'))
    .map((job) => titleOf(job, context.engine.document));
}

function workPlanOf(files: Files) {
  const context = contextOf(files);
  return { jobs: jobsOf(context), document: context.engine.document };
}

function headsOrdered(files: Files): readonly string[] {
  const context = contextOf(files);
  return orderList(context, jobsOf(context))
    .filter(({ what }) => what.includes('head'))
    .map(({ count, what, for: job }) => `${count} ${what}, ${job}`);
}

describe('faces that are surfaced', () => {
  const surfaced = (files: Files) => {
    const { jobs, document } = workPlanOf(files);
    return jobs
      .filter(({ operation }) => operation === 'surface')
      .map((job) => [job.follows[0], ...atTheShop(job, document.layout)]);
  };
  const LEFT = 'parallel to the crank; block height and head thickness against their limits';

  it.each([
    ['equal where the engine has banks', vee, '{ L: 0.13, R: 0.04 }', `banks equal and ${LEFT}`],
    ['parallel to the crank alone in line', inLine, '{ all: 0.13 }', LEFT],
  ])('are to be %s', (_, files, at, line) => {
    const read = files({ teardown: `readings: [{ measure: head_flatness, at: ${at} }]` });
    expect(surfaced(read)).toEqual([[line, line]]);
  });
});

const WARPED = '{ measure: head_flatness, at: { L: 0.13, R: 0.04 } }';
const CRACKED = '{ measure: head_crack_test, at: { 1: pass, 2: pass, 3: pass, 4: pass, 5: fail, 6: pass } }';
const guides = (first: string, fifth = '6.010'): string =>
  `{ measure: valve_guide_bore, at: { 1: { I: 6.010, E: ${first} }, 5: { I: 6.010, E: ${fifth} } } }`;

describe('what is to be done to the heads of a vee is done to one of them', () => {
  it.each<readonly [string, string, readonly string[], readonly string[]]>([
    [
      'one too thin to be surfaced, with its guides, and one that is surfaced',
      `readings: [{ measure: head_flatness, at: { L: 0.13, R: 0.13 } }, { measure: head_thickness, at: { L: 131.80, R: 132.00 } }, ${guides('6.040', '6.040')}]`,
      ['renew valve guide 5 E', 'surface cylinder head R', 'renew cylinder head L'],
      ['1 cylinder head, renew cylinder head L'],
    ],
    [
      'one too thin to be surfaced that was found to be renewed as well',
      `readings: [{ measure: head_flatness, at: { L: 0.13, R: 0.03 } }, { measure: head_thickness, at: { L: 131.80, R: 132.00 } }]\nfound: [{ on: head L, is: pitted, do: renew }]`,
      ['renew cylinder head L'],
      ['1 cylinder head, renew cylinder head L'],
    ],
    [
      'one warped, and one cracked by test and by eye',
      `readings: [${WARPED}, ${CRACKED}]\nfound: [{ on: head R, is: cracked, do: renew }, { on: head L, is: warped, do: machine }]`,
      ['surface cylinder head L', 'renew cylinder head R'],
      ['1 cylinder head, renew cylinder head R'],
    ],
    [
      'cracks at two cylinders of one head',
      `readings: [{ measure: head_crack_test, at: { 4: fail, 5: fail } }]`,
      ['renew cylinder head R'],
      ['1 cylinder head, renew cylinder head R'],
    ],
    [
      'cracks in both',
      `readings: [{ measure: head_crack_test, at: { 2: fail, 5: fail } }]`,
      ['renew cylinder head L', 'renew cylinder head R'],
      ['1 cylinder head, renew cylinder head L', '1 cylinder head, renew cylinder head R'],
    ],
    [
      'a leak in one that is cracked by eye',
      `readings: [{ measure: head_pressure_test, at: { L: pass, R: fail } }]\nfound: [{ on: head R, is: cracked, do: renew }]`,
      ['renew cylinder head R'],
      ['1 cylinder head, renew cylinder head R'],
    ],
    [
      'a worn guide in the sound one, and one in the cracked one',
      `readings: [${CRACKED}, ${guides('6.081', '6.082')}]`,
      ['renew valve guide 1 E', 'renew cylinder head R'],
      ['1 cylinder head, renew cylinder head R'],
    ],
    [
      'a worn guide in the sound one, and one that was seen in the other to be renewed',
      `readings: [${guides('6.081', '6.082')}]\nfound: [{ on: right head, is: cracked, do: renew }]`,
      ['renew valve guide 1 E', 'renew cylinder head R'],
      ['1 cylinder head, renew cylinder head R'],
    ],
    [
      'a warped one, which is not cut where it is cracked',
      `readings: [{ measure: head_flatness, at: { L: 0.13, R: 0.14 } }, ${CRACKED}]`,
      ['surface cylinder head L', 'renew cylinder head R'],
      ['1 cylinder head, renew cylinder head R'],
    ],
    [
      'one that was seen to be warped, and was not measured',
      `readings: [{ measure: head_flatness, at: { L: ~, R: 0.04 } }]\nfound: [{ on: head L, is: warped, do: machine }]`,
      ['machine cylinder head L'],
      [],
    ],
    [
      'one that was seen to be warped, and the straightedge says which',
      `readings: [${WARPED}]\nfound: [{ on: cylinder head, is: warped, do: machine }]`,
      ['surface cylinder head L'],
      [],
    ],
    [
      'a warped one that the customer chose to have machined',
      `readings: [${WARPED}]\nfound: [{ on: head L, is: warped, do: machine }]\nagreed: { by: Owner, items: [machine head L] }`,
      ['surface cylinder head L', 'machine cylinder head L'],
      [],
    ],
    [
      'a fault of a warped one that surfacing does not mend',
      `readings: [${WARPED}]\nfound: [{ on: head L, is: a stud hole stripped, do: machine }]`,
      ['surface cylinder head L', 'machine cylinder head L'],
      [],
    ],
    [
      'one that is worn and one that is scrap, each as urgent as it is',
      `readings: [{ measure: head_flatness, at: { L: 0.03, R: 0.04 } }]\nfound: [{ on: left head, is: broken, do: renew }]`,
      ['renew cylinder head L'],
      ['1 cylinder head, renew cylinder head L'],
    ],
    [
      'both, which are one job each',
      'found: [{ on: cylinder heads, is: cracked, do: renew }]',
      ['renew cylinder head L', 'renew cylinder head R'],
      ['1 cylinder head, renew cylinder head L', '1 cylinder head, renew cylinder head R'],
    ],
    [
      'one that was seen to be cracked, and nobody says which',
      'found: [{ on: cylinder head, is: cracked, do: renew }]',
      ['renew cylinder head'],
      ['1 cylinder head, renew cylinder head'],
    ],
    [
      'one of which the test says which it is',
      `readings: [${CRACKED}]\nfound: [{ on: cylinder head, is: cracked, do: renew }]`,
      ['renew cylinder head R'],
      ['1 cylinder head, renew cylinder head R'],
    ],
  ])('%s', (_, text, titles, ordered) => {
    const files = vee({ teardown: text });
    expect(planOf(files)).toEqual(titles);
    expect(headsOrdered(files)).toEqual(ordered);
  });
});

it('each says of itself alone what one line says of both', () => {
  const { jobs, document } = workPlanOf(
    vee({
      teardown: `readings: [${WARPED}, ${CRACKED}]\nfound: [{ on: [head L, head R], is: warped, do: machine }]`,
    }),
  );
  const reasons = jobs
    .filter(({ part }) => part?.id === 'head')
    .map((job) => `${titleOf(job, document)}: ${job.found.map(({ on }) => on.join(', ')).join('; ')}`);
  expect(reasons).toEqual(['surface cylinder head L: head L', 'renew cylinder head R: head R']);
});

it('seats for holes that were cut are bought for the head that stays, and none for the one that is renewed', () => {
  const seatsOrdered = (found: string): readonly string[] => {
    const context = contextOf(
      vee({
        teardown: 'readings: []',
        machined: `machined: [{ part: valve seat holes, at: [1 E, 2 E, 5 E], size: 0.4 over }]\n${found}`,
      }),
    );
    return orderList(context, jobsOf(context))
      .filter(({ what }) => what.startsWith('valve seat'))
      .map(({ count, what }) => `${count} ${what}`);
  };
  expect(seatsOrdered('')).toEqual(['3 valve seats']);
  expect(seatsOrdered('found: [{ on: head R, is: cracked, do: renew }]')).toEqual(['2 valve seats']);
  expect(seatsOrdered('found: [{ on: head L, is: cracked, do: renew }]')).toEqual(['1 valve seat']);
  expect(seatsOrdered('found: [{ on: heads, is: cracked, do: renew }]')).toEqual([]);
});

describe('a vee with a head for each cylinder', () => {
  it.each<readonly [string, string, readonly string[], readonly string[]]>([
    [
      'two of one bank, and nothing of the head between them',
      `readings: [{ measure: valve_guide_bore, at: { 2: { I: 6.010, E: 6.081 }, 4: { I: 6.010, E: 6.081 } } }]\nfound: [{ on: heads 4 and 6, is: cracked, do: renew }]`,
      ['renew valve guide 2 E', 'renew cylinder head 4, 6'],
      ['2 cylinder heads, renew cylinder head'],
    ],
    [
      'one beside a figure of its bank, as the head of that bank',
      `readings: [${CRACKED}]\nfound: [{ on: head 5, is: cracked, do: renew }, { on: head 1, is: cracked, do: renew }]`,
      ['renew cylinder head L', 'renew cylinder head R'],
      ['1 cylinder head, renew cylinder head L', '1 cylinder head, renew cylinder head R'],
    ],
    [
      'one beside a figure of the other bank, as the head of its own, with the guides in it',
      `readings: [${CRACKED}, ${guides('6.081')}]\nfound: [{ on: head 1, is: cracked, do: renew }, { on: valve 1 I, is: bent, do: renew }]`,
      ['renew cylinder head L', 'renew cylinder head R'],
      ['1 cylinder head, renew cylinder head L', '1 cylinder head, renew cylinder head R'],
    ],
  ])('renews %s', (_, text, titles, ordered) => {
    const files = vee({ teardown: text });
    expect(planOf(files)).toEqual(titles);
    expect(headsOrdered(files)).toEqual(ordered);
  });

  it('is agreed to by its number', () => {
    const agreed = (item: string): Files =>
      vee({
        teardown: `readings: []\nfound: [{ on: head 4, is: cracked, do: machine }]\nagreed: [{ by: Owner, items: [${item}] }]`,
      });
    expect(planOf(agreed('renew head 4'))).toEqual(['renew cylinder head 4']);
    expect(planOf(agreed('renew head 5'))).toEqual(['machine cylinder head 4']);
  });
});

it('an engine in line has one head, and nobody says which', () => {
  const files = inLine({
    teardown: `readings: [{ measure: head_flatness, value: 0.13 }, ${CRACKED}, ${guides('6.081')}]\nfound: [{ on: head, is: cracked, do: renew }]`,
  });
  expect(planOf(files)).toEqual(['renew cylinder head']);
  expect(headsOrdered(files)).toEqual(['1 cylinder head, renew cylinder head']);
});
