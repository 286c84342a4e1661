import { describe, expect, it } from 'vitest';
import { registryWith } from '../../src/characteristics/registry.ts';
import { diffStates, isSame } from '../../src/compare/diff.ts';
import { stateOfSession } from '../../src/compare/state.ts';
import { trendOf } from '../../src/compare/trend.ts';
import { limitChangeText } from '../../src/output/diff/diffWords.ts';
import { toNumber } from '../../src/quantity/fraction.ts';
import { unitNamed } from '../../src/quantity/units.ts';
import { type Files, judgeableOf, reportOf, shop, stateOfFiles } from './shop.ts';

const INCH = 254_000_000;

const read = (year: number, hours: number, diameter: string): Files => ({
  [`engine/${year}.yaml`]: `kind: session\nstage: service\ndate: ${year}-03-01\nhours: ${hours}\ntemperature: 35 degC\nreadings:\n  - { measure: piston_diameter, with: mic, at: { 1: ${diameter} } }\n`,
});

const limits = (head: string): string =>
  `kind: limits\nsource: invented\n${head}limits: { piston_diameter: { wear: { min: 4.1200 } } }\n`;

const pistons = (files: Files): Files => ({
  ...shop(files),
  'engine/engine.yaml':
    'kind: engine\nname: A\nunits: { length: in }\nlayout: { cylinders: 4, mains: 3, crankpins: 4 }\nmaterials: { pistons: aluminium }\n',
});

/** At 20 °C in 2020, and at the temperature of the shop from 2022 on. */
const EDITIONS = {
  'engine/a.yaml': limits(''),
  'engine/b.yaml': limits('temperature: 95 degF\nfrom: 2022-01-01\n'),
};

describe('values whose limits hold at unlike temperatures', () => {
  it('are compared at one: a piston that stayed as it was has not changed', () => {
    const judgeable = judgeableOf(
      pistons({ ...EDITIONS, ...read(2020, 0, '4.1240'), ...read(2023, 900, '4.1240') }),
    );
    const [before, after] = judgeable.engine.sessions.map((each) => stateOfSession(judgeable, each));
    if (before === undefined || after === undefined) throw new Error();
    const [change] = diffStates(before, after).changes;
    expect(change?.state).toBe('same');
    expect(toNumber(change?.delta ?? { n: 1n, d: 1n }) / INCH).toBeCloseTo(0, 9);
  });

  it('make one line of a trend, at the temperature of the latest', () => {
    const files = pistons({
      ...EDITIONS,
      ...read(2020, 0, '4.1240'),
      ...read(2021, 500, '4.1240'),
      ...read(2023, 900, '4.1240'),
    });
    const characteristic = registryWith([]).find('piston_diameter');
    if (characteristic === undefined) throw new Error();
    const [line] = trendOf(reportOf(files), registryWith([]), characteristic).lines;
    expect(line?.points.map(({ y }) => y / INCH)).toEqual(
      [4.124, 4.124, 4.124].map((y) => expect.closeTo(y, 9)),
    );
  });

  it('are the same where only the limits were put at another temperature, and that is reported', () => {
    const [before, after] = ['', 'temperature: 95 degF\n'].map((head) =>
      stateOfFiles(pistons({ 'engine/limits.yaml': limits(head), ...read(2020, 0, '4.1240') })),
    );
    if (before === undefined || after === undefined) throw new Error();
    const diff = diffStates(before, after);
    expect(diff.changes.map(({ state }) => state)).toEqual(['same']);
    expect(diff.limits.map((each) => limitChangeText(each, () => unitNamed('in')))).toEqual([
      'piston diameter 1: wear min 4.1200 → 4.1200 in, at 20 degC → 95 degF',
    ]);
    expect(isSame(diff)).toBe(false);
    expect(isSame(diffStates(after, after))).toBe(true);
  });
});
