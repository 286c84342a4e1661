import type { Severity } from '../../../checks/finding.ts';
import { element, writtenXml, type Xml, xml } from '../../escape/xml.ts';
import { faultyText } from '../runText.ts';
import type { EngineJson } from '../shownEngine.ts';
import type { CheckFormat } from './format.ts';
import { type Reported, reportedOf, shownIn, toldDiagnostic, toldFinding } from './told.ts';

/** A test to a CI server: everything that was judged at one position, also where all is well. */
interface Case {
  readonly classname: string;
  readonly name: string;
  readonly reported: readonly Reported[];
  /** Why it could not be judged. */
  readonly skipped?: string;
}

interface Suite {
  readonly name: string;
  readonly cases: readonly Case[];
}

/** The description of tests that CI servers read: a suite an engine, a case a value, one failure a case. */
export const junit: CheckFormat<Suite> = {
  part: ({ data }) => ({ name: `${data.name} (${data.path})`, cases: casesOf(data) }),
  writer({ strict }, write) {
    const suites: Suite[] = [];
    const others: Reported[] = [];
    return {
      diagnostics: (list) => others.push(...list.map(toldDiagnostic)),
      engine: (suite) => suites.push(suite),
      findings: (list) => others.push(...list.map(toldFinding)),
      notJudged: (folder, faulty) =>
        suites.push({
          name: folder,
          cases: [{ classname: folder, name: 'state', reported: [], skipped: faultyText(faulty) }],
        }),
      end() {
        const documents = { name: 'documents', cases: gathered(others.map(caseOfFile)) };
        const all = others.length === 0 ? suites : [...suites, documents];
        write(writtenXml(rootOf(all, strict)));
      },
    };
  },
};

function casesOf(engine: EngineJson): readonly Case[] {
  const values = shownIn(engine).flatMap(([session, { rows }]) =>
    rows.map((row) => ({ ...nameOf({ ...row, engine: engine.path, session, code: '' }), reported: [] })),
  );
  const skipped = engine.sessions.filter(({ judged }) => !judged);
  return [
    ...gathered([
      ...values,
      ...reportedOf(engine).map((reported) => ({ ...nameOf(reported), reported: [reported] })),
    ]),
    ...skipped.map(({ path }) => ({
      classname: engine.path,
      name: path,
      reported: [],
      skipped: 'the document has problems',
    })),
  ];
}

/** A server knows a case again by these. What is of no value is reported under its code. */
const nameOf = ({
  engine,
  session,
  measure,
  position,
  code,
}: Pick<Reported, 'engine' | 'session' | 'measure' | 'position' | 'code'>) => ({
  classname: session === 'state' ? `${engine}.state` : `${session}`.replace(/\.ya?ml$/, ''),
  name: [measure ?? code, position ?? ''].join(' ').trim(),
});

const caseOfFile = (reported: Reported): Case => ({
  classname: reported.place.path,
  name: reported.code,
  reported: [reported],
});

/** Cases of one name as one: a server that reads one failure a case would drop the others. */
function gathered(cases: readonly Case[]): readonly Case[] {
  const found = new Map<string, Case>();
  for (const each of cases) {
    const key = JSON.stringify([each.classname, each.name]);
    found.set(key, { ...each, reported: [...(found.get(key)?.reported ?? []), ...each.reported] });
  }
  return [...found.values()];
}

function rootOf(suites: readonly Suite[], strict: boolean): Xml {
  const counted = suites.map((suite) => ({ suite, counts: countsOf(suite.cases, strict) }));
  const sum = (key: keyof ReturnType<typeof countsOf>): number =>
    counted.reduce((total, { counts }) => total + counts[key], 0);
  return element(
    'testsuites',
    {
      name: 'tenths check',
      tests: sum('tests'),
      failures: sum('failures'),
      errors: sum('errors'),
      skipped: sum('skipped'),
    },
    counted.map(({ suite: { name, cases }, counts }) =>
      element(
        'testsuite',
        { name, ...counts },
        cases.map((each) => caseElement(each, strict)),
      ),
    ),
  );
}

function countsOf(cases: readonly Case[], strict: boolean) {
  const failing = cases
    .map(({ reported }) => reported.filter((each) => isFailing(each, strict)))
    .filter((reported) => reported.length > 0);
  const errors = failing.filter((reported) => kindOf(reported) === 'error').length;
  return {
    tests: cases.length,
    failures: failing.length - errors,
    errors,
    skipped: cases.filter(({ skipped }) => skipped !== undefined).length,
  };
}

function caseElement({ classname, name, reported, skipped }: Case, strict: boolean): Xml {
  const failing = reported.filter((each) => isFailing(each, strict));
  const others = reported.filter((each) => !failing.includes(each));
  const [first] = failing;
  return element('testcase', { classname, name }, [
    ...(skipped === undefined ? [] : [element('skipped', { message: skipped }, [])]),
    ...(first === undefined
      ? []
      : [element(kindOf(failing), { type: first.code, message: first.message }, failing.map(toldLine))]),
    ...(others.length === 0 ? [] : [element('system-out', {}, others.map(toldLine))]),
  ]);
}

/** A document that cannot be trusted is no verdict on an engine. */
const kindOf = (failing: readonly Reported[]): 'error' | 'failure' =>
  failing.some(({ isDiagnostic }) => isDiagnostic) ? 'error' : 'failure';

const FAILING: Readonly<Record<Severity, (strict: boolean) => boolean>> = {
  error: () => true,
  warning: (strict) => strict,
  remark: () => false,
};

const isFailing = ({ severity, known }: Reported, strict: boolean): boolean =>
  known !== true && FAILING[severity](strict);

const toldLine = ({ severity, code, place, message }: Reported): Xml =>
  xml`${severity} ${code} ${place.path}:${place.line}:${place.column} ${message}`;
