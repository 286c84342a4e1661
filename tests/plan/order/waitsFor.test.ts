import { describe, expect, it } from 'vitest';
import { orderPage, orderRows } from '../../../src/output/plan/orderPage.ts';
import { orderList } from '../../../src/plan/order/orderList.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { ENGINE, limitsOf, REGISTER, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 }, last_size: 2.9680 }
crankpin_diameter: { new: 2.4980 to 2.4990, wear: { min: 2.4970 } }
cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }
main_bearing_clearance: { new: 0.0010 to 0.0030, wear: { max: 0.0040 } }
piston_clearance: { new: 0.0030 to 0.0050 }
crankshaft_end_play: { new: 0.004 to 0.010 }
piston_pin_clearance: { new: 0.0002 to 0.0006 }`;

interface Said {
  readonly blocks: string;
  readonly more?: string;
  readonly stage?: string;
  readonly stock?: string;
  readonly limits?: string;
}

const contextIn = ({ blocks, more = '', stage = 'teardown', stock = '', limits = LIMITS }: Said) =>
  contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: in }\n',
    'register.yaml': REGISTER,
    ...(stock === '' ? {} : { 'stock.yaml': `kind: stock\n${stock}` }),
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf(limits),
    'e/session.yaml': sessionOf(stage, blocks, more),
  });

/** Read twice: one that is far from the others might be a slip. */
const twice = (block: string): string => `${block}\n${block}`;
const mains = (third: string): string =>
  twice(`- { measure: main_journal_diameter, with: mic, at: { 1: 2.9985, 2: 2.9983, 3: ${third} } }`);
const clearances = (third: string): string =>
  twice(`- { measure: main_bearing_clearance, with: fine, at: { 1: 0.0020, 2: 0.0020, 3: ${third} } }`);
const HOUSINGS = '- { measure: main_housing_bore, with: fine, at: { 1: 3.2505, 3: 3.2505 } }';

function waitingIn(said: Said): readonly string[] {
  const context = contextIn(said);
  return orderList(context, jobsOf(context))
    .filter(({ when, for: job }) => job !== 'opened engine' && when !== 'after the yes')
    .map(({ what, size, when, waitsFor }) => [what, size, when, waitsFor ?? '-'].join('; '));
}

describe('what waits in an order list names what it waits for', () => {
  it.each<readonly [string, Said, readonly string[]]>([
    [
      'shells for the journals once they are ground, and for the housings that nobody measured',
      { blocks: mains('2.9880') },
      [
        'main shell pairs; 0.020 under; after measuring; measure main housing bore 1 to 3; main journal diameter 1 to 3 once ground',
      ],
    ],
    [
      'shells for the housings that are left to measure alone',
      { blocks: `${mains('2.9880')}\n${HOUSINGS}` },
      [
        'main shell pairs; 0.020 under; after measuring; measure main housing bore 2; main journal diameter 1 to 3 once ground',
      ],
    ],
    [
      'shells of journals that are back',
      {
        blocks: mains('2.9885').replaceAll('2.9985', '2.9885').replaceAll('2.9983', '2.9885'),
        stage: 'machined',
        more: 'machined: [{ part: main journals, size: 0.010 under }]\n',
      },
      ['main shell pairs; 0.010 under; after measuring; measure main housing bore 1 to 3'],
    ],
    [
      'shells of a size that waits for the depth of damage',
      { blocks: mains('2.9960'), more: 'found: [{ on: main journal 3, is: scored, do: machine }]\n' },
      ['main shell pairs; depth unknown; after measuring; measure how deep main journal 3 is damaged'],
    ],
    [
      'shells of a new crankshaft',
      { blocks: mains('2.9985'), more: 'found: [{ on: crankshaft, is: cracked, do: renew }]\n' },
      [
        'crankshaft; as fitted; now; -',
        'main shell pairs; by the new crankshaft; after measuring; measure main housing bore 1 to 3; main journal diameter 1 to 3 of the new crankshaft',
        'rod shell pairs; by the new crankshaft; after measuring; measure rod housing bore 1 to 4; crankpin diameter 1 to 4 of the new crankshaft',
      ],
    ],
    [
      'the shells of a new rod',
      {
        blocks: `- { measure: crankpin_diameter, with: mic, at: { 1: 2.4885, 2: 2.4885, 3: 2.4885, 4: 2.4885 } }
- { measure: rod_housing_bore, with: fine, at: { 1: 2.7505, 2: 2.7505, 3: 2.7505, 4: 2.7505 } }`,
        limits: `${LIMITS}\nrod_bearing_clearance: { new: 0.0010 to 0.0030 }`,
        stage: 'machined',
        more: `machined: [{ part: crankpins, size: 0.010 under }]
