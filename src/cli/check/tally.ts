import { type Finding, SEVERITIES, type Severity } from '../../checks/finding.ts';
import { isState, type ReportedSession, type StateReport } from '../../checks/judge/report.ts';
import { type Diagnostic, sortDiagnostics } from '../../diagnostic/diagnostic.ts';
import type { RunTotals } from '../../output/check/formats/format.ts';

/** How many sessions of an engine were looked at, and what was found in them. */
export interface Counts {
  readonly sessions: number;
  readonly findings: Readonly<Record<Severity, number>>;
}

export function countsOf(sessions: readonly (ReportedSession | StateReport)[]): Counts {
  const findings = { error: 0, warning: 0, remark: 0 };
  for (const { severity } of sessions.flatMap((session) => session.findings)) findings[severity] += 1;
  const looked = sessions.reduce((sum, each) => sum + (isState(each) ? each.run.length : 1), 0);
  return { sessions: looked, findings };
}

/** What a run has come across so far, and the exit code that it comes to. */
export class Tally {
  readonly strict: boolean;
  engines = 0;
  sessions = 0;
  readonly findings: Record<Severity, number> = { error: 0, warning: 0, remark: 0 };
  readonly #told = new Set<string>();

  constructor(strict: boolean) {
    this.strict = strict;
  }

  get diagnostics(): number {
    return this.#told.size;
  }

  /** Those not told yet: a document that serves many engines has its faults once. */
  newDiagnostics(list: readonly Diagnostic[]): readonly Diagnostic[] {
    const fresh = list.filter((each) => {
      const { path, line, column } = each.place;
      const key = `${path}:${line}:${column} ${each.code} ${each.message}`;
      const isNew = !this.#told.has(key);
      this.#told.add(key);
      return isNew;
    });
    return sortDiagnostics(fresh);
  }

  countEngine(): void {
    this.engines += 1;
  }

  /** Of no session. */
  countFindings(findings: readonly Finding[]): void {
    for (const { severity } of findings) this.findings[severity] += 1;
  }

  countSessions({ sessions, findings }: Counts): void {
    this.sessions += sessions;
    for (const severity of SEVERITIES) this.findings[severity] += findings[severity];
  }

  /** Whether there is nothing but remarks. */
  isWell(): boolean {
    return this.diagnostics + this.findings.error + this.findings.warning === 0;
  }

  totals(): RunTotals {
    const { engines, sessions, diagnostics, findings } = this;
    return { engines, sessions, diagnostics, findings, exit: this.exitCode() };
  }

  /** 2 when a document cannot be trusted, 1 for an error on an engine (`strict` raises warnings), else 0. */
  exitCode(): 0 | 1 | 2 {
    if (this.diagnostics > 0) return 2;
    return this.findings.error > 0 || (this.strict && this.findings.warning > 0) ? 1 : 0;
  }
}
