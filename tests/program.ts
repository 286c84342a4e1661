import { spawn } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PLAIN_SETTINGS } from './plainSettings.ts';

export const projectFolder = fileURLToPath(new URL('..', import.meta.url));

/** What a run of the built program printed, and how it ended. */
export interface Ran {
  readonly stdout: string;
  readonly stderr: string;
  /** Null when it had to be killed. */
  readonly exitCode: number | null;
}

export interface RunOptions {
  readonly cwd: string;
  readonly env?: Readonly<Record<string, string>>;
  /** What is piped in; nothing unless given. */
  readonly input?: string;
}

/**
 * Carries out a line of a shell in which `tenths` is the built program: what is tested is what is shipped, with its
 * exit code, its two streams and its start. Nothing of the machine shows: no colours, a fixed locale and time zone.
 */
export function runLine(line: string, { cwd, env = {}, input = '' }: RunOptions): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn('/bin/sh', ['-c', line], {
      cwd,
      env: { ...SURROUNDINGS, ...inFolderOf(programFolder()), ...env },
      stdio: [input === '' ? 'ignore' : 'pipe', 'pipe', 'pipe'],
      timeout: PATIENCE_MS,
      killSignal: 'SIGKILL',
    });
    const [stdout, stderr]: [Buffer[], Buffer[]] = [[], []];
    // Not every program reads all that it is given.
    child.stdin?.on('error', () => {}).end(input);
    child.stdout?.on('data', (chunk: Buffer) => stdout.push(chunk));
    child.stderr?.on('data', (chunk: Buffer) => stderr.push(chunk));
    child.on('error', reject);
    child.on('close', (exitCode) => {
      resolve({ stdout: textOf(stdout), stderr: textOf(stderr), exitCode });
    });
  });
}

/** Only for what would never end. */
const PATIENCE_MS = 100_000;

const textOf = (chunks: readonly Buffer[]): string => Buffer.concat(chunks).toString('utf8');

/** Arguments that the shell is to take as they are. */
export const quoted = (word: string): string => `'${word.replaceAll("'", "'\\''")}'`;

/** Only what a run needs; git's names and dates are set, so that commits made in a case are the same everywhere. */
export const SURROUNDINGS = {
  PATH: process.env.PATH ?? '',
  ...PLAIN_SETTINGS,
  GIT_AUTHOR_NAME: 'bench',
  GIT_AUTHOR_EMAIL: 'bench@example.org',
  GIT_AUTHOR_DATE: '2026-07-01T08:00:00Z',
  GIT_COMMITTER_NAME: 'bench',
  GIT_COMMITTER_EMAIL: 'bench@example.org',
  GIT_COMMITTER_DATE: '2026-07-01T08:00:00Z',
};

const inFolderOf = (folder: string) => ({
  PATH: `${folder}:${SURROUNDINGS.PATH}`,
  ...keepingCompiled(folder),
});

/** Where code that was compiled once is kept: a program that a test starts by itself is not compiled for each start. */
export const keepingCompiled = (folder = programFolder()) => ({ XDG_CACHE_HOME: join(folder, 'cache') });

let folderOfProgram: string | undefined;

/** A folder whose only program is `tenths`. */
function programFolder(): string {
  if (folderOfProgram !== undefined) return folderOfProgram;
  const folder = mkdtempSync(join(tmpdir(), 'tenths-program-'));
  const program = join(folder, 'tenths');
  mkdirSync(join(folder, 'cache'));
  writeFileSync(program, `#!/bin/sh\nexec ${quoted(process.execPath)} ${quoted(builtProgram())} "$@"\n`);
  chmodSync(program, 0o755);
  folderOfProgram = folder;
  return folder;
}

let isFresh = false;

/** The built program, for a test that starts it by itself. */
export function builtProgram(): string {
  requireFreshBuild();
  return join(projectFolder, 'bin/tenths.cjs');
}

/** A stale program would pass or fail for what is no longer written. */
export function requireFreshBuild(): void {
  if (isFresh) return;
  const built = statSync(join(projectFolder, 'dist/main.cjs'), { throwIfNoEntry: false })?.mtimeMs ?? 0;
  const changed = readdirSync(join(projectFolder, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .filter((name) => statSync(join(projectFolder, 'src', name)).mtimeMs > built);
  if (changed.length > 0) {
    throw new Error(`dist/ is older than src/${changed[0]}: npm run build, then test again`);
  }
  isFresh = true;
}
