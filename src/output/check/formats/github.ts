import { SEVERITIES, type Severity } from '../../../checks/finding.ts';
import { plural } from '../../../quantity/words.ts';
import { writtenLines } from '../../escape/line.ts';
import { type WorkflowCommand, writtenCommands } from '../../escape/workflowCommands.ts';
import type { CheckFormat } from './format.ts';
import { type Reported, reportedOf, toldDiagnostic, toldFinding } from './told.ts';

/** Annotations by commands to the log of a job: the worst of each severity, the rest counted. */
export const github: CheckFormat<readonly Reported[]> = {
  part: ({ data }) => reportedOf(data),
  writer(_, write) {
    const all: Reported[] = [];
    return {
      diagnostics: (list) => all.push(...list.map(toldDiagnostic)),
      engine: (reported) => all.push(...reported),
      findings: (list) => all.push(...list.map(toldFinding)),
      notJudged: () => undefined,
      end() {
        for (const severity of SEVERITIES) {
          const sorted = all.filter((each) => each.severity === severity).sort(worstFirst);
          write(writtenCommands(sorted.slice(0, MOST).map(annotation)));
          const rest = sorted.length - MOST;
          if (rest > 0) write(writtenLines([`and ${plural(rest, `more ${severity}`)}`]));
        }
      },
    };
  },
};

/** As many as a step of a job shows of each kind. */
const MOST = 10;

const worstFirst = (a: Reported, b: Reported): number =>
  Number(b.isDiagnostic) - Number(a.isDiagnostic) ||
  Number(a.known === true) - Number(b.known === true) ||
  compare(b.weight, a.weight);

const compare = (a: number, b: number): number => (a === b ? 0 : a - b);

const NAMES: Readonly<Record<Severity, WorkflowCommand['name']>> = {
  error: 'error',
  warning: 'warning',
  remark: 'notice',
};

const annotation = ({ severity, code, message, place, known }: Reported): WorkflowCommand => ({
  name: NAMES[severity],
  properties: {
    file: place.path,
    line: place.line,
    endLine: place.end_line,
    // Columns are taken within one line alone.
    ...(place.line === place.end_line ? { col: place.column, endColumn: place.end_column } : {}),
    title: known === true ? `${code} (known)` : code,
  },
  message,
});
