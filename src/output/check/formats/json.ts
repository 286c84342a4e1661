import type { Finding } from '../../../checks/finding.ts';
import type { Diagnostic } from '../../../diagnostic/diagnostic.ts';
import { VERSION } from '../../../version.ts';
import { revisionJson } from '../../diff/revision.ts';
import { json as asJson, writtenJson } from '../../escape/json.ts';
import { together, type Written } from '../../escape/language.ts';
import { diagnosticJson, findingJson, notJudgedEngineJson } from '../checkJson.ts';
import type { FollowUpJson } from '../shownEngine.ts';
import type { CheckFormat, RunTotals } from './format.ts';

interface Part {
  readonly text: Written;
  readonly followUps: readonly FollowUpJson[];
}

/** Engines as they come; diagnostics and the summary, known in full only then, at the end. */
export const json: CheckFormat<Part> = {
  part: (shown) => ({ text: writtenJson(asJson`${shown.data}`), followUps: shown.followUps }),
  writer({ at, since, staged, strict }, write) {
    const diagnostics: Diagnostic[] = [];
    const followUps: FollowUpJson[] = [];
    const findings: Finding[] = [];
    const tool = { name: 'tenths', version: VERSION };
    const head = writtenJson(
      asJson`{"format":"tenths.check","version":2,"tool":${tool},"at":${revisionJson(at)},"since":${revisionJson(since)},"staged":${staged},"engines":[`,
    );
    // The head is written with the first engine: a call that finds none prints nothing.
    let before = head;
    const item = (text: Written): void => {
      write(together(before, text));
      before = writtenJson(asJson`,\n`);
    };
    return {
      diagnostics: (list) => diagnostics.push(...list),
      engine(part) {
        item(part.text);
        followUps.push(...part.followUps);
      },
      findings: (list) => findings.push(...list),
      notJudged: (folder) => item(writtenJson(asJson`${notJudgedEngineJson(folder)}`)),
      end(totals) {
        const rest = writtenJson(
          asJson`],\n"diagnostics":${diagnostics.map(diagnosticJson)},"findings":${findings.map(findingJson)},"follow_ups":${followUps},"strict":${strict},"exit":${totals.exit},"summary":${summaryJson(totals)}${knownJson(totals)}}\n`,
        );
        write(before === head ? together(head, rest) : rest);
      },
    };
  },
};

/** Only where the run was told of known findings. */
const knownJson = ({ known }: RunTotals) => (known === undefined ? asJson`` : asJson`,"known":${known}`);

const summaryJson = ({ engines, sessions, diagnostics, findings }: RunTotals) => ({
  engines,
  sessions,
  diagnostics,
  errors: findings.error,
  warnings: findings.warning,
  remarks: findings.remark,
});
