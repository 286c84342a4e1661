import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { builtProgram, keepingCompiled, quoted } from '../../program.ts';
import type { Bench } from '../calling.ts';

export interface Step {
  readonly uses?: string;
  readonly run?: string;
}

export interface Ran {
  readonly green: boolean;
  readonly log: string;
  readonly summary: string;
}

/** An npm that installs the built program, as the lock file of a shop would have it. */
export const INSTALLS = `mkdir -p node_modules/.bin && printf '#!/bin/sh\\nexec %s %s "$@"\\n' ${quoted(quoted(process.execPath))} ${quoted(quoted(builtProgram()))} > node_modules/.bin/tenths && chmod +x node_modules/.bin/tenths`;

/** A program of that name that does only this. */
export function putProgram(bench: Bench, path: string, script: string): void {
  bench.put({ [path]: `#!/bin/sh\n${script}\n` });
  chmodSync(join(bench.folder(), path), 0o755);
}

/** As a runner does: each `run` by bash, one after another, up to the first that fails. */
export function runSteps(
  bench: Bench,
  steps: readonly Step[],
  more: Readonly<Record<string, string>> = {},
): Ran {
  const at = (path: string): string => join(bench.folder(), path);
  const environment = {
    ...process.env,
    ...keepingCompiled(),
    PATH: [at('programs'), process.env.PATH].join(delimiter),
    RUNNER_TEMP: bench.folder(),
    GITHUB_STEP_SUMMARY: at('summary.md'),
    // A runner begins with none: what is installed comes from the tarball.
    npm_config_cache: mkdtempSync(at('cache-')),
    // A quiet npm around the tests would quieten this one as well.
    npm_config_loglevel: 'notice',
    ...more,
  };
  let [log, green] = ['', true];
  for (const { run } of steps) {
    if (run === undefined || !green) continue;
    writeFileSync(at('step.sh'), run);
    const ended = spawnSync('bash', ['--noprofile', '--norc', '-eo', 'pipefail', at('step.sh')], {
      cwd: bench.folder(),
      env: environment,
      encoding: 'utf8',
    });
    log += ended.stdout + ended.stderr;
    green = ended.status === 0;
  }
  const summary = existsSync(at('summary.md')) ? readFileSync(at('summary.md'), 'utf8') : '';
  return { green, log, summary };
}
