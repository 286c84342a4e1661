import { describe, expect, it } from 'vitest';
import { orderList } from '../../../src/plan/order/orderList.ts';
import { planContext } from '../../../src/plan/work/context.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { ENGINE, type Files, limitsOf, REGISTER, reportOf, sessionOf } from '../../shopOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }
cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }
main_bearing_clearance: { new: 0.0010 to 0.0030 }
piston_clearance: { new: 0.0030 to 0.0050 }`;

const BACK = `- { measure: main_journal_diameter, with: mic, at: { 1: 2.9885, 2: 2.9885, 3: 2.9885 } }
- { measure: cylinder_bore, with: bore, at: { 1: 4.1455, 2: 4.1455, 3: 4.1455, 4: 4.1455 } }`;
const HOUSINGS = '- { measure: main_housing_bore, with: fine, at: { 1: 3.2505, 2: 3.2505, 3: 3.2505 } }';
const SIZES =
  'machined: [{ part: main journals, size: 0.010 under }, { part: cylinders, size: 0.020 over }]\n';

const STOCK = `kind: stock
shells:
  - { code: M10, fits: main shells, size: 0.010 under, wall: 0.1300, count: 4, reserved: { 99: 0 } }
  - { code: M10R, fits: main shells, size: 0.010 under, wall: 0.1300, count: 2, reserved: { 99: 2 } }
pistons: [{ mark: P1, size: 0.020 over, diameter: 4.1415 }, { mark: P2, size: 0.020 over, diameter: 4.1415 }]
rings: [{ code: K20, size: 0.020 over, count: 3 }]
`;

function linesOf(blocks: string, more = '', stock = STOCK, sizes = SIZES, others: Files = {}) {
  const files: Files = {
    'shop.yaml': 'kind: shop\nunits: { length: in }\n',
    'register.yaml': REGISTER,
    'stock.yaml': stock,
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf(LIMITS),
    'e/session.yaml': sessionOf('machined', blocks, `${sizes}${more}`),
    ...others,
  };
  const { engine, registry, state } = reportOf(files);
  if (state === undefined) throw new Error('no session');
  const context = planContext(engine, registry, state);
  return orderList(context, jobsOf(context))
    .filter(({ for: name }) => /^(?:ground|bored)/.test(name))
    .map(({ what, code, size, count, onShelf, when, for: name }) =>
      [what, code, size, count, onShelf, when, name].join(', '),
    );
}

describe('an order list after grinding and boring', () => {
  it('has pistons and rings of the size that was bored, and shells of that which was ground, less the shelf', () => {
    expect(linesOf(BACK)).toEqual([
      'pistons, , 0.020 over, 4, 2, now, bored cylinders',
      'ring sets, K20, 0.020 over, 4, 3, now, bored cylinders',
      'main shell pairs, by plan --fit, 0.010 under, 3, 2, after measuring, ground main journals',
    ]);
  });

  it('takes the shells that plan --fit chose, and orders what the shelf lacks', () => {
    const enough = STOCK.replace('count: 4,', 'count: 6,');
    expect(linesOf(`${BACK}\n${HOUSINGS}`, '', enough)).toContain(
      'main shell pairs, M10, 0.010 under, 3, 3, now, ground main journals',
    );
  });

  it('forgets what was fitted since', () => {
    const fitted =
      'fitted: { pistons: { size: 0.020 over, condition: new }, rings: { size: 0.020 over, condition: new } }\n';
    expect(linesOf(BACK, fitted).map((each) => each.split(',')[0])).toEqual(['main shell pairs']);
  });

  it.each([
    ['forgets what a later session of the run fitted', 'trial', '2026-02-05', ['main shell pairs']],
    [
      'has what was fitted before it was bored',
      'teardown',
      '2026-02-01',
      ['pistons', 'ring sets', 'main shell pairs'],
    ],
  ])('%s', (_, stage, date, what) => {
    const fitted =
      'fitted: { pistons: { size: 0.020 over, condition: new }, rings: { size: 0.020 over, condition: new } }\n';
    const other = `kind: session\nstage: ${stage}\ndate: ${date}\n${fitted}readings: []\n`;
    expect(
      linesOf(BACK, '', STOCK, SIZES, { 'e/other.yaml': other }).map((each) => each.split(',')[0]),
    ).toEqual(what);
  });

  it('has pistons and rings of each size that was bored', () => {
    const sizes =
      'machined: [{ part: cylinders, at: [1, 3], size: 0.020 over }, { part: cylinders, at: 2, size: 0.030 over }]\n';
    const bores =
      '- { measure: cylinder_bore, with: bore, at: { 1: 4.1455, 2: 4.1555, 3: 4.1455, 4: 4.1255 } }';
    expect(linesOf(bores, '', STOCK, sizes)).toEqual([
      'pistons, , 0.020 over, 2, 2, now, bored cylinders',
      'piston, , 0.030 over, 1, 0, now, bored cylinders',
      'ring sets, K20, 0.020 over, 2, 2, now, bored cylinders',
      'ring set, , 0.030 over, 1, 0, now, bored cylinders',
    ]);
  });

  it('has what goes with one journal that was ground alone', () => {
    const one = BACK.replace('1: 2.9885, 2: 2.9885, 3: 2.9885', '1: 2.9985, 2: 2.9885, 3: 2.9985');
    const size = 'machined: [{ part: main 2, size: 0.010 under }]\n';
    expect(linesOf(one, '', STOCK, size).filter((each) => /shell/.test(each))).toEqual([
      'main shell pair, by plan --fit, 0.010 under, 1, 1, after measuring, ground main journals',
    ]);
  });

  it.each([
    [
      'has what goes with each of two parts that were ground together',
      'machined: [{ part: main journals and crankpins, size: 0.010 under }]\n',
      ['main shell pairs', 'rod shell pairs'],
    ],
    ['has nothing for what was machined to no size', 'machined: [{ part: main journals }]\n', []],
    [
      'forgets what was replaced in the same session',
      `${SIZES}replaced: [{ part: pistons }, { part: rings }]\n`,
      ['main shell pairs'],
    ],
  ])('%s', (_, sizes, what) => {
    expect(linesOf(BACK, '', STOCK, sizes).map((each) => each.split(',')[0])).toEqual(what);
  });
});

describe('of two rods on one crankpin', () => {
  const files: Files = {
    'e/engine.yaml': `kind: engine
name: Vee
units: { length: in }
layout: { cylinders: 4, mains: 3, crankpins: { 1: [1, 2], 2: [3, 4] } }
`,
    'e/limits.yaml': limitsOf('crankpin_diameter: { new: 2.4980 to 2.4990, wear: { min: 2.4970 } }'),
  };
  const PINS = '- { measure: crankpin_diameter, with: mic, at: { 1: 2.4885, 2: 2.4885 } }';
  const GROUND = 'machined: [{ part: crankpins, size: 0.010 under }]\n';
  const waiting = (more: string) =>
    linesOf(PINS, more, STOCK, GROUND, files).map((each) =>
      each.split(', ').filter((_, index) => index % 3 === 0),
    );

  it.each([
    ['', '4'],
    ['replaced: [{ part: rod shell 1 }]\n', '3'],
    ['replaced: [{ part: rod shell 1 }, { part: rod shell 4 }]\n', '2'],
  ])('each has its own pair of shells: %j', (more, count) =>
    expect(waiting(more)).toEqual([['rod shell pairs', count, 'ground crankpins']]),
  );
});
