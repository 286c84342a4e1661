import type { Severity } from '../../../checks/finding.ts';
import { type Line, line, writtenLines } from '../../escape/line.ts';
import type { CheckFormat } from './format.ts';
import { type Reported, reportedOf, toldDiagnostic, toldFinding } from './told.ts';

/** A line each, `FILE:LINE:COLUMN: error: message [code]`, as the GNU Coding Standards have it: editors lead to the place. */
export const lines: CheckFormat<readonly Reported[]> = {
  part: ({ data }) => reportedOf(data),
  writer: (_, write) => {
    const tell = (all: readonly Reported[]): void => write(writtenLines(all.map(lineOf)));
    return {
      diagnostics: (list) => tell(list.map(toldDiagnostic)),
      engine: tell,
      findings: (list) => tell(list.map(toldFinding)),
      notJudged: () => undefined,
      end: () => undefined,
    };
  },
};

const NAMES: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', remark: 'info' };

const lineOf = ({ place, severity, message, code, known }: Reported): Line => {
  const about = known === true ? `${code}, known` : code;
  return line`${place.path}:${place.line}:${place.column}: ${NAMES[severity]}: ${message} [${about}]`;
};
