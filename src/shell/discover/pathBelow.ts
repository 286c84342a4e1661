import { posix } from 'node:path';
import { quoted } from '../../diagnostic/quoted.ts';
import { folderOf } from '../../documents/opened.ts';
import { failed, type Outcome } from '../problem.ts';

/** A path relative to the root, with `/`, without `.`, `..` or empty parts. */
export type PathReason = 'path' | 'outside';

/** Checks a path below the root by its text alone, before any file is touched. */
export function checkPathBelow(path: string): Outcome<string, PathReason> {
  const parts = path.split('/');
  if (parts.includes('..')) return outside(path);
  return checkCharacters(path) ?? checkParts(path, parts) ?? { ok: true, value: path };
}

/**
 * A path as a document writes it (`extends: ../../limits/family.yaml`): it stands from that document's folder. Whether
 * it stays below the root is seen when it is read; one from the root of the disk is left as it is, to be refused.
 */
export const pathFrom = (document: string, path: string): string =>
  posix.isAbsolute(path) ? path : posix.normalize(posix.join(folderOf(document), path));

/** The folders above one, the nearest first; `.` is the root. */
export function foldersAbove(folder: string): readonly string[] {
  if (folder === '.') return [];
  const parent = folderOf(folder);
  return [parent, ...foldersAbove(parent)];
}

export const depthOf = (path: string): number => path.split('/').length;

/** Whether a folder is one of these, or lies below one. */
export function isWithin(folders: ReadonlySet<string>, folder: string): boolean {
  for (let at = folder; ; at = folderOf(at)) {
    if (folders.has(at)) return true;
    if (at === '.') return false;
  }
}

type Refused = { readonly ok: false } & Extract<Outcome<string, PathReason>, { ok: false }>;

// A colon or a backslash means a drive, a stream or a folder on other systems, so the same shop would be read differently there.
function checkCharacters(path: string): Refused | undefined {
  if (/[\0-\x1f\x7f-\x9f\u2028\u2029]/.test(path)) return refuse(path, 'holds a control character');
  // What is not UTF-8 comes decoded so, and several such names as the same.
  if (path.includes('\ufffd')) return refuse(path, 'is not in UTF-8');
  if (/[\\:]/.test(path)) return refuse(path, 'holds a backslash or a colon');
  if (path.startsWith('/')) return refuse(path, 'is absolute');
  return undefined;
}

function checkParts(path: string, parts: readonly string[]): Refused | undefined {
  if (parts.some((part) => part === '' || part === '.')) return refuse(path, 'has an empty part');
  if (parts.some(isGitFolder)) return refuse(path, 'leads into the .git folder');
  return undefined;
}

// Some file systems ignore case and invisible characters, and one keeps the short name GIT~1.
function isGitFolder(part: string): boolean {
  const name = part.replace(/\p{Cf}/gu, '').toLowerCase();
  return name === '.git' || name === 'git~1';
}

const refuse = (path: string, why: string): Refused =>
  failed('path', `the path ${quoted(path)} ${why}`, 'write a path of plain names with / between them');

const outside = (path: string): Refused =>
  failed('outside', `the path ${quoted(path)} leads out of the shop`, 'name a file inside the shop folder');
