import type { Finding } from '../../checks/finding.ts';
import {
  type EngineReport,
  isState,
  type ReportedSession,
  type StateReport,
} from '../../checks/judge/report.ts';
import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import {
  diagnosticJson,
  engineJson,
  findingJson,
  followUpJson,
  notJudgedEngineJson,
} from '../../output/check/checkJson.ts';
import { engineLines, troubleLines } from '../../output/check/checkText.ts';
import { findingsLines } from '../../output/check/findingLines.ts';
import { diagnosticsLines, notJudgedLines, summaryLines } from '../../output/check/runText.ts';
import { revisionJson, revisionText, sinceText, stagedText } from '../../output/diff/revision.ts';
import { json, writtenJson } from '../../output/escape/json.ts';
import { together, type Written } from '../../output/escape/language.ts';
import { type Line, writtenLines } from '../../output/escape/line.ts';
import { answerLines } from '../../output/state/answerLines.ts';
import { weightOf } from '../../output/state/answerText.ts';
import type { Texts } from '../../shell/discover/loadEngines.ts';
import type { Revision } from '../../shell/git/commitFiles.ts';
import { textStyle } from '../../shell/process/terminal.ts';
import type { World } from '../../shell/world.ts';
import { VERSION } from '../../version.ts';
import type { Tally } from './tally.ts';

export const CHECK_FORMATS = ['text', 'json'] as const;

export type CheckFormat = (typeof CHECK_FORMATS)[number];

/** Prints as a run goes on, one engine at a time, so that nothing printed has to be kept. */
export interface CheckWriter {
  readonly diagnostics: (list: readonly Diagnostic[], texts: Texts) => void;
  readonly engine: (printed: PrintedEngine) => void;
  /** Of no session. */
  readonly findings: (list: readonly Finding[]) => void;
  /** An engine of which a document that every verdict stands on has a problem. */
  readonly notJudged: (folder: string) => void;
  readonly end: (tally: Tally) => void;
}

/** An engine as it is printed, and what of it is told again at the end. */
export interface PrintedEngine {
  readonly text: Written;
  readonly followUps: readonly FollowUpJson[];
  /** Of one engine among others where it stands in a line, told before all texts; undefined where there is none. */
  readonly answer?: EngineAnswer | undefined;
}

interface EngineAnswer {
  readonly text: Written;
  /** The larger, the worse. */
  readonly weight: readonly number[];
}

type FollowUpJson = ReturnType<typeof followUpJson>;

/** Pure, so that engines can be printed side by side. */
export type EnginePrinter = (
  report: EngineReport,
  chosen: readonly (ReportedSession | StateReport)[],
) => PrintedEngine;

export interface EngineFormat {
  readonly format: CheckFormat;
  readonly detail: boolean;
  /** Whether the run is about where several engines stand: then the answers come first, and what is well is not shown. */
  readonly isOneOfMany: boolean;
}

interface Format extends EngineFormat {
  /** The documents are those that are staged in git. */
  readonly staged?: boolean | undefined;
  /** Where the documents come from; undefined for the working tree. */
  readonly at?: Revision | undefined;
  /** Only what changed after it was looked at. */
  readonly since?: Revision | undefined;
}

export const checkWriter = (format: Format, world: World): CheckWriter =>
  format.format === 'json' ? jsonWriter(world, format) : textWriter(world, format);

export function enginePrinter(
  { format, detail, isOneOfMany }: EngineFormat,
  { out, environment }: World,
): EnginePrinter {
  if (format === 'json') {
    return (report, chosen) => ({
      text: writtenJson(json`${engineJson(report, chosen)}`),
      followUps: report.followUps.map(followUpJson),
    });
  }
  const style = textStyle(out, environment, detail);
  return (report, chosen) => {
    const [state] = chosen;
    if (isOneOfMany && state !== undefined && isState(state)) {
      const lines = detail ? engineLines(report, chosen, style) : troubleLines(report, state, style);
      const answer = {
        text: writtenLines(answerLines(report, state, style)),
        weight: weightOf(state, report.followUps),
      };
      return { text: writtenLines(lines), followUps: [], answer };
    }
    const isElsewhere = chosen.length === 0 && report.sessions.length > 0;
    return { text: writtenLines(isElsewhere ? [] : engineLines(report, chosen, style)), followUps: [] };
  };
}

