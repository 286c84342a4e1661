/** Why the shell could not do something: data, so that a command can print it and go on with the rest. */
export interface Problem<Reason extends string = string> {
  readonly reason: Reason;
  /** What is wrong, with the names in it. */
  readonly message: string;
  /** What to do about it. */
  readonly help: string;
}

export type Outcome<Value, Reason extends string = string> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problem: Problem<Reason> };

export const done = <Value>(value: Value): { readonly ok: true; readonly value: Value } => ({
  ok: true,
  value,
});

export const failed = <Reason extends string>(
  reason: Reason,
  message: string,
  help: string,
): { readonly ok: false; readonly problem: Problem<Reason> } => ({
  ok: false,
  problem: { reason, message, help },
});

/** The system's code of an error thrown by a file call, such as `ENOENT`; empty for any other error. */
export function systemCode(error: unknown): string {
  if (!(error instanceof Error) || !('code' in error)) return '';
  return typeof error.code === 'string' ? error.code : '';
}

const WORDS: ReadonlyMap<string, string> = new Map([
  ['EACCES', 'permission denied'],
  ['EPERM', 'not permitted'],
  ['EROFS', 'the file system is read-only'],
  ['ENOSPC', 'the disk is full'],
  ['EDQUOT', 'the disk quota is used up'],
  ['EFBIG', 'the file would be larger than allowed'],
  ['EIO', 'the disk reported an error'],
  ['EMFILE', 'too many files are open'],
  ['ENFILE', 'too many files are open on this machine'],
  ['ENAMETOOLONG', 'the name is too long'],
  ['ENOENT', 'no such file or folder'],
  ['ENOTDIR', 'a part of the path is not a folder'],
  ['EISDIR', 'it is a folder'],
  ['ELOOP', 'links lead round in a circle'],
  ['EEXIST', 'the name is taken'],
]);

/** Trouble with a file in words: `the disk is full (ENOSPC)`. Anything but a system error is a bug and is thrown on. */
export function systemWords(error: unknown): string {
  const code = systemCode(error);
  if (code === '') throw error;
  return `${WORDS.get(code) ?? 'the system refused'} (${code})`;
}

/** What a call to the system failed at, with its path: `/shop/engine.yaml: the disk is full (ENOSPC)`; undefined of any other error. */
export function systemTrouble(error: unknown): string | undefined {
  if (systemCode(error) === '' || !(error instanceof Error) || !('syscall' in error)) return undefined;
  const words = systemWords(error);
  return 'path' in error && typeof error.path === 'string' ? `${error.path}: ${words}` : words;
}
