import type { ShareJson } from '../../output/check/formats/shareNotes.ts';
import type { KnownFinding } from '../../output/check/knownFinding.ts';
import type { EngineJson, FollowUpJson, ShownEngine } from '../../output/check/shownEngine.ts';
import type { EngineView } from '../../output/check/view/engineView.ts';
import { fileOfCall } from '../../shell/discover/paths.ts';
import { readBelow } from '../../shell/discover/safeRead.ts';
import type { World } from '../../shell/world.ts';
import { orUsage, UsageError } from '../usage.ts';
import type { DiagnosticJson, FindingJson } from './fromJson.ts';

/** What `check --share K/N --format json` wrote. */
export interface ShareOutput {
  readonly tool: { readonly version: string };
  readonly at: NamedRevision | null;
  readonly since: NamedRevision | null;
  readonly strict: boolean;
  readonly exit: 0 | 1 | 2;
  readonly diagnostics: readonly DiagnosticJson[];
  readonly findings: readonly FindingJson[];
  readonly engines: readonly (EngineJson & {
    readonly view?: EngineView;
    readonly faulty?: readonly string[];
  })[];
  readonly follow_ups: readonly FollowUpJson[];
  readonly summary: Readonly<Record<'sessions' | 'errors' | 'warnings' | 'remarks', number>>;
  readonly known?: { readonly findings: number; readonly gone: readonly KnownFinding[] };
  readonly share: ShareJson;
}

export interface NamedRevision {
  readonly revision: string;
  readonly commit: string;
}

/** All shares of one run, the first first. */
export function readShares(files: readonly string[], world: World): readonly ShareOutput[] {
  const shares = files.map((file) => readShare(file, world)).sort((a, b) => a.share.number - b.share.number);
  const [first] = shares;
  const of = first?.share.of ?? 0;
  const missing = Array.from({ length: of }, (_, index) => index + 1).filter(
    (number) => !shares.some(({ share }) => share.number === number),
  );
  if (missing.length > 0)
    throw new UsageError(`share ${missing.join(', ')} of ${of} is missing`, 'name the files of all shares');
  const commonOf = ({ tool, at, since, strict, known, share }: ShareOutput): string =>
    JSON.stringify([tool, at, since, strict, known === undefined, share.of, share.total, share.detail]);
  if (
    shares.length !== of ||
    shares.some((each) => first === undefined || commonOf(each) !== commonOf(first))
  )
    throw new UsageError('the files are not the shares of one run', 'check all shares with the same options');
  return shares;
}

function readShare(file: string, { workingDirectory }: World): ShareOutput {
  const { folder, name } = fileOfCall(file, workingDirectory);
  const bytes = orUsage(readBelow(folder, name, MOST_BYTES));
  try {
    const output = JSON.parse(Buffer.from(bytes).toString('utf8'));
    if (isShare(output)) return output;
  } catch {
    // Reported below.
  }
  throw new UsageError(`${file} holds no share of a check`, 'tenths check --share K/N --format json:FILE');
}

/** Reported by its head, and whole: nobody writes one by hand. */
function isShare(output: Partial<Record<string, unknown>>): boolean {
  const { format, version, diagnostics, findings, engines, follow_ups, share } = output;
  const lists = [diagnostics, findings, engines, follow_ups, (share as ShareJson | undefined)?.engines];
  return format === 'tenths.check' && version === 2 && lists.every(Array.isArray);
}

/** As long as a text can be. */
const MOST_BYTES = 512 * 1024 * 1024;

/** An engine of a share, and the problems with documents that were told with it. */
export interface SharedEngine {
  readonly path: string;
  readonly diagnostics: readonly DiagnosticJson[];
  /** Undefined where it was not judged. */
  readonly shown: ShownEngine | undefined;
  /** Where it was not: the files that have errors. */
  readonly faulty: readonly string[];
}

export interface UnfoldedShare {
  readonly engines: readonly SharedEngine[];
  /** Problems with documents of no engine. */
  readonly rest: readonly DiagnosticJson[];
}

export function unfolded(output: ShareOutput): UnfoldedShare {
  const diagnostics = output.diagnostics.values();
  const followUps = output.follow_ups.values();
  const engines = output.engines.map(({ view, faulty = [], ...data }, index) => {
    const counts = output.share.engines[index];
    const own = {
      ...{ path: data.path, faulty },
      diagnostics: [...taken(diagnostics, counts?.diagnostics ?? 0)],
      followUps: [...taken(followUps, counts?.follow_ups ?? 0)],
    };
    return { ...own, shown: view && { view, data, followUps: own.followUps } };
  });
  return { engines, rest: [...diagnostics] };
}

function* taken<Item>(from: Iterator<Item>, count: number): Iterable<Item> {
  for (let left = count; left > 0; left--) {
    const { value, done } = from.next();
    if (done === true) return;
    yield value;
  }
}
