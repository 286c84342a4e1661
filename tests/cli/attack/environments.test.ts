import { chmodSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { callHere } from '../../inProcess.ts';
import { PLAIN_SETTINGS } from '../../plainSettings.ts';
import { isLong } from '../../propertyRuns.ts';
import { put } from '../../shell/gitShop.ts';
import { tried } from '../../tries.ts';
import { withBenchShop } from '../gitHere.ts';

const here = withBenchShop();

/** What git would run, write or read instead; TRAP is a program that leaves a marker, MADE a file that is not there. */
const OF_GIT: readonly (readonly [string, string])[] = [
  ['GIT_DIR', 'MADE'],
  ['GIT_WORK_TREE', '/etc'],
  ['GIT_INDEX_FILE', 'MADE'],
  ['GIT_COMMON_DIR', 'MADE'],
  ['GIT_NAMESPACE', 'other'],
  ['GIT_PREFIX', '../..'],
  ['GIT_SHALLOW_FILE', 'MADE'],
  ['GIT_GRAFT_FILE', 'MADE'],
  ['GIT_REPLACE_REF_BASE', 'refs/heads'],
  ['GIT_EXTERNAL_DIFF', 'TRAP'],
  ['GIT_PAGER', 'TRAP'],
  ['GIT_EDITOR', 'TRAP'],
  ['GIT_SEQUENCE_EDITOR', 'TRAP'],
  ['GIT_ASKPASS', 'TRAP'],
  ['GIT_SSH', 'TRAP'],
  ['GIT_SSH_COMMAND', 'TRAP'],
  ['GIT_PROXY_COMMAND', 'TRAP'],
  ['GIT_PROTOCOL_FROM_USER', '1'],
  ['GIT_ALLOW_PROTOCOL', 'ext:file'],
  ['GIT_TRACE', 'MADE'],
  ['GIT_TRACE2', 'MADE'],
  ['GIT_TRACE2_EVENT', 'MADE'],
  ['GIT_TRACE_SETUP', 'MADE'],
  ['GIT_TRACE_PACKET', 'MADE'],
  ['GIT_FLUSH', '0'],
  ['GIT_OPTIONAL_LOCKS', '1'],
  ['GIT_LITERAL_PATHSPECS', '0'],
  ['GIT_ICASE_PATHSPECS', '1'],
  ['GIT_CEILING_DIRECTORIES', '/'],
];

/** Of everything else that a program may listen to. */
const OF_OTHERS: readonly (readonly [string, string])[] = [
  ['PAGER', 'TRAP'],
  ['EDITOR', 'TRAP'],
  ['VISUAL', 'TRAP'],
  ['SSH_ASKPASS', 'TRAP'],
  ['BROWSER', 'TRAP'],
  ['TERM', '\u001b[31m'],
  ['COLUMNS', '-1'],
  ['COLUMNS', '1e9'],
  ['LINES', '\u001b'],
  ['LANG', 'tr_TR.UTF-8'],
  ['LC_ALL', '../../etc.UTF-8'],
  ['TZ', ':/etc/passwd'],
  ['HOME', '/dev/null'],
  ['XDG_CACHE_HOME', '/dev/null'],
  ['XDG_CONFIG_HOME', 'MADE'],
  ['TMPDIR', '/dev/null'],
  ['NO_COLOR', '\u0007'],
  ['GITHUB_ACTIONS', '::error::a'],
  ['CI', '::error::a'],
  ['__proto__', 'a'],
];

const CALLS = [
  ['check', '--at', 'HEAD'],
  ['check', '--since', 'HEAD~1'],
  ['diff', 'HEAD~1', 'HEAD', 'engines/mill'],
  ['trend', 'main_bearing_clearance', 'engines/mill', '--history'],
];

const ALL = [...OF_GIT, ...OF_OTHERS];

/** One by one, or all of them together. */
const CASES = isLong ? ALL.map((each) => [each]) : [ALL];

it.each(CASES.map((each) => [JSON.stringify(Object.fromEntries(each)), each] as const))(
  '%s changes nothing, makes no file and runs no program',
  async (_, settings) => {
    mkdirSync(join(here.parent, 'markers'));
    const trap = join(here.parent, 'trap');
    put(here.parent, 'trap', `#!/bin/sh\n: > '${here.parent}/markers/ran'\n`);
    chmodSync(trap, 0o755);
    const place = (value: string): string =>
      value.replace('TRAP', trap).replace('MADE', join(here.parent, 'markers/made'));
    const hostile = Object.fromEntries(settings.map(([name, value]) => [name, place(value)]));
    for (const words of CALLS) {
      const asked = (env: Readonly<Record<string, string>>) =>
        callHere(words, { cwd: here.shop, env: { ...PLAIN_SETTINGS, ...env } });
      expect(await asked(hostile)).toEqual(await asked({}));
    }
    tried(settings.length * CALLS.length - 1);
    expect(readdirSync(join(here.parent, 'markers'))).toEqual([]);
  },
);
