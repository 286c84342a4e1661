import type { Finding, Severity } from '../../../checks/finding.ts';
import type { Diagnostic } from '../../../diagnostic/diagnostic.ts';
import type { NamedCommit } from '../../diff/revision.ts';
import type { Written } from '../../escape/language.ts';
import type { TextStyle } from '../../terminal/textStyle.ts';
import type { KnownFinding } from '../knownFinding.ts';
import type { ShownEngine } from '../shownEngine.ts';

/**
 * A way to write what a check comes to. An engine is taken up where it was judged, which may be another thread; what is
 * made of it there is plain data that only the same format looks into.
 */
export interface CheckFormat<Part = unknown> {
  readonly part: (shown: ShownEngine, context: PartContext) => Part;
  /** Writes as the run goes on, one engine at a time, so that no more than it must is kept. */
  readonly writer: (run: RunHead, write: (text: Written) => void) => CheckWriter<Part>;
  /** It writes nothing before the last engine of several. */
  readonly waits?: true;
  /** A hook prints nothing of it where all is well. */
  readonly isQuietIfWell?: true;
}

export interface PartContext {
  readonly style: TextStyle;
  /** The run is one of several that are gathered: then JSON holds what any format is written from. */
  readonly isShare: boolean;
}

/** What is known before the first engine. */
export interface RunHead {
  readonly style: TextStyle;
  readonly strict: boolean;
  /** The documents are those that are staged in git. */
  readonly staged: boolean;
  /** Where the documents come from; undefined for the working tree. */
  readonly at: NamedCommit | undefined;
  /** Only what changed after it was looked at. */
  readonly since: NamedCommit | undefined;
  /** Of so many runs that are gathered, which this is, and how many engines they check together. */
  readonly share: { readonly number: number; readonly of: number; readonly total: number } | undefined;
}

/** Methods, so that a writer of one kind of part stands in a list of writers of any. */
export interface CheckWriter<Part = unknown> {
  diagnostics(list: readonly Diagnostic[], texts: ReadonlyMap<string, string>): void;
  engine(part: Part): void;
  /** Of no engine. */
  findings(list: readonly Finding[]): void;
  /** An engine, and the files with errors that its verdicts stand on. */
  notJudged(folder: string, faulty: readonly string[]): void;
  end(totals: RunTotals): void;
}

/** What a run came to. */
export interface RunTotals {
  readonly engines: number;
  readonly sessions: number;
  readonly diagnostics: number;
  readonly findings: Readonly<Record<Severity, number>>;
  /** Undefined where the run was told of no known findings. */
  readonly known: { readonly findings: number; readonly gone: readonly KnownFinding[] } | undefined;
  readonly exit: 0 | 1 | 2;
}
