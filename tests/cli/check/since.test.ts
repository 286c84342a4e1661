import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { commit, git, put } from '../../shell/gitShop.ts';
import { FAMILY, PUMP, readings } from '../benchShop.ts';
import { call } from '../call.ts';
import { withBenchShop } from '../gitHere.ts';

const here = withBenchShop();

/** The engines that a check looked at. */
async function checked(...words: readonly string[]): Promise<readonly string[]> {
  const { out } = await call(here.shop, ['check', '--format', 'json', ...words]);
  return (JSON.parse(out) as { engines: { path: string }[] }).engines.map(({ path }) => path);
}

const register = (repeatability: string): string =>
  `kind: instruments\ninstruments:\n  bore: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in, repeatability: ${repeatability} }\n`;

const MILL = 'engines/mill';

describe('a check of what changed since a revision', () => {
  it.each([
    ['HEAD', []],
    ['HEAD~1', [MILL]],
    ['HEAD~2', [MILL, PUMP]],
  ])('since %s, with a clean working tree', async (revision, engines) => {
    expect(await checked('--since', revision)).toEqual(engines);
  });

  it.each([
    [
      'a session that was edited',
      `${PUMP}/sessions/rebuild.yaml`,
      readings('rebuild', '2026-03-14', '1: 0.0030'),
      [PUMP],
    ],
    [
      'a session that is new',
      `${PUMP}/sessions/service.yaml`,
      readings('service', '2026-09-14', '1: 0.0030'),
      [PUMP],
    ],
    ['limits that one engine extends', 'limits/family.yaml', FAMILY.replace('0.0050', '0.0051'), [PUMP]],
    ['the shop', 'shop.yaml', 'kind: shop\nunits: { length: in }\ndecision_rule: guarded\n', [MILL, PUMP]],
    [
      'a register above them',
      'engines/instruments.yaml',
      'kind: instruments\ninstruments: { x: { type: caliper } }\n',
      [MILL, PUMP],
    ],
    ['a file that is none of ours', 'compose.yaml', 'services: {}\n', []],
    ['a file that only says the same again', 'engines/mill/limits.yaml', FAMILY, []],
  ])('%s', async (_, path, text, engines) => {
    put(here.shop, path, text);
    expect(await checked('--since', 'HEAD')).toEqual(engines);
  });

  it.each([
    ['a session', `${PUMP}/sessions/rebuild.yaml`, [PUMP]],
    ['limits that an engine extends', 'limits/family.yaml', [PUMP]],
    ['the register', 'instruments.yaml', [MILL, PUMP]],
  ])('%s that is gone counts', async (_, path, engines) => {
    rmSync(join(here.shop, path));
    expect(await checked('--since', 'HEAD')).toEqual(engines);
  });

  it('a study that a register above names counts for every engine that the register serves', async () => {
    const study = (reading: string): string =>
      `kind: session\nstage: service\ndate: 2026-01-12\nstudy:\n  measure: main_journal_diameter\n  with: bore\n  parts: { P1: { RK: [2.0001, 2.0002], JM: [2.0001, 2.0001] }, P2: { RK: [2.0010, 2.0011], JM: [2.0010, ${reading}] } }\n`;
    put(here.shop, `${MILL}/gauges.yaml`, study('2.0010'));
    put(here.shop, 'instruments.yaml', register(`{ study: ${MILL}/gauges.yaml }`));
    commit(here.shop, 'A study');
    expect(await checked('--since', 'HEAD')).toEqual([]);
    put(here.shop, `${MILL}/gauges.yaml`, study('2.0012'));
    expect(await checked('--since', 'HEAD')).toEqual([MILL, PUMP]);
    put(here.shop, 'instruments.yaml', register('0.00005 in'));
    commit(here.shop, 'Without it');
    put(here.shop, `${MILL}/gauges.yaml`, study('2.0013'));
    expect(await checked('--since', 'HEAD')).toEqual([MILL]);
  });

  it('takes what is selected of it, from any folder', async () => {
    put(here.shop, 'shop.yaml', 'kind: shop\nunits: { length: in }\n# changed\n');
    expect(await checked('--since', 'HEAD', MILL)).toEqual([MILL]);
    const { out } = await call(join(here.shop, PUMP, 'sessions'), [
      'check',
      '--since',
      'HEAD',
      '--format',
      'json',
    ]);
    expect(JSON.parse(out)).toMatchObject({ engines: [{ path: '..' }], since: { revision: 'HEAD' } });
  });

  it('between two commits reads both from git', async () => {
    put(here.shop, `${PUMP}/sessions/rebuild.yaml`, 'kind: [broken');
    expect(await checked('--at', 'HEAD', '--since', 'HEAD~1')).toEqual([MILL]);
    expect(await checked('--at', 'HEAD~1', '--since', 'HEAD~2')).toEqual([PUMP]);
  });

  it('ends with 0 where nothing changed, with 1 for an error and with 2 for a broken document', async () => {
    expect((await call(here.shop, ['check', '--since', 'HEAD'])).exit).toBe(0);
    expect((await call(here.shop, ['check', '--since', 'HEAD~2', '--all'])).exit).toBe(1);
    put(here.shop, `${PUMP}/sessions/rebuild.yaml`, 'kind: [broken');
    expect((await call(here.shop, ['check', '--since', 'HEAD'])).exit).toBe(2);
    put(here.shop, 'shelf/session.yaml', readings('service', '2026-09-14', '1: 0.0030'));
    git(here.shop, 'checkout', '-q', '.');
    // A session in no engine's folder is a problem wherever it lies, once it is new.
    expect((await call(here.shop, ['check', '--since', 'HEAD'])).exit).toBe(2);
    commit(here.shop, 'A stray session');
    expect((await call(here.shop, ['check', '--since', 'HEAD'])).exit).toBe(0);
  });
});
