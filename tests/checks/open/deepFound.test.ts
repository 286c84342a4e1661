import { describe, expect, it } from 'vitest';
import { engineIn, type Files, reportOf, sessionOf } from '../../shopOf.ts';

const JOURNALS = '- { measure: main_journal_diameter, at: { 1: 2.9985, 2: 2.9983, 3: 2.9984 } }';

const found = (on: string, depth: string, remedy = 'machine'): string =>
  `{ on: ${on}, is: scored, do: ${remedy}, depth: ${depth} }`;

const files = (entries: readonly string[], more: Files = {}, unit: 'in' | 'mm' = 'in'): Files => ({
  'e/engine.yaml': engineIn(unit),
  'e/session.yaml': sessionOf('teardown', JOURNALS, `found: [${entries.join(', ')}]\n`),
  ...more,
});

const asked = (shop: Files): readonly string[] =>
  (reportOf(shop).state?.findings ?? [])
    .filter(({ code }) => code === 'reading/implausible')
    .map(({ message }) => message);

describe('a depth of damage that would take a whole step or more', () => {
  it('is asked about, with what the plan cuts for it and what may be meant', () => {
    expect(asked(files([found('main journal 3', '0.015')]))).toEqual([
      'main journal 3: scored, 0.015 in deep: cleaning it up takes 0.03 in off the diameter, and the first step is 0.010 under; is 0.0015 in meant? If it is that deep, measure it again and state it in a second `found:`',
    ]);
  });

  it.each([
    ['as deep as the first step', 'main journal 3', '0.010', 1],
    ['a little less', 'main journal 3', '0.0099', 0],
    ['the usual depth', 'main journal 3', '0.0015', 0],
    ['the main with its journal', 'main 3', '0.015', 1],
    ['a cylinder', 'cylinder 2', '0.015', 1],
    ['a part that is not cut to steps', 'head', '0.015', 0],
    ['what is no part of the engine', 'oil pump', '0.015', 0],
    ['in the other unit', 'main journal 3', '0.38 mm', 1],
    ['in the other unit, and usual', 'main journal 3', '0.04 mm', 0],
  ])('%s: %s, %s', (_, on, depth, count) => {
    expect(asked(files([found(on, depth)]))).toHaveLength(count);
  });

  it('is held against the steps that the shop can get', () => {
    const shop = (steps: string): Files => ({
      'shop.yaml': `kind: shop\nunits: { length: in }\nplan: { steps: { main journals: [${steps}] } }\n`,
    });
    expect(asked(files([found('main journal 3', '0.006')], shop('0.010 under')))).toHaveLength(1);
    expect(asked(files([found('main journal 3', '0.006')], shop('0.010 under, 0.020 under')))).toEqual([]);
    expect(asked(files([found('main journal 3', '0.015')], shop('0.020 under, 0.040 under')))).toEqual([]);
  });

  it('is believed once it is stated a second time alike', () => {
    const again = (depth: string, on = 'main journal 3'): Files => ({
      'e/later.yaml': sessionOf('machined', JOURNALS, `found: [${found(on, depth)}]\n`).replace(
        '2026-02-03',
        '2026-02-04',
      ),
    });
    const first = [found('main journal 3', '0.015')];
    expect(asked(files(first, again('0.016')))).toEqual([]);
    expect(asked(files(first, again('0.0015')))).toHaveLength(1);
    expect(asked(files(first, again('0.016', 'main journal 2')))).toHaveLength(2);
  });

  it.each([
    ['is renewed', 'renew', ''],
    ['was machined since', 'machine', 'machined: [{ part: main journals, size: 0.010 under }]\n'],
  ])('is not asked about where the part %s', (_, remedy, more) => {
    const later = sessionOf('machined', JOURNALS, more).replace('2026-02-03', '2026-02-04');
    expect(
      asked(files([found('main journal 3', '0.015', remedy)], { 'e/later.yaml': later })).filter((each) =>
        each.includes('deep'),
      ),
    ).toEqual([]);
  });
});
