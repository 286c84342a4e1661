import type { Severity } from '../checks/finding.ts';
import type { ReportedSession } from '../checks/report.ts';
import { type Diagnostic, sortDiagnostics } from '../diagnostic/diagnostic.ts';

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

  countSessions(sessions: readonly ReportedSession[]): void {
    this.sessions += sessions.length;
    for (const { severity } of sessions.flatMap((session) => session.findings)) this.findings[severity] += 1;
  }

  /** 2 when a document cannot be trusted, 1 for an error on an engine (`strict` raises warnings), else 0. */
  exitCode(): 0 | 1 | 2 {
    if (this.diagnostics > 0) return 2;
    return this.findings.error > 0 || (this.strict && this.findings.warning > 0) ? 1 : 0;
  }
}
