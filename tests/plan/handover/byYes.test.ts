import { describe, expect, it } from 'vitest';
import { agreementsOf } from '../../../src/plan/handover/agreement.ts';
import { answerTo } from '../../../src/plan/handover/answer.ts';
import { askedOf } from '../../../src/plan/handover/asked.ts';
import { orderList } from '../../../src/plan/order/orderList.ts';
import { reportWithPlan } from '../../../src/plan/reportWithPlan.ts';
import { titleOf } from '../../../src/plan/work/jobTitle.ts';
import { workPlan } from '../../../src/plan/work/workPlan.ts';
import { ENGINE, limitsOf, REGISTER, sessionOf, shopOf } from '../../shopOf.ts';

const LIMITS = `cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }
piston_diameter: { new: 4.1220 to 4.1230, wear: { min: 4.1200 } }
valve_stem_diameter: { new: 0.3140 to 0.3150, wear: { min: 0.3130 } }`;

/** Bores to be bored each to its own step. */
const BORES =
  '- { measure: cylinder_bore, with: bore, at: { 1: 4.1315, 2: 4.1318, 3: 4.1255, 4: 4.1255 } }\n'.repeat(2);
/** Pistons and valve stems that are worn; one piston is broken. */
const WORN = `- { measure: piston_diameter, with: mic, at: { 1: 4.1215, 2: 4.1215, 3: 4.1215, 4: 4.1215 } }
- { measure: valve_stem_diameter, with: mic, at: { 1E: 0.3135, 2E: 0.3135 } }`;

const FOUND = 'found: [{ on: piston 3, is: cracked, do: renew }]\n';
const yes = (items: string, date = '2026-02-05'): string => `{ by: Owner, date: ${date}, items: [${items}] }`;

function asked(agreed: readonly string[], blocks = WORN) {
  const { engine, registry, diagnostics } = shopOf({
    'shop.yaml': 'kind: shop\nunits: { length: in }\nplan: { separate: [cylinders] }\n',
    'register.yaml': REGISTER,
    'e/engine.yaml': `${ENGINE.replace('crankpins: 4', 'crankpins: 4, valves: [I, E]')}job: { customer: Canal works (invented) }\n`,
    'e/limits.yaml': limitsOf(LIMITS),
    'e/teardown.yaml': sessionOf('teardown', blocks, `${FOUND}agreed: [${agreed.join(', ')}]\n`),
  });
  if (engine === undefined || diagnostics.length > 0)
    throw new Error(diagnostics.map(({ message }) => message).join());
  const { state } = reportWithPlan(engine, registry, {});
  if (state === undefined) throw new Error('no session');
  const { context, jobs } = workPlan(engine, registry, state);
  const agreements = agreementsOf(engine, registry, state.session);
  const lines = askedOf(jobs, context, agreements).map(
    (job) => [titleOf(job, engine.document), answerTo(job, agreements)] as const,
  );
  return {
    lines: lines.map(([title, answer]) => [title, answer?.kind === 'yes' ? answer.agreement.date : 'asked']),
    told: state.findings.filter(({ code }) => code.startsWith('plan/')).map(({ message }) => message),
    order: orderList(context, jobs, undefined, agreements),
  };
}

const pistons = (...agreed: readonly string[]) =>
  asked(agreed).lines.filter(([title]) => title?.includes('piston'));

describe('parts that are renewed one by one are agreed to one by one', () => {
  it('the line has the places with a yes, and the places that are still asked', () => {
    const { lines, told } = asked([yes('"renew pistons 2, 3"')]);
    expect(lines.filter(([title]) => title?.includes('piston'))).toEqual([
      ['renew piston 3', '2026-02-05'],
      ['renew pistons 1, 4', 'asked'],
      ['renew piston 2', '2026-02-05'],
    ]);
    expect(told).toEqual([]);
  });

  it.each(['"renew pistons 1, 2, 4"', 'renew pistons'])(
    'a yes to the whole line leaves it whole: %s',
    (item) => {
      expect(pistons(yes(item)).map(([title]) => title)).toEqual(['renew piston 3', 'renew pistons 1, 2, 4']);
    },
  );

  it('each yes has its day', () => {
    expect(pistons(yes('renew piston 4'), yes('renew piston 1', '2026-02-07'))).toEqual([
      ['renew piston 3', 'asked'],
      ['renew piston 1', '2026-02-07'],
      ['renew piston 2', 'asked'],
      ['renew piston 4', '2026-02-05'],
    ]);
  });

  it('valves as well', () => {
    const valves = asked([yes('renew valve 1 E')]).lines.filter(([title]) => title?.includes('valve'));
    expect(valves).toEqual([
      ['renew valve 1 E', '2026-02-05'],
      ['renew valve 2 E', 'asked'],
    ]);
  });

  it('bores that the shop cuts each to its own step as well', () => {
    const bores = asked([yes('bore cylinder 2')], BORES).lines.filter(([title]) =>
      title?.includes('cylinder'),
    );
    expect(bores).toEqual([
      ['bore cylinder 1', 'asked'],
      ['bore cylinder 2', '2026-02-05'],
    ]);
  });

  it('what was agreed to is bought now, the others after their yes', () => {
    const valves = asked([yes('renew valve 1 E')]).order.filter(({ what }) => /^valves?$/.test(what));
    expect(valves.map(({ count, when }) => [count, when])).toEqual([
      [1, 'now'],
      [1, 'after the yes'],
    ]);
  });
});