found: [{ on: connecting rod 4, is: bent, do: renew }]\n`,
      },
      [
        'rod shell pairs; 0.010 under; now; -',
        'connecting rod; as fitted; now; -',
        'rod shell pair; 0.010 under; after measuring; measure rod housing bore 4 of the new connecting rod',
      ],
    ],
    [
      'shells that are chosen anew',
      { blocks: clearances('0.0050') },
      ['main shell pair; std; after measuring; measure main housing bore 3; main journal diameter 3'],
    ],
    [
      'what is machined or renewed',
      { blocks: '- { measure: head_pressure_test, at: { all: fail } }' },
      ['cylinder head; as fitted; after measuring; decide: machine or renew'],
    ],
    [
      'thrust washers, chosen by the end play of the trial',
      { blocks: '- { measure: crankshaft_end_play, value: 0.020 }' },
      ['thrust washers; by plan --fit; after measuring; measure crankshaft end play at the trial'],
    ],
    [
      'pistons of bores that nobody measured',
      { blocks: twice('- { measure: piston_clearance, with: fine, at: { 1: 0.0080, 2: 0.0040 } }') },
      ['piston; std; after measuring; measure cylinder bore 1'],
    ],
    [
      'other parts that are chosen by a clearance',
      { blocks: twice('- { measure: piston_pin_clearance, with: fine, at: { 1: 0.0060 } }') },
      ['piston pin; as fitted; after measuring; measure piston pin bore 1; piston pin diameter 1'],
    ],
  ])('%s', (_, said, lines) => expect(waitingIn(said)).toEqual(lines));
});

describe('what waits for nothing is ordered', () => {
  it.each<readonly [string, Said, readonly string[]]>([
    [
      'shells where housing and journal are measured, and the shelf holds none',
      { blocks: `${clearances('0.0050')}\n${HOUSINGS}\n${mains('2.9985')}` },
      ['main shell pair; std; now; -'],
    ],
    [
      'shells that would do and are too few',
      {
        blocks: `${clearances('0.0050').replaceAll('1: 0.0020', '1: 0.0050')}\n${HOUSINGS}\n${mains('2.9985')}`,
        stock: 'shells: [{ code: M, fits: main shells, wall: 0.1250, count: 3 }]\n',
      },
      ['main shell pair; std; now; -', 'main shell pair; std; now; -'],
    ],
    [
      'thrust washers after the trial, by how much thicker they must be',
      { blocks: '- { measure: crankshaft_end_play, value: 0.020 }', stage: 'trial' },
      ['thrust washers; 0.0130 in thicker, both together; now; -'],
    ],
    [
      'pistons of bores that are measured',
      {
        blocks: `${twice('- { measure: piston_diameter, with: mic, at: { 1: 4.1175, 2: 4.1215 } }')}\n- { measure: cylinder_bore, with: bore, at: { 1: 4.1255, 2: 4.1255 } }`,
      },
      ['piston; std; now; -'],
    ],
  ])('%s', (_, said, lines) => expect(waitingIn(said)).toEqual(lines));

  it('and where limits of new parts are wanting, those are asked for', () => {
    const limits = LIMITS.replace(
      '{ new: 0.0010 to 0.0030, wear: { max: 0.0040 } }',
      '{ wear: { max: 0.0040 } }',
    );
    expect(waitingIn({ blocks: `${clearances('0.0050')}\n${HOUSINGS}\n${mains('2.9985')}`, limits })).toEqual(
      ['main shell pair; std; after measuring; state limits of new parts for main bearing clearance'],
    );
  });
});

describe('the page', () => {
  const context = contextIn({ blocks: mains('2.9880') });
  const lines = orderList(context, jobsOf(context));

  it('says it behind the job', () => {
    const { sections } = orderPage(lines, context.engine, []);
    const waiting = sections.find(({ title }) => title.startsWith('order after measuring'));
    expect(waiting?.table?.rows[0]?.at(-1)).toBe(
      'grind main journals, not agreed yet: measure main housing bore 1 to 3; main journal diameter 1 to 3 once ground',
    );
  });

  it('has it in a column of its own for a spreadsheet', () => {
    const [heading, ...rows] = orderRows(lines, context.engine);
    expect(heading?.at(-1)).toBe('waits for');
    expect(rows.find((row) => row.includes('main shell pairs'))?.slice(-2)).toEqual([
      'grind main journals, not agreed yet',
      'measure main housing bore 1 to 3; main journal diameter 1 to 3 once ground',
    ]);
  });
});
