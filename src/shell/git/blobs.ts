import { done, failed, type Outcome } from '../problem.ts';
import { requireId } from './objectId.ts';
import { type GitPlace, type GitReason, runGit } from './process.ts';

/** The bytes of a blob, or why they are not had: it is not in this clone, or larger than was allowed. */
export type Blob = Uint8Array | 'absent' | 'too big';

/**
 * The contents of blobs by their ids, in one process however many they are, unless they are so large that their sizes
 * have to be asked first. At most `mostBytes` of each are held.
 */
export function readBlobs(
  place: GitPlace,
  oids: readonly string[],
  mostBytes: number,
): Outcome<ReadonlyMap<string, Blob>, GitReason> {
  const wanted = new Set(oids.map(requireId));
  if (wanted.size === 0) return done(new Map());
  const bound = Math.min(wanted.size * (mostBytes + HEADER_BYTES), MOST_AT_ONCE);
  const read = readTogether(place, wanted, { bound, mostBytes });
  return read.ok || read.problem.reason !== 'too-much' ? read : readSmall(place, wanted, mostBytes);
}

/** Far more than the documents of an engine. */
const MOST_AT_ONCE = 16 * 2 ** 20;

/** `ID blob SIZE\n`, and a line feed behind the content. */
const HEADER_BYTES = 100;

function readTogether(
  place: GitPlace,
  wanted: ReadonlySet<string>,
  { bound, mostBytes }: { readonly bound: number; readonly mostBytes: number },
): Outcome<Map<string, Blob>, GitReason> {
  const answer = runGit(place, ['cat-file', '--batch'], { maxBytes: bound, input: linesOf(wanted) });
  if (!answer.ok) return answer;
  const blobs = new Map<string, Blob>();
  for (let at = 0; at < answer.value.length; ) {
    const end = answer.value.indexOf(10, at);
    const header = blobHeader(answer.value.toString('latin1', at, end));
    if (!header.ok) return header;
    const { oid, size } = header.value;
    const isHeld = size !== undefined && size <= mostBytes;
    blobs.set(
      oid,
      size === undefined ? 'absent' : isHeld ? answer.value.subarray(end + 1, end + 1 + size) : 'too big',
    );
    at = size === undefined ? end + 1 : end + 1 + size + 1;
  }
  return blobs.size < wanted.size ? stopped : done(blobs);
}

/** The same for blobs of which some are too large: they are left out before the contents are asked for. */
function readSmall(
  place: GitPlace,
  wanted: ReadonlySet<string>,
  mostBytes: number,
): Outcome<ReadonlyMap<string, Blob>, GitReason> {
  const input = linesOf(wanted);
  const answer = runGit(place, ['cat-file', '--batch-check'], {
    maxBytes: wanted.size * HEADER_BYTES,
    input,
  });
  if (!answer.ok) return answer;
  const small = new Map<string, number>();
  for (const line of answer.value.toString('latin1').trimEnd().split('\n')) {
    const header = blobHeader(line);
    if (!header.ok) return header;
    const { oid, size = 0 } = header.value;
    if (size <= mostBytes) small.set(oid, size);
  }
  const bound = [...small.values()].reduce((sum, size) => sum + size + HEADER_BYTES, 0);
  const read = readTogether(place, new Set(small.keys()), { bound, mostBytes });
  if (!read.ok) return read;
  for (const oid of wanted) if (!small.has(oid)) read.value.set(oid, 'too big');
  return read;
}

/** Only ids are asked for: a name that git cannot resolve may end the process without an answer. */
const linesOf = (oids: ReadonlySet<string>): string => [...oids].map((oid) => `${oid}\n`).join('');

/** `ID blob SIZE`, or `ID missing` for one that is not in this clone. */
function blobHeader(
  line: string,
): Outcome<{ readonly oid: string; readonly size: number | undefined }, GitReason> {
  const [, oid, size] = /^([0-9a-f]+) (?:blob (\d+)|missing)$/.exec(line) ?? [];
  if (oid === undefined) return failed('git', `git says: ${line}`, 'run git fsck');
  return done({ oid, size: size === undefined ? undefined : Number(size) });
}

const stopped: Outcome<never, GitReason> = failed('git', 'git stopped before the last file', 'run git fsck');
