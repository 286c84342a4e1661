import { failed, type Outcome } from './problem.ts';

/** A path relative to the root, with `/`, without `.`, `..` or empty parts. */
export type PathReason = 'path' | 'outside';

/** Checks a path below the root by its text alone, before any file is touched. */
export function checkPathBelow(path: string): Outcome<string, PathReason> {
  const parts = path.split('/');
  if (parts.includes('..')) return outside(path);
  return checkCharacters(path) ?? checkParts(path, parts) ?? { ok: true, value: path };
}

/**
 * A path as a document writes it (`extends: ../../limits/family.yaml`), seen from that document's folder
 * (relative to the root, '' for the root itself). It may climb with `..` but not above the root.
 */
export function resolveReference(folder: string, reference: string): Outcome<string, PathReason> {
  const refused = checkCharacters(reference);
  if (refused) return refused;
  const parts = folder === '' ? [] : folder.split('/');
  for (const part of reference.split('/')) {
    if (part === '.') continue;
    if (part !== '..') parts.push(part);
    else if (parts.pop() === undefined) return outside(reference);
  }
  return checkParts(reference, parts) ?? { ok: true, value: parts.join('/') };
}

type Refused = { readonly ok: false } & Extract<Outcome<string, PathReason>, { ok: false }>;

// A colon or a backslash means a drive, a stream or a folder on other systems, so the same shop would be read differently there.
function checkCharacters(path: string): Refused | undefined {
  if (/[\p{Cc}\p{Zl}\p{Zp}]/u.test(path)) return refuse(path, 'holds a control character');
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

const quoted = (path: string): string => JSON.stringify(path.length > 200 ? `${path.slice(0, 200)}…` : path);
