import { type KnownFinding, sortKnown } from '../../../output/check/knownFinding.ts';
import { type KnownOptions, Remaining } from './knownFindings.ts';

/** What of an engine a run has looked at: `all` where every session was asked for. */
export type Looked = readonly string[] | 'all';

/** Which of the findings that were known are still there. What was not looked at stays known. */
export class KnownRun {
  readonly options: KnownOptions;
  readonly #covers: (path: string) => boolean;
  readonly #looked = new Map<string, Looked>();
  readonly #found: KnownFinding[] = [];

  /** `covers` says whether the run would have come across whatever lies at a path. */
  constructor(options: KnownOptions, covers: (path: string) => boolean) {
    this.options = options;
    this.#covers = covers;
  }

  look(engine: string, looked: Looked, found: readonly KnownFinding[]): void {
    this.#looked.set(engine, looked);
    this.#found.push(...found);
  }

  lookAtFiles(found: readonly KnownFinding[]): void {
    this.#found.push(...found);
  }

  gone(): readonly KnownFinding[] {
    const found = new Remaining(this.#found);
    return sortKnown(this.options.findings.filter((each) => this.#isLookedAt(each) && !found.take(each)));
  }

  /** What is known from now on. */
  updated(): readonly KnownFinding[] {
    return sortKnown([...this.options.findings.filter((each) => !this.#isLookedAt(each)), ...this.#found]);
  }

  #isLookedAt({ engine, session }: KnownFinding): boolean {
    const looked = this.#looked.get(engine);
    if (looked === undefined || session === null) return this.#covers(engine);
    return looked === 'all' ? session !== 'state' : looked.includes(session);
  }
}

/** A run over these paths comes across whatever lies at or below them. */
export function coveredBy(paths: readonly string[]): (path: string) => boolean {
  const folders = paths.map((each) => each.replace(/^(\.\/)+/, '').replace(/\/+$/, '') || '.');
  return (path) =>
    folders.some((folder) => folder === '.' || path === folder || path.startsWith(`${folder}/`));
}
