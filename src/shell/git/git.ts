import { quoted } from '../../diagnostic/quoted.ts';
import { checkPathBelow } from '../discover/pathBelow.ts';
import { done, failed, type Outcome } from '../problem.ts';
import { isObjectId, requireId } from './objectId.ts';
import { type GitPlace, type GitReason, runGit } from './process.ts';

/** What a commit holds under a path; the content of a link is where it leads. */
export interface TreeEntry {
  /** From the top of the repository, with `/`. */
  readonly path: string;
  /** The blob's id: 40 hexadecimal digits, or 64 in a repository that uses SHA-256. Of another repository, its commit's. */
  readonly oid: string;
  readonly kind: 'file' | 'link' | 'repository';
}

const KINDS: ReadonlyMap<string, TreeEntry['kind']> = new Map([
  ['100644', 'file'],
  ['100755', 'file'],
  ['120000', 'link'],
  ['160000', 'repository'],
]);

export interface Commit {
  readonly oid: string;
  /** When it was committed, in seconds since 1970, UTC. */
  readonly time: number;
  /** The first line of its message: text from a stranger. */
  readonly subject: string;
}

/** It cannot begin with a dash and holds no colon, space or control character. */
const isRevision = (text: string): boolean =>
  // Mostly in ASCII: the tables of all letters take a while to read.
  /^[\w@][\w./@{}~^+=#-]{0,199}$/.test(text) ||
  /^[\p{L}\p{N}_@][\p{L}\p{M}\p{N}_./@{}~^+=#-]{0,199}$/u.test(text);

/** The id of the commit that a revision (`HEAD~3`, a branch, a tag, a part of an id) names. */
export function resolveRevision(place: GitPlace, revision: string): Outcome<string, GitReason> {
  if (!isRevision(revision)) {
    return failed('revision', `${quoted(revision)} is not the form of a revision`, REVISION_HELP);
  }
  const command = ['rev-parse', '--verify', '-q', '--end-of-options', `${revision}^{commit}`];
  const answer = runGit(place, command, { maxBytes: 1000 });
  if (!answer.ok) return answer.problem.reason === 'silent' ? notThere(place, revision) : answer;
  const oid = answer.value.toString('latin1').trim();
  return isObjectId(oid) ? done(oid) : failed('git', `git names no commit for ${revision}`, REVISION_HELP);
}

/**
 * The commits that several revisions name, in one process. What is left out has to be asked for by itself, which says what
 * is wrong with it.
 */
export function resolveTogether(place: GitPlace, revisions: readonly string[]): ReadonlyMap<string, string> {
  const names = revisions.filter(isRevision);
  const input = names.map((each) => `${each}^{commit}\n`).join('');
  const answer = runGit(place, ['cat-file', '--batch-check'], { maxBytes: names.length * 1000, input });
  const lines = answer.ok ? answer.value.toString('latin1').trimEnd().split('\n') : [];
  // A name that git cannot take apart may end the process, and one that is missing is reported in words.
  const oids = lines.map((line) => /^([0-9a-f]+) commit \d+$/.exec(line)?.[1]);
  if (oids.length !== names.length) return new Map();
  return new Map(
    names.flatMap((name, index) => (oids[index] === undefined ? [] : [[name, oids[index]] as const])),
  );
}

const REVISION_HELP = 'name a branch, a tag, a commit, or something like HEAD~3';

function notThere(place: GitPlace, revision: string): Outcome<never, GitReason> {
  const shallow = isShallow(place);
  if (!shallow.ok || !shallow.value) {
    return failed('revision', `there is no commit ${revision}`, REVISION_HELP);
  }
  return failed(
    'shallow',
    `there is no commit ${revision} here: this is a shallow clone, whose history was cut short`,
    'fetch the rest with: git fetch --unshallow (in a CI job, check out the full depth)',
  );
}

/** Whether the history of this clone was cut short. */
export function isShallow(place: GitPlace): Outcome<boolean, GitReason> {
  const answer = runGit(place, ['rev-parse', '--is-shallow-repository'], { maxBytes: 1000 });
  return answer.ok ? done(answer.value.toString('latin1').trim() === 'true') : answer;
}

/** What a commit holds in and below `folder` (from the top of the repository; '' is all of it). */
export function listTree(
  place: GitPlace,
  commit: string,
  folder = '',
): Outcome<readonly TreeEntry[], GitReason> {
  const allowed = folder === '' ? done(folder) : checkPathBelow(folder);
  if (!allowed.ok) return allowed;
  // To ls-tree a `--` behind these would be one more path.
  const where = folder === '' ? [] : [folder];
  const command = ['ls-tree', '-r', '-z', '--full-tree', '--end-of-options', requireId(commit), ...where];
  const answer = runGit(place, command, { maxBytes: 256 * 2 ** 20 });
  return answer.ok ? done(records(answer.value).flatMap((record) => parseEntry(record) ?? [])) : answer;
}

/**
 * What git's index holds: what the next commit would. A hook learns from `GIT_INDEX_FILE` which index that is, where only
 * some files are committed.
 */
export function listStaged(place: GitPlace): Outcome<readonly TreeEntry[], GitReason> {
  const answer = runGit(place, ['ls-files', '--stage', '-z', '--full-name'], {
    maxBytes: 256 * 2 ** 20,
    passedOn: ['GIT_INDEX_FILE'],
  });
  if (!answer.ok) return answer;
  const staged = records(answer.value);
  const unmerged = staged.find((record) => !/^\d+ [0-9a-f]+ 0\t/.test(record));
  if (unmerged !== undefined) {
    const path = unmerged.slice(unmerged.indexOf('\t') + 1);
    return failed('git', `${quoted(path)} is not merged yet`, 'resolve it, then git add it');
  }
  return done(
    staged.flatMap((record) => parseEntry(record.replace(/^(\d+) ([0-9a-f]+) 0\t/, '$1 blob $2\t')) ?? []),
  );
}

/** `100644 blob ID<tab>PATH`, `160000 commit …`. The sizes are not asked for: git would open each blob to tell. */
function parseEntry(record: string): TreeEntry | undefined {
  const kind = KINDS.get(record.slice(0, 6));
  const tab = record.indexOf('\t');
  if (kind === undefined) return undefined;
  const path = record.slice(tab + 1);
  // No working tree can hold such a path; only a tree made by hand does.
  if (/(?:^|\/)\.{0,2}(?:\/|$)/.test(path)) return undefined;
  return { path, oid: record.slice(record.lastIndexOf(' ', tab) + 1, tab), kind };
}

/** The commits up to and including `commit` that changed any of the paths, the newest first; all commits without paths. */
export function commitsTouching(
  place: GitPlace,
  commit: string,
  paths: readonly string[],
): Outcome<readonly Commit[], GitReason> {
  for (const path of paths) {
    const allowed = checkPathBelow(path);
    if (!allowed.ok) return allowed;
  }
  const form = ['-z', '--format=%H %ct %s', '--encoding=UTF-8', '--no-ext-diff', '--no-textconv'];
  const command = ['log', ...form, '--end-of-options', requireId(commit), '--', ...paths];
  const answer = runGit(place, command, { maxBytes: 64 * 2 ** 20 });
  return answer.ok ? done(records(answer.value).flatMap((record) => parseCommit(record) ?? [])) : answer;
}

/** The day on which a commit was made, `YYYY-MM-DD`. */
export function dayOfCommit(place: GitPlace, commit: string): Outcome<string, GitReason> {
  const command = ['log', '-1', '--format=%ct', '--end-of-options', requireId(commit), '--'];
  const answer = runGit(place, command, { maxBytes: 1000 });
  if (!answer.ok) return answer;
  const seconds = Number(answer.value.toString('latin1').trim());
  return done(new Date(seconds * 1000).toISOString().slice(0, 10));
}

function parseCommit(record: string): Commit | undefined {
  const found = /^([0-9a-f]+) (\d+) (.*)$/s.exec(record);
  const [, oid = '', time, subject = ''] = found ?? [];
  return found === null ? undefined : { oid, time: Number(time), subject };
}

const records = (output: Buffer): readonly string[] =>
  output
    .toString('utf8')
    .split('\0')
    .filter((record) => record !== '');
