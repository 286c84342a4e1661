import { describe, expect, it } from 'vitest';
import { reportEngine } from '../../../src/checks/judge/report.ts';
import { closingPage } from '../../../src/output/plan/closingPage.ts';
import { boardRow } from '../../../src/output/report/board.ts';
import { customerSheet } from '../../../src/output/report/customerSheet.ts';
import { NO_LINKS } from '../../../src/output/report/links.ts';
import { shopSheet } from '../../../src/output/report/shopSheet.ts';
import { closingOf } from '../../../src/plan/closing/closing.ts';
import { reportWithPlan } from '../../../src/plan/reportWithPlan.ts';
import { ENGINE, type Files, limitsOf, REGISTER, sessionOf, shopOf } from '../../shopOf.ts';

const MAINS = 'main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }';
const TORQUE =
  'kind: torque\njoint: main caps\nsource: Invented.\nfasteners: { names: [1, 2] }\norder: [1, 2]\npasses: [{ to: 40 lbf ft }]\n';

const rebuilt = (third: string, more = '', files: Files = {}): Files => ({
  'shop.yaml': 'kind: shop\nunits: { length: in }\n',
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(MAINS),
  'e/session.yaml': sessionOf(
    'rebuild',
    `- { measure: main_journal_diameter, with: mic, at: { 1: 2.9985, 2: 2.9983, 3: ${third} } }`,
    more,
  ),
  ...files,
});

function standing(files: Files) {
  const { engine, registry } = shopOf(files);
  if (engine === undefined) throw new Error('not judged');
  const report = reportWithPlan(engine, registry, {});
  if (report.state === undefined) throw new Error('no session');
  return { report, state: report.state, closing: closingOf(report, report.state) };
}

/** What each page says: whether something is open. */
function saidOpen(files: Files): readonly boolean[] {
  const { report, state, closing } = standing(files);
  const origin = { commit: undefined, tool: '' } as unknown as Parameters<typeof shopSheet>[2];
  return [
    closingPage(closing, report.engine, []).answer.some((each) => each.startsWith('NOT TO BE CLOSED')),
    shopSheet(report, state, origin, { links: NO_LINKS, withCustomer: false }).status?.isOpen === true,
    customerSheet(report, state, origin).status?.isOpen === true,
    boardRow(report, state, '', false).isOpen,
  ];
}

const ALL = [true, true, true, true];
const NONE = [false, false, false, false];

describe('closing page, sheets and board say alike', () => {
  it.each<readonly [string, Files, readonly boolean[]]>([
    ['that all is well', rebuilt('2.9984'), NONE],
    ['that a value is out', rebuilt('2.9965'), ALL],
    ['that a value is missing', rebuilt('~'), ALL],
    ['that a joint was never tightened', rebuilt('2.9984', '', { 'e/main-caps.yaml': TORQUE }), ALL],
    [
      'that a warning of any kind is open',
      rebuilt('2.9984', '', { 'register.yaml': REGISTER.replace('mic:', 'other:') }),
      ALL,
    ],
    [
      'that nobody decided to use a worn part again',
      rebuilt('2.9975', 'fitted: { crankshaft: { condition: used } }\n'),
      ALL,
    ],
    [
      'that a document has errors',
      rebuilt('2.9984', '', { 'e/later.yaml': sessionOf('rebuild', '- { measure: nonsense, value: 1 }') }),
      ALL,
    ],
  ])('%s', (_, files, said) => expect(saidOpen(files)).toEqual(said));
});

it('the closing page lists nothing but the errors where a session cannot be read: the rest is of an older state', () => {
  const broken = { 'e/later.yaml': sessionOf('rebuild', '- { measure: nonsense, value: 1 }') };
  const { report, closing } = standing(rebuilt('2.9965', '', broken));
  const { answer, sections } = closingPage(closing, report.engine, []);
  expect(answer).toEqual([
    'NOT TO BE CLOSED UP: not judged, since a session has errors. Mend it first; without it the engine is as it was before, and what was open then is not listed here',
  ]);
  expect(sections).toEqual([
    { title: 'documents with errors', lines: ['e/later.yaml has 1 error and is not taken'] },
  ]);
});

it('the closing page lists all that is open where another document has errors', () => {
  const files = rebuilt('2.9965', '', { 'e/caps.yaml': TORQUE.replace('40 lbf ft', '40 nonsense') });
  const { report, closing } = standing(files);
  const { sections } = closingPage(closing, report.engine, []);
  expect(sections.map(({ title }) => title)).toContain('out, undecided or not measured');
});

describe('a release', () => {
  const released = 'confirmed: { what: Released, by: RK }\n';
  const ofRelease = (files: Files) =>
    standing(files).state.findings.filter(({ code }) => code === 'plan/released-open');

  it('while something is open is told where it stands, with what is open', () => {
    const [found, ...more] = ofRelease(rebuilt('2.9965', released));
    expect(more).toEqual([]);
    expect(found?.message).toBe(
      'released by RK, and 1 is open: main journal diameter 3: 2.9965 in, small by 1.5 thou (new min 2.9980): out',
    );
    expect(found?.place.line).toBe(4);
  });

  it('names as many as the closing page counts', () => {
    const unread = limitsOf(
      `${MAINS}\ncrankshaft_end_play: { new: 0.004 to 0.008 }\ncrankshaft_runout: { new: { max: 0.001 } }`,
    );
    const files = rebuilt('2.9984', released, { 'e/limits.yaml': unread, 'e/main-caps.yaml': TORQUE });
    const { report, closing } = standing(files);
    expect(closingPage(closing, report.engine, []).answer[0]).toBe('NOT TO BE CLOSED UP: 3 open');
    expect(ofRelease(files)[0]?.message).toMatch(/^released by RK, and 3 are open: /);
  });

  it('counts once nothing is open', () => {
    expect(ofRelease(rebuilt('2.9984', released))).toEqual([]);
    const { report, state } = standing(rebuilt('2.9984', released));
    expect(boardRow(report, state, '', false).status).toBe('Released by RK, 2026-02-03');
  });
});

describe('joints of which no torque document speaks', () => {
  it('are boxes to tick and stand beside the answer, and keep nothing open', () => {
    const { report, closing } = standing(rebuilt('2.9984'));
    expect(closing.unstated).toEqual(['main caps', 'rod caps', 'cylinder head']);
    expect(closing.boxes[0]?.what).toBe("main caps tightened by the maker's manual");
    expect(closingPage(closing, report.engine, []).answer).toEqual([
      'READY TO CLOSE UP: nothing that our documents state is open',
      "No torque document says how these are tightened: main caps, rod caps, cylinder head. Tick them by the maker's manual.",
    ]);
  });

  it('are not those that one speaks of, nor those that the engine has not', () => {
    const stated = standing(rebuilt('2.9984', '', { 'e/main-caps.yaml': TORQUE }));
    expect(stated.closing.unstated).toEqual(['rod caps', 'cylinder head']);
    const bare = ENGINE.replace('cylinders: 4, mains: 3, crankpins: 4', 'mains: 3');
    expect(standing(rebuilt('2.9984', '', { 'e/engine.yaml': bare })).closing.unstated).toEqual([
      'main caps',
    ]);
  });
});

it('the state line of a rebuild counts joints that nobody tightened', async () => {
  const { answerText } = await import('../../../src/output/state/answerText.ts');
  const { engine, registry } = shopOf(rebuilt('2.9984', '', { 'e/main-caps.yaml': TORQUE }));
  const state = engine && reportEngine(engine, registry, {}).state;
  expect(state && answerText(state, [])).toMatch(/^1 joint not tightened; /);
});