function textWriter({ out, environment }: World, { detail, at, since, staged }: Format): CheckWriter {
  const style = textStyle(out, environment, detail);
  let isFirst = true;
  const write = (text: Written): void => {
    if (text === '') return;
    out.write(isFirst ? text : together(writtenLines(['']), text));
    isFirst = false;
  };
  const writeLines = (lines: readonly Line[]): void => write(writtenLines(lines));
  if (at !== undefined) writeLines([revisionText(at, style)]);
  if (staged) writeLines([stagedText(style)]);
  else if (since !== undefined) writeLines([sinceText(since, style)]);
  const answered: AnsweredEngine[] = [];
  const writeAnswered = (): void => {
    const [first, ...others] = answered.toSorted((a, b) => worstFirst(a.answer.weight, b.answer.weight));
    if (first !== undefined) write(together(...[first, ...others].map(({ answer }) => answer.text)));
    for (const { text } of [first, ...others].flatMap((each) => each ?? [])) write(text);
  };
  return {
    diagnostics: (list, texts) => writeLines(diagnosticsLines(list, texts, style)),
    engine: ({ text, answer }) => {
      if (answer === undefined) write(text);
      else answered.push({ text, answer });
    },
    findings: (list) => writeLines(findingsLines(list, style)),
    notJudged: (folder) => writeLines(notJudgedLines(folder, style)),
    end: (tally) => {
      writeAnswered();
      writeLines(summaryLines(tally, style));
    },
  };
}

interface AnsweredEngine {
  readonly text: Written;
  readonly answer: EngineAnswer;
}

function worstFirst(a: readonly number[], b: readonly number[]): number {
  const differing = a.findIndex((figure, index) => figure !== b[index]);
  return (b[differing] ?? 0) - (a[differing] ?? 0);
}

/** Engines as they come; diagnostics and the summary, known in full only then, at the end. */
function jsonWriter({ out }: World, { at, since, staged }: Format): CheckWriter {
  const told: Diagnostic[] = [];
  const followUps: FollowUpJson[] = [];
  const findings: Finding[] = [];
  const tool = { name: 'tenths', version: VERSION };
  const head = writtenJson(
    json`{"format":"tenths.check","version":2,"tool":${tool},"at":${revisionJson(at)},"since":${revisionJson(since)},"staged":${staged === true},"engines":[`,
  );
  // The head is written with the first engine: a call that finds none prints nothing.
  let before = head;
  const item = (text: Written): void => {
    out.write(together(before, text));
    before = writtenJson(json`,\n`);
  };
  return {
    diagnostics: (list) => told.push(...list),
    engine: (printed) => {
      item(printed.text);
      followUps.push(...printed.followUps);
    },
    findings: (list) => findings.push(...list),
    notJudged: (folder) => item(writtenJson(json`${notJudgedEngineJson(folder)}`)),
    end: (tally) => {
      const summary = {
        engines: tally.engines,
        sessions: tally.sessions,
        diagnostics: tally.diagnostics,
        errors: tally.findings.error,
        warnings: tally.findings.warning,
        remarks: tally.findings.remark,
      };
      const rest = json`],\n"diagnostics":${told.map(diagnosticJson)},"findings":${findings.map(findingJson)},"follow_ups":${followUps},"strict":${tally.strict},"exit":${tally.exitCode()},"summary":${summary}}\n`;
      out.write(before === head ? together(head, writtenJson(rest)) : writtenJson(rest));
    },
  };
}
