import { dirname } from 'node:path';
import type { PathReason } from '../discover/pathBelow.ts';
import { done, failed, type Outcome, systemCode } from '../problem.ts';
import { childProcess } from '../process/lateModules.ts';
import type { Environment } from '../world.ts';

export type GitReason =
  | PathReason
  | 'git-missing'
  | 'no-repository'
  /** Not the form of a revision, or none of that name. */
  | 'revision'
  /** Not there, in a clone whose history was cut short. */
  | 'shallow'
  /** git ended with an error and said nothing. */
  | 'silent'
  /** git gave more than was allowed. */
  | 'too-much'
  | 'git';

/** Where git runs, and what it is given about that place. */
export interface GitPlace {
  /** The top of a working tree, or a bare repository. Absolute, without links. */
  readonly folder: string;
  readonly bare: boolean;
  readonly environment: Environment;
}

/**
 * Options before the command. A repository may come from a stranger and its settings can name programs to run:
 * file system monitors, hooks, pagers, transports. Each is switched off here, though the few commands that we use run none.
 */
const HARDENED: readonly string[] = [
  '--no-pager',
  '--literal-pathspecs',
  ...[
    'core.fsmonitor=false',
    'core.hooksPath=/dev/null',
    'protocol.allow=never',
    'log.showSignature=false',
    'log.follow=false',
    'core.quotePath=false',
  ].flatMap((setting) => ['-c', setting]),
];

interface Limits {
  readonly maxBytes: number;
  /** Its standard input. */
  readonly input?: string;
  /** Names in the environment that this command alone is given. */
  readonly passedOn?: readonly string[];
}

/** Runs git once, without a shell, and gives what it printed. */
export function runGit(
  place: GitPlace,
  command: readonly string[],
  limits: Limits,
): Outcome<Buffer, GitReason> {
  // Only a folder that was found to be a bare repository, in no other repository's tree, may be used as one.
  const bare = ['-c', `safe.bareRepository=${place.bare ? 'all' : 'explicit'}`];
  const ended = childProcess().spawnSync('git', [...HARDENED, ...bare, '-C', place.folder, ...command], {
    shell: false,
    windowsHide: true,
    input: limits.input ?? '',
    maxBuffer: limits.maxBytes,
    timeout: 60_000,
    env: environmentAt(place, limits.passedOn),
  });
  if (ended.error) return notRun(ended.error);
  return ended.status === 0 ? done(ended.stdout) : refused(ended.stderr.toString('utf8'));
}

// Which user settings apply, and where objects lie while a push is being received. Everything else that git reads from the
// environment (another repository, an editor, a trace file, a program to ask for passwords) is left out; a hook sets some.
const PASSED_ON = new Set([
  'GIT_ALTERNATE_OBJECT_DIRECTORIES',
  'GIT_CONFIG_COUNT',
  'GIT_CONFIG_GLOBAL',
  'GIT_CONFIG_NOSYSTEM',
  'GIT_CONFIG_PARAMETERS',
  'GIT_CONFIG_SYSTEM',
  'GIT_DISCOVERY_ACROSS_FILESYSTEM',
  'GIT_EXEC_PATH',
  'GIT_OBJECT_DIRECTORY',
]);

function environmentAt(
  { environment, folder }: GitPlace,
  passedOn: readonly string[] = [],
): NodeJS.ProcessEnv {
  const isPassedOn = (name: string): boolean =>
    PASSED_ON.has(name) || passedOn.includes(name) || /^GIT_CONFIG_(KEY|VALUE)_\d+$/.test(name);
  const kept = Object.entries(environment).filter(([name]) => !name.startsWith('GIT_') || isPassedOn(name));
  return {
    ...Object.fromEntries(kept),
    // If the folder turns out to be no repository, none above it is used instead.
    GIT_CEILING_DIRECTORIES: dirname(folder),
    GIT_ALLOW_PROTOCOL: 'none',
    GIT_NO_LAZY_FETCH: '1',
    GIT_NO_REPLACE_OBJECTS: '1',
    GIT_OPTIONAL_LOCKS: '0',
    GIT_TERMINAL_PROMPT: '0',
    LC_ALL: 'C',
  };
}

function notRun(error: Error): Outcome<never, GitReason> {
  const code = systemCode(error);
  if (code === 'ENOENT')
    return failed('git-missing', 'git was not found', 'install git, or leave out the revision');
  if (code === 'ENOBUFS')
    return failed('too-much', 'git gave more than was asked for', 'name a smaller folder or fewer revisions');
  if (code === 'ETIMEDOUT')
    return failed('git', 'git did not answer for a minute', 'see whether the disk is busy');
  return failed('git', `git could not be run (${code || error.message})`, 'try the same with git itself');
}

/** git's own words, without its prefix; the command that it proposes becomes the help. */
function refused(said: string): Outcome<never, GitReason> {
  if (said.trim() === '') return failed('silent', 'git gave no answer', 'try the same with git itself');
  const lines = said.split('\n').map((line) => line.trim());
  const message = lines.find((line) => /^(fatal|error): /.test(line))?.replace(/^(fatal|error): /, '');
  const proposed = lines.find((line) => line.startsWith('git '));
  const help = proposed === undefined ? 'try the same with git itself' : `if you trust it: ${proposed}`;
  return failed('git', `git says: ${message ?? lines[0]}`, help);
}
