import type { Finding } from '../../../checks/finding.ts';
import type { Diagnostic } from '../../../diagnostic/diagnostic.ts';
import { VERSION } from '../../../version.ts';
import { revisionJson } from '../../diff/revision.ts';
import { json as asJson, writtenJson } from '../../escape/json.ts';
import { together, type Written } from '../../escape/language.ts';
import { diagnosticJson, findingJson, notJudgedEngineJson } from '../checkJson.ts';
import type { FollowUpJson } from '../shownEngine.ts';
import type { CheckFormat, RunTotals } from './format.ts';
import { ShareNotes } from './shareNotes.ts';

interface Part {
  readonly text: Written;
  readonly followUps: readonly FollowUpJson[];
}

/** Engines as they come; diagnostics and the summary, known in full only then, at the end. */
export const json: CheckFormat<Part> = {
  part: (shown, { isShare }) => ({
    text: writtenJson(asJson`${isShare ? { ...shown.data, view: shown.view } : shown.data}`),
    followUps: shown.followUps,
  }),
  writer({ at, since, staged, strict, share, style: { detail } }, write) {
    const diagnostics: Diagnostic[] = [];
    const followUps: FollowUpJson[] = [];
    const findings: Finding[] = [];
    const tool = { name: 'tenths', version: VERSION };
    const head = writtenJson(
      asJson`{"format":"tenths.check","version":2,"tool":${tool},"at":${revisionJson(at)},"since":${revisionJson(since)},"staged":${staged},"engines":[`,
    );
    // The head is written with the first engine: a call that finds none prints nothing.
    let before = head;
    const notes = new ShareNotes();
    const item = (text: Written, followUps: number): void => {
      notes.engine(followUps);
      write(together(before, text));
      before = writtenJson(asJson`,\n`);
    };
    return {
      diagnostics(list, texts) {
        diagnostics.push(...list);
        notes.diagnostics(list, texts);
      },
      engine(part) {
        item(part.text, part.followUps.length);
        followUps.push(...part.followUps);
      },
      findings: (list) => findings.push(...list),
      notJudged: (folder, faulty) => item(writtenJson(asJson`${notJudgedEngineJson(folder, faulty)}`), 0),
      end(totals) {
        const rest = writtenJson(
          asJson`],\n"diagnostics":${diagnostics.map(diagnosticJson)},"findings":${findings.map(findingJson)},"follow_ups":${followUps},"strict":${strict},"exit":${totals.exit},"summary":${summaryJson(totals)}${knownJson(totals)}${share === undefined ? asJson`` : asJson`,"share":${notes.json(share, detail)}`}}\n`,
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
