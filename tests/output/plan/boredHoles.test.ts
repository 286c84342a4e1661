import { expect, it } from 'vitest';
import { NO_OFFERS } from '../../../src/documents/parts/offeredPart.ts';
import { customerPage } from '../../../src/output/plan/handover/customerPage.ts';
import { machineShopPage } from '../../../src/output/plan/handover/machineShopPage.ts';
import { planPage } from '../../../src/output/plan/planPage.ts';
import { pistonsFor } from '../../../src/plan/fit/fits.ts';
import { agreementsOf } from '../../../src/plan/handover/agreement.ts';
import { workPlan } from '../../../src/plan/work/workPlan.ts';
import { ENGINE, limitsOf, REGISTER, reportOf, sessionOf } from '../../shopOf.ts';

function pagesOf(): Readonly<Record<'work' | 'customer' | 'machineShop', string>> {
  const { engine, registry, state } = reportOf({
    'shop.yaml': 'kind: shop\nunits: { length: in }\n',
    'register.yaml': REGISTER,
    'stock.yaml': `kind: stock\npistons: [${[1, 2, 3, 4].map((each) => `{ mark: P${each}, size: 0.010 over, diameter: 4.131 }`).join(', ')}]\n`,
    'e/engine.yaml': ENGINE.replace('layout: {', 'layout: { valves: [intake],'),
    'e/limits.yaml': limitsOf(`valve_guide_hole_bore: { new: 0.5000 to 0.5007 }
cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }
piston_clearance: { new: 0.0030 to 0.0050 }`),
    'e/session.yaml': sessionOf(
      'teardown',
      [
        '- { measure: valve_guide_hole_bore, with: fine, at: { 1: { intake: 0.5017 }, 2: { intake: 0.5003 }, 3: { intake: 0.5003 }, 4: { intake: 0.5003 } } }',
        '- { measure: cylinder_bore, with: bore, at: { 1: 4.1315, 2: 4.1255, 3: 4.1255, 4: 4.1255 } }',
      ]
        .join('\n')
        .concat('\n')
        .repeat(2),
      'agreed: { by: Owner, items: [bore valve guide holes, bore cylinders] }\n',
    ),
  });
  if (state === undefined) throw new Error('no session');
  const plan = workPlan(engine, registry, state);
  const agreements = agreementsOf(engine, registry, state.session);
  const pistons = pistonsFor(plan.context, NO_OFFERS);
  const job = planPage(plan).jobs.find(({ title }) => /^bore valve guide/.test(title));
  const { sections } = machineShopPage(plan, agreements, pistons, []);
  const head = sections.slice(sections.findIndex(({ title }) => title.startsWith('cylinder head')));
  return {
    work: JSON.stringify([job?.cuts, job?.follows]),
    customer: JSON.stringify(
      customerPage(plan, agreements, []).sections.flatMap(({ title, table }) => [
        title,
        ...(table?.rows ?? []).filter((row) => JSON.stringify(row).includes('valve guide')),
      ]),
    ),
    machineShop: JSON.stringify(head.slice(0, 3)),
  };
}

it.each(['work', 'customer', 'machineShop'] as const)(
  'of valve guide holes that are bored the page of %s speaks of guides, and of no pistons and cylinders',
  (page) => {
    const text = pagesOf()
      [page].replaceAll('cylinder head', 'head')
      .replaceAll(/cylinder \d intake/g, '');
    expect(text).toMatch(/guide/);
    expect(text).not.toMatch(/piston|cylinders|torque plate|\bring\b/);
  },
);
