import { type Finding, SEVERITIES, type Severity } from '../../checks/finding.ts';
import { isState, type ReportedSession, type StateReport } from '../../checks/judge/report.ts';
import { type Diagnostic, sortDiagnostics } from '../../diagnostic/diagnostic.ts';
import type { RunTotals } from '../../output/check/formats/format.ts';
import type { KnownFinding } from '../../output/check/knownFinding.ts';

/** How many sessions of an engine were looked at, and what was found in them. */
export interface Counts {
  readonly sessions: number;
  readonly findings: Readonly<Record<Severity, number>>;
  /** Of them those that were known before the run. */
  readonly known: Readonly<Record<Severity, number>>;
}

export function countsOf(sessions: readonly (ReportedSession | StateReport)[]): Counts {
  const all = sessions.flatMap((session) => session.findings);
  const looked = sessions.reduce((sum, each) => sum + (isState(each) ? each.run.length : 1), 0);
  return { sessions: looked, findings: bySeverity(all), known: bySeverity(all.filter(isKnown)) };
}

const isKnown = ({ known }: Finding): boolean => known === true;

function bySeverity(findings: readonly Finding[]): Readonly<Record<Severity, number>> {
  const counts = { error: 0, warning: 0, remark: 0 };
  for (const { severity } of findings) counts[severity] += 1;
  return counts;
}

/** What a run has come across so far, and the exit code that it comes to. */
export class Tally {
  readonly strict: boolean;
  engines = 0;
  sessions = 0;
  readonly findings: Record<Severity, number> = { error: 0, warning: 0, remark: 0 };
  readonly known: Record<Severity, number> = { error: 0, warning: 0, remark: 0 };
  readonly #reported = new Set<string>();

  constructor(strict: boolean) {
    this.strict = strict;
  }

  get diagnostics(): number {
    return this.#reported.size;
  }

  /** Those not told yet: a document that serves many engines has its faults once. */
  newDiagnostics(list: readonly Diagnostic[]): readonly Diagnostic[] {
    const fresh = list.filter((each) => {
      const { path, line, column } = each.place;
      const key = `${path}:${line}:${column} ${each.code} ${each.message}`;
      const isNew = !this.#reported.has(key);
      this.#reported.add(key);
      return isNew;
    });
    return sortDiagnostics(fresh);
  }

  countEngine(): void {
    this.engines += 1;
  }

  /** Of no session. */
  countFindings(findings: readonly Finding[]): void {
    this.#add(bySeverity(findings), bySeverity(findings.filter(isKnown)));
  }

  countSessions({ sessions, findings, known }: Counts): void {
    this.sessions += sessions;
    this.#add(findings, known);
  }

  #add(findings: Counts['findings'], known: Counts['known']): void {
    for (const severity of SEVERITIES) {
      this.findings[severity] += findings[severity];
      this.known[severity] += known[severity];
    }
  }

  /** Whether there is nothing but remarks, and what was known. */
  isWell(): boolean {
    return this.diagnostics + this.#new('error') + this.#new('warning') === 0;
  }

  /** `gone` is what was known and is no longer found; undefined where nothing was said to be known. */
  totals(gone: readonly KnownFinding[] | undefined): RunTotals {
    const { engines, sessions, diagnostics, findings } = this;
    const known = SEVERITIES.reduce((sum, each) => sum + this.known[each], 0);
    return {
      ...{ engines, sessions, diagnostics, findings },
      known: gone && { findings: known, gone },
      exit: this.exitCode(),
    };
  }

  /** 2 when a document cannot be trusted, 1 for an error on an engine that was not known (`strict` raises warnings), else 0. */
  exitCode(): 0 | 1 | 2 {
    if (this.diagnostics > 0) return 2;
    return this.#new('error') > 0 || (this.strict && this.#new('warning') > 0) ? 1 : 0;
  }

  #new(severity: Severity): number {
    return this.findings[severity] - this.known[severity];
  }
}
