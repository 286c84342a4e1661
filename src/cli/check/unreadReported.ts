import { type Finding, sortFindings } from '../../checks/finding.ts';
import { unreadFile } from '../../checks/findings/files.ts';
import { type Diagnostic, sortDiagnostics } from '../../diagnostic/diagnostic.ts';
import { type UnreadFile, unreadProblem } from '../../shell/discover/unreadFiles.ts';

/** What looks like a document and was not read: a problem where verdicts stand on it, else a finding of no session. */
export function unreadReported(files: readonly UnreadFile[]): {
  readonly diagnostics: readonly Diagnostic[];
  readonly findings: readonly Finding[];
} {
  return {
    diagnostics: sortDiagnostics(files.filter(({ weight }) => weight === 'document').map(unreadProblem)),
    findings: sortFindings(
      files.flatMap(({ weight, shown, why, help }) =>
        weight === 'document' ? [] : [unreadFile(shown, why, help, weight)],
      ),
    ),
  };
}
