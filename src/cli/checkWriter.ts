import type { FollowUpState } from '../checks/followUps.ts';
import type { EngineReport, ReportedSession } from '../checks/report.ts';
import type { Diagnostic } from '../diagnostic/diagnostic.ts';
import { diagnosticJson, engineJson, followUpJson, notJudgedEngineJson } from '../output/checkJson.ts';
import { engineText } from '../output/checkText.ts';
import { revisionJson, revisionText, sinceText } from '../output/revision.ts';
import { diagnosticsText, notJudgedText, summaryText } from '../output/runText.ts';
import type { Revision } from '../shell/commitFiles.ts';
import type { Texts } from '../shell/loadEngines.ts';
import { textStyle } from '../shell/terminal.ts';
import type { World } from '../shell/world.ts';
import { VERSION } from '../version.ts';
import type { Tally } from './tally.ts';

export const CHECK_FORMATS = ['text', 'json'] as const;

export type CheckFormat = (typeof CHECK_FORMATS)[number];

/** Prints as a run goes on, one engine at a time, so that nothing printed has to be kept. */
export interface CheckWriter {
  readonly diagnostics: (list: readonly Diagnostic[], texts: Texts) => void;
  readonly engine: (report: EngineReport, chosen: readonly ReportedSession[]) => void;
  /** An engine of which a document that every verdict stands on has a problem. */
  readonly notJudged: (folder: string) => void;
  readonly end: (tally: Tally) => void;
}

interface Format {
  readonly format: CheckFormat;
  readonly detail: boolean;
  /** Where the documents come from; undefined for the working tree. */
  readonly at?: Revision | undefined;
  /** Only what changed after it was looked at. */
  readonly since?: Revision | undefined;
}

export const checkWriter = (format: Format, world: World): CheckWriter =>
  format.format === 'json' ? jsonWriter(world, format) : textWriter(world, format);

function textWriter({ out, environment }: World, { detail, at, since }: Format): CheckWriter {
  const style = textStyle(out, environment, detail);
  let isFirst = true;
  const write = (text: string): void => {
    if (text === '') return;
    out.write(isFirst ? text : `\n${text}`);
    isFirst = false;
  };
  if (at !== undefined) write(revisionText(at, style));
  if (since !== undefined) write(sinceText(since, style));
  return {
    diagnostics: (list, texts) => write(diagnosticsText(list, texts, style)),
    engine: (report, chosen) =>
      write(chosen.length === 0 && report.sessions.length > 0 ? '' : engineText(report, chosen, style)),
    notJudged: (folder) => write(notJudgedText(folder, style)),
    end: (tally) => write(summaryText(tally, style)),
  };
}

/** Engines as they come; diagnostics and the summary, known in full only then, at the end. */
function jsonWriter({ out }: World, { at, since }: Format): CheckWriter {
  const told: Diagnostic[] = [];
  const followUps: FollowUpState[] = [];
  const tool = { name: 'tenths', version: VERSION };
  const head = `{"format":"tenths.check","version":1,"tool":${JSON.stringify(tool)},"at":${JSON.stringify(revisionJson(at))},"since":${JSON.stringify(revisionJson(since))},"engines":[`;
  // The head is written with the first engine: a call that finds none prints nothing.
  let before = head;
  const item = (json: object): void => {
    out.write(`${before}${JSON.stringify(json)}`);
    before = ',\n';
  };
  return {
    diagnostics: (list) => told.push(...list),
    engine: (report, chosen) => {
      item(engineJson(report, chosen));
      followUps.push(...report.followUps);
    },
    notJudged: (folder) => item(notJudgedEngineJson(folder)),
    end: (tally) => {
      const rest = {
        diagnostics: told.map(diagnosticJson),
        follow_ups: followUps.map(followUpJson),
        strict: tally.strict,
        exit: tally.exitCode(),
        summary: {
          engines: tally.engines,
          sessions: tally.sessions,
          diagnostics: tally.diagnostics,
          errors: tally.findings.error,
          warnings: tally.findings.warning,
          remarks: tally.findings.remark,
        },
      };
      out.write(`${before === head ? head : ''}],\n${JSON.stringify(rest).slice(1)}\n`);
    },
  };
}
