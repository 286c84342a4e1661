import { describe, expect, it } from 'vitest';
import { customerPage } from '../../../src/output/plan/handover/customerPage.ts';
import { agreementsOf } from '../../../src/plan/handover/agreement.ts';
import { orderList } from '../../../src/plan/order/orderList.ts';
import { workPlan } from '../../../src/plan/work/workPlan.ts';
import { ENGINE, limitsOf, REGISTER, reportOf, sessionOf } from '../../shopOf.ts';

const BORES =
  '- { measure: cylinder_bore, with: bore, at: { 1: 4.1315, 2: 4.1318, 3: 4.1324, 4: 4.1316 } }\n'.repeat(2);

function planned({ customer = '', agreed = '' } = {}) {
  const { engine, registry, state } = reportOf({
    'shop.yaml': 'kind: shop\nunits: { length: in }\n',
    'register.yaml': REGISTER,
    'e/engine.yaml': `${ENGINE}${customer}`,
    'e/limits.yaml': limitsOf('cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }'),
    'e/session.yaml': sessionOf(
      'teardown',
      BORES,
      `found: [{ on: head, is: cracked, do: renew }]\n${agreed}`,
    ),
  });
  if (state === undefined) throw new Error('no session');
  const plan = workPlan(engine, registry, state);
  return { plan, agreements: agreementsOf(engine, registry, state.session) };
}

const timesOf = (said: Parameters<typeof planned>[0]) =>
  Object.fromEntries(orderList(...orderOf(said)).map(({ what, when }) => [what, when]));

function orderOf(said: Parameters<typeof planned>[0]): Parameters<typeof orderList> {
  const { plan, agreements } = planned(said);
  return [plan.context, plan.jobs, undefined, agreements];
}

const CUSTOMER = 'job: { number: 7, customer: Canal works (invented) }\n';
const YES = 'agreed: { by: Owner, date: 2026-02-05, items: [bore cylinders] }\n';

describe('an order list', () => {
  it.each([
    ['that nobody agreed to', {}, ['after the yes', 'after the yes', 'now']],
    [
      'that a customer did not agree to',
      { customer: CUSTOMER },
      ['after the yes', 'after the yes', 'after the yes'],
    ],
    ['that the customer agreed to', { customer: CUSTOMER, agreed: YES }, ['now', 'now', 'after the yes']],
  ])('has pistons and rings for boring %s, and a cracked head', (_, said, times) => {
    const found = timesOf(said);
    expect([found.pistons, found['ring sets'], found['cylinder head']]).toEqual(times);
    expect(found['gasket set']).toBe('now');
  });

  it('says of each line that it is not agreed to', () => {
    const reasons = orderList(...orderOf({})).map((each) => each.for);
    expect(reasons.filter((each) => each === 'bore cylinders, not agreed yet')).toHaveLength(2);
  });
});

describe('pistons whose clearance is out', () => {
  const linesOf = (items: string, stock = '') => {
    const { engine, registry, state } = reportOf({
      'shop.yaml': 'kind: shop\nunits: { length: in }\n',
      'register.yaml': REGISTER,
      ...(stock === '' ? {} : { 'stock.yaml': `kind: stock\npistons:\n${stock}` }),
      'e/engine.yaml': `${ENGINE}${CUSTOMER}`,
      'e/limits.yaml': limitsOf(
        'cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }\npiston_clearance: { new: 0.0030 to 0.0050 }',
      ),
      'e/session.yaml': sessionOf(
        'teardown',
        '- { measure: cylinder_bore, with: bore, at: { 1: 4.1255, 2: 4.1255, 3: 4.1255, 4: 4.1255 } }\n- { measure: piston_diameter, with: mic, at: { 1: 4.1175, 2: 4.1215, 3: 4.1215, 4: 4.1215 } }',
        `found: [{ on: piston 3, is: cracked, do: renew }]\nagreed: { by: Owner, items: [${items}] }\n`,
      ),
    });
    if (state === undefined) throw new Error('no session');
    const { context, jobs } = workPlan(engine, registry, state);
    return orderList(context, jobs)
      .filter(({ what }) => /piston/.test(what))
      .map(({ what, size, count, onShelf, when, for: job }) =>
        [what, size, `${onShelf} of ${count}`, when, job].join('; '),
      );
  };
  const SHELF = [1, 2, 3, 4].map((mark) => `  - { mark: P${mark}, size: std, diameter: 4.1215 }\n`).join('');

  it.each([
    ['renew pistons', 'now; choose pistons'],
    ['renew piston 1', 'now; choose pistons'],
    ['renew piston 3', 'after the yes; choose pistons, not agreed yet'],
  ])('are chosen anew with the yes to %s', (items, bought) => {
    expect(linesOf(items)).toContain(`piston; std; 0 of 1; ${bought}`);
  });

  it('are taken from the shelf where each cylinder has its own there', () => {
    expect(linesOf('renew pistons', SHELF)).toEqual([
      'piston; std; 1 of 1; now; renew pistons',
      'piston; std; 1 of 1; now; choose pistons',
    ]);
  });
});

it('the sheet of a customer numbers through, and shows the worst place of a job', () => {
  const { plan, agreements } = planned({ customer: CUSTOMER });
  const page = JSON.stringify(customerPage(plan, agreements, []));
  expect(page).toContain('cylinder bore 3 is 4.1324 in');
  expect(page).not.toContain('cylinder bore 1 is');
  expect(page).toContain('agreed to, by the numbers above (1 to 2)');
});
