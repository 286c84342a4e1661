import { describe, expect, it } from 'vitest';
import { jobWords } from '../../../src/output/plan/jobWords.ts';
import { planPage } from '../../../src/output/plan/planPage.ts';
import { isPassingBox } from '../../../src/plan/closing/boxes.ts';
import { closingOf } from '../../../src/plan/closing/closing.ts';
import { workPlan } from '../../../src/plan/work/workPlan.ts';
import { ENGINE, type Files, limitsOf, REGISTER, reportOf, sessionOf } from '../../shopOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }
crankshaft_end_play: { new: 0.004 to 0.010 }`;
const MAINS = '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9985, 2: 2.9985, 3: 2.9985 } }';
const END_PLAY = '- { measure: crankshaft_end_play, value: 0.006 }';
const TEST = '- { measure: crankshaft_crack_test, value: pass }';

interface Later {
  readonly stage: string;
  readonly blocks: string;
  readonly more?: string;
}

const dated = (day: number, { stage, blocks, more = '' }: Later): string =>
  sessionOf(stage, blocks, more).replace('2026-02-03', `2026-02-1${day}`);

const shop = (first: string, later: readonly Later[]): Files => ({
  'shop.yaml': 'kind: shop\nunits: { length: in }\n',
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(LIMITS),
  'e/a.yaml': sessionOf('teardown', first),
  ...Object.fromEntries(later.map((each, day) => [`e/b${day}.yaml`, dated(day, each)])),
});

function closingAfter(first: string, later: readonly Later[]) {
  const report = reportOf(shop(first, later));
  if (report.state === undefined) throw new Error('no session');
  return closingOf(report, report.state);
}

function planOf(first: string, later: readonly Later[] = []) {
  const { engine, registry, state } = reportOf(shop(first, later));
  if (state === undefined) throw new Error('no session');
  const plan = workPlan(engine, registry, state);
  const { answer } = planPage(plan);
  const why = plan.jobs.flatMap((job) =>
    job.operation === 'measure' ? jobWords(job, [], engine, () => never()).why : [],
  );
  return { answer, why };
}

const never = (): never => {
  throw new Error('no row is printed');
};

const ground: Later = {
  stage: 'machined',
  blocks: MAINS.replaceAll('2.9985', '2.9885'),
  more: 'machined: [{ part: main journals, size: 0.010 under }]\n',
};
const NOTHING = 'nothing is to be done: all that was measured is inside its limits';

describe('a plan has to be measured', () => {
  it('what was tested before it was ground', () => {
    const { answer, why } = planOf(`${MAINS}\n${END_PLAY}\n${TEST}`, [
      ground,
      { stage: 'rebuild', blocks: END_PLAY },
    ]);
    expect(answer).toEqual(['must: measure crankshaft crack test']);
    expect(why).toEqual(['with limits, and not measured: crankshaft crack test']);
  });

  it('what ended by work, at each of its places, and of assembled parts nothing before the rebuild', () => {
    const polished: Later = { stage: 'machined', blocks: '- { work: polished, on: main journals }' };
    expect(planOf(`${MAINS}\n${END_PLAY}`, [polished]).why).toEqual([
      'with limits, and not measured: main journal diameter 1 to 3',
    ]);
  });

  it('at a rebuild what was never measured', () => {
    const { answer, why } = planOf(MAINS, [{ stage: 'rebuild', blocks: MAINS }]);
    expect(answer).toEqual(['must: measure crankshaft end play']);
    expect(why).toEqual(['with limits, and not measured: crankshaft end play']);
  });

  it('what is missing, in one line beside it', () => {
    const { why } = planOf(MAINS, [{ stage: 'rebuild', blocks: MAINS.replace('3: 2.9985', '3: ~') }]);
    expect(why).toEqual(['with limits, and not measured: crankshaft end play']);
    const apart = planOf(MAINS.replace('3: 2.9985', '3: ~'), [{ stage: 'rebuild', blocks: TEST }]);
    expect(apart.why).toEqual([
      'no value; where one was left out on purpose, write why: { value: ~, note: … }',
      'with limits, and not measured: crankshaft end play',
    ]);
  });
});

describe('an answer', () => {
  it('says what has limits and was not measured yet, where nothing is to be done', () => {
    expect(planOf(MAINS).answer).toEqual([
      'all that was measured is inside its limits; with limits, and not measured: crankshaft end play',
    ]);
  });

  it('says that nothing is to be done where all was measured', () => {
    expect(planOf(`${MAINS}\n${END_PLAY}`).answer).toEqual([NOTHING]);
  });
});

describe('a crankshaft that was ground and that no session says was crack tested', () => {
  const BOX = 'crankshaft crack tested after grinding';
  const WHY = 'crankshaft crack test: main journals machined, and no test since';
  const ASKED = { answer: ['must: measure crankshaft crack test'], why: [WHY] };
  const teardown = `${MAINS}\n${END_PLAY}`;
  const unsized = { ...ground, blocks: MAINS, more: 'machined: [{ part: main journals }]\n' };
  const straightened = { ...ground, more: '', blocks: '- { work: cold straightened, on: crankshaft }' };
  const boxes = (after: readonly Later[]): readonly string[] =>
    closingAfter(teardown, after).boxes.flatMap(({ what }) => (what.includes('crack') ? what : []));

  it('is to be tested, as a line of the plan and as a box of the page before closing up', () => {
    for (const done of [ground, unsized]) {
      expect(planOf(teardown, [done])).toEqual(ASKED);
      expect(boxes([done])).toEqual([BOX]);
    }
    expect(planOf(teardown, [straightened]).why).toEqual([
      'with limits, and not measured: main journal diameter 1 to 3',
      'crankshaft crack test: crankshaft cold straightened, and no test since',
    ]);
    expect(boxes([straightened])).toEqual(['crankshaft crack tested after straightening']);
  });

  it.each<[string, readonly Later[]]>([
    ['nothing was done to it', [{ stage: 'rebuild', blocks: END_PLAY }]],
    ['it was tested since', [ground, { stage: 'trial', blocks: TEST }]],
    ['it was tested where it was ground', [{ ...ground, blocks: `${ground.blocks}\n${TEST}` }]],
    ['another one went in', [ground, { ...ground, more: 'replaced: [{ part: crankshaft }]\n' }]],
  ])('is not asked about where %s', (_, after) => {
    expect(boxes(after)).toEqual([]);
    expect(planOf(teardown, after).why.join()).not.toContain('no test since');
  });

  it('is open, and no box, where it was tested before', () => {
    const closing = closingAfter(`${teardown}\n${TEST}`, [ground]);
    expect(closing.unmeasured.map(({ id }) => id)).toEqual(['crankshaft_end_play', 'crankshaft_crack_test']);
    expect(closing.boxes.filter(({ what }) => what.includes('crack'))).toEqual([]);
  });

  it('and a box that was ticked is known', () => {
    const ticked = `confirmed: [{ what: ${BOX}, by: RK }]\n`;
    const [box] = closingAfter(teardown, [{ ...ground, more: `${ground.more}${ticked}` }]).boxes.filter(
      ({ what }) => what === BOX,
    );
    expect(box?.by).toBe('RK');
    expect(isPassingBox(BOX)).toBe(true);
  });
});
