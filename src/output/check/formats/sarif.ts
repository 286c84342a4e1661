import { findingKinds } from '../../../checks/catalogue.ts';
import type { Severity } from '../../../checks/finding.ts';
import { DOCUMENT_CODES } from '../../../diagnostic/catalogue.ts';
import { compareText } from '../../../diagnostic/place.ts';
import { VERSION } from '../../../version.ts';
import { json, writtenJson } from '../../escape/json.ts';
import { sarifText, uriReference } from '../../escape/sarifText.ts';
import type { CheckFormat, RunTotals } from './format.ts';
import { type PlaceJson, type Reported, reportedOf, toldDiagnostic, toldFinding } from './told.ts';

/** A log by SARIF 2.1.0 (OASIS): findings and problems with documents, with the rules that they are of. */
export const sarif: CheckFormat<readonly Reported[]> = {
  part: ({ data }) => reportedOf(data),
  writer(_, write) {
    const all: Reported[] = [];
    return {
      diagnostics: (list) => all.push(...list.map(toldDiagnostic)),
      engine: (reported) => all.push(...reported),
      findings: (list) => all.push(...list.map(toldFinding)),
      notJudged: () => undefined,
      end: (totals) => write(writtenJson(json`${logOf(all, totals)}\n`)),
    };
  },
};

function logOf(all: readonly Reported[], { exit }: RunTotals) {
  const codes = [...new Set(all.map(({ code }) => code))].sort(compareText);
  const fingerprint = fingerprints();
  return {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'tenths', semanticVersion: VERSION, rules: codes.map(ruleOf) } },
        columnKind: 'utf16CodeUnits',
        invocations: [{ executionSuccessful: exit !== 2, exitCode: exit }],
        results: all.map((reported) =>
          resultOf(reported, codes.indexOf(reported.code), fingerprint(reported)),
        ),
      },
    ],
  };
}

const LEVELS: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', remark: 'note' };

/** What a finding's page says of its kind. */
function ruleOf(id: string) {
  const { severity, means, matters, help } = pageOf(id);
  return {
    id,
    shortDescription: { text: sarifText(means) },
    // A platform that shows such logs asks for it as well.
    fullDescription: { text: sarifText(matters === undefined ? means : `${means} ${matters}`) },
    help: { text: sarifText(help) },
    defaultConfiguration: { level: LEVELS[severity] },
  };
}

function pageOf(code: string): { severity: Severity; means: string; matters?: string; help: string } {
  const kind = findingKinds.find((each) => each.code === code);
  if (kind !== undefined) {
    const { severity, means, matters, usually } = kind;
    return {
      severity,
      means,
      matters,
      help: `Why it matters: ${matters} What people usually do: ${usually}`,
    };
  }
  const page = Object.entries(DOCUMENT_CODES).find(([each]) => `document/${each}` === code)?.[1];
  if (page === undefined) throw new Error(`no page of ${code}`);
  return { severity: 'error', means: page.means, help: `What people usually do: ${page.usually}` };
}

const resultOf = (reported: Reported, ruleIndex: number, fingerprint: string) => ({
  ruleId: reported.code,
  ruleIndex,
  level: LEVELS[reported.severity],
  message: { text: sarifText(reported.message) },
  ...(reported.known === undefined ? {} : { baselineState: reported.known ? 'unchanged' : 'new' }),
  locations: [
    {
      physicalLocation: locationOf(reported.place),
      ...(reported.engine === null ? {} : { logicalLocations: [{ fullyQualifiedName: whereOf(reported) }] }),
    },
  ],
  ...(reported.limit_place === null
    ? {}
    : {
        relatedLocations: [
          { id: 1, physicalLocation: locationOf(reported.limit_place), message: { text: 'the limit' } },
        ],
      }),
  // A platform that shows such logs takes the first of these alone.
  partialFingerprints: { primaryLocationLineHash: fingerprint, 'tenths/v1': fingerprint },
});

const locationOf = (place: PlaceJson) => ({
  artifactLocation: { uri: uriReference(place.path), uriBaseId: '%SRCROOT%' },
  region: {
    startLine: place.line,
    startColumn: place.column,
    endLine: place.end_line,
    endColumn: place.end_column,
  },
});

const whereOf = ({ engine, session, measure, position }: Reported): string =>
  [engine, session, measure, position].filter((each) => each !== null).join(' ');

/** The same for as long as the finding is the same, wherever its line has gone: neither line nor value is in it. */
function fingerprints(): (reported: Reported) => string {
  const counts = new Map<string, number>();
  return (reported) => {
    const where = reported.engine === null ? reported.place.path : whereOf(reported);
    const key = `${reported.code} ${where}`;
    const count = (counts.get(key) ?? 0) + 1;
    counts.set(key, count);
    return `${key}:${count}`;
  };
}
