import type { Finding } from '../../../checks/finding.ts';
import { isState, type ReportedSession, type StateReport } from '../../../checks/judge/report.ts';
import { type KnownFinding, keyOfKnown } from '../../../output/check/knownFinding.ts';

/** What a run was told of before it began: plain data, so that it may go to another thread. */
export interface KnownOptions {
  readonly findings: readonly KnownFinding[];
  /** Whatever is found is written down and counts as known from now on. */
  readonly isUpdating: boolean;
}

/** Each known finding is found once: of two that are alike, and one of them known, one is new. */
export class Remaining {
  readonly #counts = new Map<string, number>();

  constructor(findings: readonly KnownFinding[]) {
    for (const each of findings) {
      const key = keyOfKnown(each);
      this.#counts.set(key, (this.#counts.get(key) ?? 0) + 1);
    }
  }

  take(finding: KnownFinding): boolean {
    const key = keyOfKnown(finding);
    const left = this.#counts.get(key) ?? 0;
    if (left > 0) this.#counts.set(key, left - 1);
    return left > 0;
  }
}

type Shown = ReportedSession | StateReport;

/** What a finding says of itself as one that is known: of an engine, or of a file alone. */
export const asKnown = (
  { code, measure, position, place }: Finding,
  engine?: string,
  session?: string,
): KnownFinding => ({
  code,
  engine: engine ?? place.path,
  session: session ?? null,
  measure: measure ?? null,
  position: position ?? null,
});

export const sessionOf = (shown: Shown): string => (isState(shown) ? 'state' : shown.session.path);

export const foundIn = (chosen: readonly Shown[], engine: string): readonly KnownFinding[] =>
  chosen.flatMap((shown) => shown.findings.map((each) => asKnown(each, engine, sessionOf(shown))));

/** The same with a word on each finding whether it was known. */
export function withKnown(
  chosen: readonly Shown[],
  engine: string,
  known: KnownOptions | undefined,
): readonly Shown[] {
  if (known === undefined) return chosen;
  const remaining = new Remaining(known.findings.filter((each) => each.engine === engine));
  return chosen.map((shown) => ({
    ...shown,
    findings: shown.findings.map((each) => ({
      ...each,
      known: known.isUpdating || remaining.take(asKnown(each, engine, sessionOf(shown))),
    })),
  }));
}

/** The same for what is of no engine. */
export function filesWithKnown(
  findings: readonly Finding[],
  known: KnownOptions | undefined,
): readonly Finding[] {
  if (known === undefined) return findings;
  const remaining = new Remaining(known.findings.filter(({ session }) => session === null));
  return findings.map((each) => ({
    ...each,
    known: known.isUpdating || remaining.take(asKnown(each)),
  }));
}
