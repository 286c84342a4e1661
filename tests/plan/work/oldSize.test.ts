import { describe, expect, it } from 'vitest';
import { agreementsOf } from '../../../src/plan/handover/agreement.ts';
import { askedOf } from '../../../src/plan/handover/asked.ts';
import { reportWithPlan } from '../../../src/plan/reportWithPlan.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../src/plan/work/jobTitle.ts';
import { type Files, reportOf, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';
import { veeEngine } from '../veeEngine.ts';

const LIMITS = `main_journal_diameter: { new: 69.980 to 70.000, wear: { min: 69.955 } }
main_housing_bore: { new: 74.000 to 74.018 }
main_shell_thickness: { new: 1.982 to 1.994, wear: { min: 1.970 } }
main_bearing_clearance: { target: 0.035 to 0.050, new: 0.025 to 0.062, wear: { max: 0.085 } }`;
const SHELLS = (third = 1.986): string =>
  `- { measure: main_shell_thickness, at: { 1: 1.986, 2: 1.986, 3: ${third}, 4: 1.986 } }`;
const WORN = '- { measure: main_journal_diameter, at: { 1: 69.984, 2: 69.984, 3: 69.950, 4: 69.984 } }';
const WIPED = 'found: [{ on: main shell 3, is: wiped, do: renew }]\n';
const HOUSINGS = '- { measure: main_housing_bore, at: { 1: 74.006, 2: 74.006, 3: 74.006, 4: 74.006 } }';

const yes = (items: string): string => `agreed: { by: Owner, date: 2026-02-05, items: [${items}] }\n`;

const ground = (more: string, readings = '', at = [1, 2, 3, 4]): Files =>
  veeEngine(LIMITS, {
    'e/a.yaml': sessionOf('teardown', `${WORN}\n${SHELLS()}`, more),
    'e/b.yaml': sessionOf(
      'machined',
      `- { measure: main_journal_diameter, at: { ${at.map((each) => `${each}: 69.740`).join(', ')} } }${readings}
- { measure: crankshaft_crack_test, value: pass }`,
      'machined: [{ part: main journals, size: 0.25 under }]\n',
    ).replace('02-03', '02-20'),
  });

function planOf(files: Files) {
  const context = contextOf(files);
  const { engine, registry } = context;
  const jobs = jobsOf(context);
  const titles = (of: typeof jobs): readonly string[] =>
    of.flatMap((job) => (job.serves === undefined ? [titleOf(job, engine.document)] : []));
  const agreements = agreementsOf(engine, registry, context.state.session);
  return {
    jobs: titles(jobs),
    asked: titles(askedOf(jobs, context, agreements)),
    agreements,
    warnings: (reportWithPlan(engine, registry, {}).state?.findings ?? []).flatMap(({ code, message }) =>
      code.startsWith('plan/') ? [message] : [],
    ),
  };
}

describe('shells of the old size beside ground journals', () => {
  it.each([
    ['by their thickness', '', ''],
    ['by their clearance as well', '', `\n${HOUSINGS}`],
    ['where one was wiped', WIPED, `\n${HOUSINGS}`],
  ])('are chosen anew in one job, %s', (_, found, readings) => {
    expect(planOf(ground(found, readings)).jobs).toEqual(['choose main shells 1 to 4']);
  });

  it('are said to fit no longer, and worn ones to be worn', () => {
    const said = (files: Files): readonly string[] =>
      (reportOf(files).state?.findings ?? []).flatMap(({ code, message }) =>
        code === 'reading/out' && message.startsWith('main shell thickness 3') ? [message] : [],
      );
    expect(said(ground(''))).toEqual([
      'main shell thickness 3: 1.986 mm, thin by 0.109 mm (wear min 2.095): its size no longer fits the main journal, 0.25 under',
    ]);
    expect(said(ground('', `\n${SHELLS(2.09)}\n${SHELLS(2.09)}`))).toEqual([
      'main shell thickness 3: 2.090 mm, thin by 0.017 mm (new min 2.107)',
    ]);
  });

  it('come with the grinding: nobody is asked for them again', () => {
    const files = ground(WIPED + yes('grind main journals 1 to 4, renew main shell 3'), `\n${HOUSINGS}`);
    expect(planOf(files)).toMatchObject({ asked: [], warnings: [] });
  });
});

it('a piston that is renewed by a choice is weighed as one that is renewed alone', () => {
  const places = (value: string): string => [1, 2, 3, 4, 5, 6].map((at) => `${at}: ${value}`).join(', ');
  const limits = `cylinder_bore: { new: 89.000 to 89.020, wear: { max: 89.080 } }
piston_diameter: { new: 88.960 to 88.975, wear: { min: 88.930 } }`;
  const files = veeEngine(limits, {
    'e/a.yaml': sessionOf(
      'teardown',
      `- { measure: piston_diameter, at: { ${places('88.958')} } }`,
      'found: [{ on: piston 1, is: cracked, do: renew }]\n',
    ),
    'e/b.yaml': sessionOf(
      'machined',
      `- { measure: cylinder_bore, at: { ${places('89.255')} } }`,
      'machined: [{ part: cylinders, size: 0.25 over }]\n',
    ).replace('02-03', '02-20'),
  });
  expect(jobsOf(contextOf(files)).map(({ name }) => name)).toEqual([
    'choose pistons',
    'weigh and balance pistons',
  ]);
});

it('shells that are out over journals which nobody ground are asked for as one job', () => {
  const clearances = '- { measure: main_bearing_clearance, at: { 1: 0.040, 2: 0.100, 3: 0.100, 4: 0.040 } }';
  const files = (found: string) =>
    veeEngine(LIMITS, { 'e/a.yaml': sessionOf('teardown', `${SHELLS()}\n${clearances}`, found) });
  expect(planOf(files(WIPED)).asked).toEqual(['choose main shells 2, 3']);
  expect(planOf(files(WIPED.replace('shell 3', 'shells'))).asked).toEqual(['choose main shells']);
  const inPart = planOf(files(WIPED + yes('renew main shell 3')));
  expect([inPart.asked, inPart.warnings]).toEqual([['choose main shell 2', 'choose main shell 3'], []]);
  expect(planOf(files(WIPED + yes('"renew main shells 2, 3"'))).warnings).toEqual([]);
});
