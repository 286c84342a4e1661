import { Ajv } from 'ajv';
import { beforeEach, describe, expect, it } from 'vitest';
import { trendSchema } from '../../src/output/schema/trendSchema.ts';
import { put } from '../shell/gitShop.ts';
import { call } from './call.ts';
import { withBenchShop } from './gitHere.ts';

const here = withBenchShop();

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

  it('in JSON is as its schema says', async () => {
    const validate = new Ajv({ strict: true }).compile(trendSchema());
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
