import { cpSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { beforeEach, describe, expect, it } from 'vitest';
import { trendSchema } from '../../../src/output/schema/trendSchema.ts';
import { commit, git, madeOnce, put } from '../../shell/gitShop.ts';
import { call } from '../call.ts';
import { withBenchShop } from '../gitHere.ts';

const here = withBenchShop();

const validate = new Ajv({ strict: true }).compile(trendSchema());

const service = (year: number, hours: number, at: string): string =>
  `kind: session\nstage: service\ndate: ${year}-03-01\nhours: ${hours}\nreadings:\n  - { measure: main_bearing_clearance, with: bore, at: { ${at} } }\n`;

beforeEach(() => {
  put(here.shop, 'engines/mill/service.yaml', service(2022, 1000, '1: 0.0030, 2: 0.0030'));
  put(here.shop, 'engines/mill/second.yaml', service(2023, 3000, '1: 0.0034, 2: 0.0031'));
  put(here.shop, 'engines/mill/third.yaml', service(2024, 5000, '1: 0.0038'));
  put(here.shop, 'engines/mill/fourth.yaml', service(2025, 7000, '1: 0.0042'));
});

const trend = (...words: readonly string[]) =>
  call(here.shop, ['trend', 'main_bearing_clearance', 'engines/mill', ...words]);

describe('a trend', () => {
  it('says by hours when the wear limit is reached, and of two readings nothing', async () => {
    const { out, exit } = await trend();
    expect(exit).toBe(0);
    // 0.0004 in 2000 h: 0.0050 is 4000 h after the last.
    expect(out).toMatch(
      /1 {2}4 readings {2}0\.0030 → 0\.0042 {2}\+0\.000\d+ ±0\.000\d+ a 1000 h {2}reaches wear max 0\.0050 at about 11 000 h \(/,
    );
    expect(out).toMatch(
      /2 {2}2 readings {2}0\.0030 → 0\.0031 +two readings show no trend: a third is needed/,
    );
  });

  it('by date names days, and only for the position that is asked for', async () => {
    const { out } = await trend('--by', 'date', '--position', '1');
    expect(out).toMatch(
      /reaches wear max 0\.0050 at about 2027-0\d-\d\d \(202\d-\d\d-\d\d to 20\d\d-\d\d-\d\d\)/,
    );
    expect(out).not.toContain('two readings');
  });

  it('of what is passed or failed is refused', async () => {
    const own =
      'characteristics: { crack_test: { label: crack test, quantity: pass or fail, positions: main } }';
    put(here.shop, 'engines/mill/tests.yaml', `kind: limits\nsource: Invented.\n${own}\n`);
    const { err, exit } = await call(here.shop, ['trend', 'crack_test', 'engines/mill']);
    expect(exit).toBe(2);
    expect(err).toContain('crack_test is a test: it is passed or failed, and has no trend');
  });

  it('in JSON is as its schema says', async () => {
    for (const words of [[], ['--by', 'date'], ['--at', 'HEAD']]) {
      const found: unknown = JSON.parse((await trend('--format', 'json', ...words)).out);
      validate(found);
      expect(validate.errors).toBe(null);
    }
    expect(JSON.parse((await trend('--format', 'json')).out)).toMatchObject({
      by: 'hours',
      lines: [
        { position: '1', outlook: { kind: 'reached', side: 'max' } },
        { outlook: { kind: 'two readings', x: null } },
      ],
    });
  });

  it.each([
    [['trend', 'main_bearing_clearence', 'engines/mill'], 'did you mean'],
    [['trend', 'cylinder_bore', 'engines/mill'], 'has no readings to follow'],
    [['trend', 'main_bearing_clearance', 'engines/mill', '--position', '9'], 'it was measured at 1, 2'],
    [['trend', 'main_bearing_clearance', 'engines/mill', '--by', 'moon'], 'Allowed choices are hours, date'],
  ])('%j: %s', async (words, message) => {
    const { err, exit } = await call(here.shop, words);
    expect(exit).toBe(2);
    expect(err.toLowerCase()).toContain(message.toLowerCase());
  });
});

describe('a trend with what earlier commits held', () => {
  const copyCommitted = madeOnce((shop) => {
    cpSync(here.shop, shop, { recursive: true });
    commit(shop, 'Four services');
    put(shop, 'engines/mill/second.yaml', service(2023, 3000, '1: 0.0043, 2: 0.0031'));
    commit(shop, 'A slip');
    put(shop, 'engines/mill/second.yaml', service(2023, 3000, '1: 0.0034'));
    renameSync(join(shop, 'engines/mill/third.yaml'), join(shop, 'engines/mill/2024-third.yaml'));
    commit(shop, 'Put right, and another name');
    rmSync(join(shop, 'engines/mill/service.yaml'));
    commit(shop, 'Removed');
  });

  beforeEach(() => {
    const { shop } = here;
    copyCommitted(join(here.parent, 'committed'));
    rmSync(shop, { recursive: true });
    renameSync(join(here.parent, 'committed'), shop);
  });

  const by = ['--by', 'hours'] as const;

  it('goes back beyond the commit that moved the folder, of an engine with the same name', async () => {
    git(here.shop, 'mv', 'engines/mill', 'engines/mill-west');
    commit(here.shop, 'Moved');
    const words = ['trend', 'main_bearing_clearance', 'mill-west', ...by, '--history'];
    const { out, err } = await call(here.shop, words);
    expect(err).toBe('');
    expect(out).toContain('service 2022-03-01 was removed: taken from commit');
    expect(out).toContain('4 readings  0.0030 → 0.0042');
  });

  it('counts every session once, and marks the one that was removed', async () => {
    expect((await trend(...by)).out).toContain('3 readings  0.0034 → 0.0042');
    const { out, exit } = await trend(...by, '--history');
    expect(exit).toBe(0);
    expect(out).toContain('4 readings  0.0030 → 0.0042');
    const held = git(here.shop, 'rev-parse', '--short=10', 'HEAD~1');
    const today = new Date().toISOString().slice(0, 10);
    expect(out).toContain(`service 2022-03-01 was removed: taken from commit ${held} of ${today}`);
    expect(out.match(/[○x]/g)?.length).toBeGreaterThan(1);
    expect(out).not.toContain('2024-03-01');
  });

  it('tells a value that was corrected and one that was withdrawn, and uses neither', async () => {
    const { out } = await trend(...by, '--history');
    expect(out).toMatch(
      /service 2023-03-01 at 1: now 0\.0034; 0\.0043 in commit \w{10} of [\d-]+ is not\s+used/,
    );
    expect(out).toMatch(/service 2023-03-01 at 2: not stated any more; 0\.0031 in commit/);
    expect((await trend(...by, '--history', '--position', '1')).out).not.toContain('not stated any more');
  });

  it('is none where nothing but the present was committed, and one of an edit that was not', async () => {
    git(here.shop, 'checkout', '-q', '--orphan', 'fresh');
    commit(here.shop, 'As it stands');
    expect((await trend(...by, '--history')).out).toBe((await trend(...by)).out);
    put(here.shop, 'engines/mill/fourth.yaml', service(2025, 7000, '1: 0.0041'));
    expect((await trend(...by, '--history')).out).toMatch(/service 2025-03-01 at 1: now 0\.0041; 0\.0042 in/);
  });

  it('takes a file that was written over for another session, unless only its day was put right', async () => {
    // The first commit of the bench shop has a reading of 2026-04-05 in second.yaml.
    expect((await trend('--by', 'date')).out).toContain('3 readings');
    const { out } = await trend('--by', 'date', '--history');
    expect(out).toContain('6 readings');
    expect(out).toContain('service 2026-04-05 was removed');
    put(here.shop, 'engines/mill/fourth.yaml', service(2026, 7000, '1: 0.0042'));
    const moved = (await trend('--by', 'date', '--history')).out;
    expect(moved).toContain('6 readings');
    expect(moved).not.toContain('2025-03-01');
  });

  it('ends at the commit that is asked for, in a bare repository as well', async () => {
    const words = ['trend', 'main_bearing_clearance', 'engines/mill', ...by, '--history', '--at', 'HEAD~2'];
    const { out } = await call(here.shop, words);
    expect(out).toContain('now 0.0043; 0.0034 in commit');
    expect(out).not.toContain('was removed');
    git(here.parent, 'clone', '-q', '--bare', here.shop, 'bare.git');
    expect((await call(`${here.parent}/bare.git`, words)).out).toBe(out);
  });

  it('says what it had to leave out, and that a shallow clone knows no more', async () => {
    put(here.shop, 'engines/mill/engine.yaml', 'kind: engine\nname: [\n');
    const broken = commit(here.shop, 'Broken');
    git(here.shop, 'checkout', '-q', 'HEAD~1', 'engines/mill/engine.yaml');
    commit(here.shop, 'Mended');
    const { err, exit } = await trend(...by, '--history');
    expect([err, exit]).toEqual([
      expect.stringContaining(`left out, as the engine cannot be judged there: ${broken.slice(0, 10)} of`),
      0,
    ]);
    git(here.parent, 'clone', '-q', '--depth', '1', `file://${here.shop}`, 'shallow');
    const shallow = await call(`${here.parent}/shallow`, [
      'trend',
      'main_bearing_clearance',
      'engines/mill',
      '--history',
    ]);
    expect(shallow.err).toContain('this is a shallow clone, whose history was cut short');
  });

  it('in JSON is as its schema says', async () => {
    const found: unknown = JSON.parse((await trend(...by, '--history', '--format', 'json')).out);
    validate(found);
    expect(validate.errors).toBe(null);
    const held = git(here.shop, 'rev-parse', 'HEAD~1');
    expect(found).toMatchObject({
      lines: [{ points: [{ commit: held }, { commit: null }, {}, {}] }, {}],
      corrected: [
        { position: '1', was: 0.0043, is: 0.0034 },
        { position: '2', was: 0.0031, is: null },
      ],
    });
  });
});
