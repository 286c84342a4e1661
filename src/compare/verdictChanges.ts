import type { Finding } from '../checks/finding.ts';
import type { Row } from '../checks/judge/row.ts';
import type { Verdict } from '../checks/judge/verdict.ts';
import { keyOf } from './state.ts';

/** What is shown of an engine, or of one of its sessions. */
export interface Judged {
  readonly rows: readonly Row[];
  readonly findings: readonly Finding[];
}

export interface VerdictChanges {
  readonly verdicts: readonly VerdictChange[];
  /** Said now and not before. */
  readonly appeared: readonly Finding[];
  /** Said before and no more, where no verdict that changed tells it. */
  readonly settled: readonly Finding[];
}

export interface VerdictChange {
  /** As it is now, else as it was. */
  readonly row: Row;
  readonly from: Standing;
  readonly to: Standing;
}

/** Null without limits; undefined where there was no value. */
export type Standing = Verdict | null | undefined;

/** What became of the verdicts from one judgement of the same to the next. */
export function verdictChanges(before: Judged, after: Judged): VerdictChanges {
  const verdicts = changedVerdicts(before.rows, after.rows);
  const [was, is] = [before, after].map(({ findings }) => new Set(findings.map(textOf)));
  const isToldByVerdict = ({ measure, at }: Finding): boolean =>
    verdicts.some(({ row }) => row.characteristic.id === measure && row.position === at);
  const isSaidOtherwise = (gone: Finding): boolean =>
    after.findings.some((each) => aboutOf(each) === aboutOf(gone));
  return {
    verdicts,
    appeared: after.findings.filter((each) => !was?.has(textOf(each))),
    settled: before.findings.filter(
      (each) => !is?.has(textOf(each)) && !isToldByVerdict(each) && !isSaidOtherwise(each),
    ),
  };
}

export const hasChanges = ({ verdicts, appeared, settled }: VerdictChanges): boolean =>
  verdicts.length + appeared.length + settled.length > 0;

function changedVerdicts(before: readonly Row[], after: readonly Row[]): readonly VerdictChange[] {
  const [was, is] = [before, after].map((rows) => new Map(rows.map((row) => [keyOf(row), row])));
  const now = after.map((row) => ({ row, from: standingOf(was?.get(keyOf(row))), to: standingOf(row) }));
  const gone = before
    .filter((row) => !is?.has(keyOf(row)))
    .map((row) => ({ row, from: standingOf(row), to: undefined }));
  return [...now, ...gone].filter(({ from, to }) => from !== to);
}

const standingOf = (row: Row | undefined): Standing => row?.judgement.verdict;

/** Without its place, which moves with every line that is put in above it. */
const textOf = ({ code, message }: Finding): string => `${code} ${message}`;

const aboutOf = ({ code, measure, position }: Finding): string => `${code} ${measure} ${position}`;
