import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reportEngine } from '../../../src/checks/judge/report.ts';
import type { Row } from '../../../src/checks/judge/row.ts';
import { latestRun } from '../../../src/checks/state/run.ts';
import { standingRows } from '../../../src/checks/state/state.ts';
import { leavesOf } from '../../../src/checks/value/route.ts';
import { recallOf, withoutError } from '../../../src/compare/instruments/recall.ts';
import type { Suspicion } from '../../../src/compare/instruments/taken.ts';
import { type Judgeable, keyOf } from '../../../src/compare/state.ts';
import { type Fraction, fraction, negate, ZERO } from '../../../src/quantity/fraction.ts';
import { engineFiles, type RandomEngine, randomEngine } from '../../checks/randomEngine.ts';
import { effort } from '../../effort.ts';
import { oncePerTexts } from '../../oncePerTexts.ts';
import { runs } from '../../propertyRuns.ts';
import { type Files, shopOf } from '../../shopOf.ts';

/** A tenth of a thousandth of an inch, in tenths of a nanometre. */
const TENTH = 25_400n;

const CARRIERS: ReadonlySet<string> = new Set(['mic', 'bore']);

/** Every bore gauge was set with the micrometer, so that its readings carry the micrometer's error too. */
const asTyped = (engine: RandomEngine, rule: string): Files => {
  const files = engineFiles(engine);
  return {
    ...files,
    'shop.yaml': `${files['shop.yaml']}decision_rule: ${rule}\n`,
    'e/session.yaml': files['e/session.yaml']?.replaceAll('with: bore,', 'with: bore, set_with: mic,') ?? '',
  };
};

/** What would have been typed had the micrometer been right. */
const retyped = (engine: RandomEngine, tenths: number): RandomEngine => ({
  ...engine,
  blocks: engine.blocks.map((block) =>
    CARRIERS.has(block.of.instrument)
      ? { ...block, readings: block.readings.map((each) => each - tenths) }
      : block,
  ),
});

const read = (files: Files): Judgeable => {
  const { engine, registry, diagnostics } = shopOf(files);
  if (engine === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  return { engine, registry };
};

const standing = ({ engine, registry }: Judgeable): ReadonlyMap<string, Row> =>
  new Map(
    standingRows(engine, registry, latestRun(engine.sessions))?.rows.map((row) => [keyOf(row), row]) ?? [],
  );

/** What was typed, and how it stands: every property below draws the same engines. */
const standingAsTyped = oncePerTexts((files): readonly [Judgeable, ReadonlyMap<string, Row>] => {
  const typed = read(files);
  return [typed, standing(typed)];
});

const verdicts = (of: ReadonlyMap<string, Row>): readonly string[] =>
  [...of].map(([key, { judgement }]) => `${key} ${judgement.verdict}`);

const amounts = (of: ReadonlyMap<string, Row>): readonly string[] =>
  [...of].map(([key, { routes }]) =>
    [key, ...routes.flatMap(({ least, greatest }) => [least, greatest].map(({ n, d }) => `${n}/${d}`))].join(
      ' ',
    ),
  );

const ALWAYS: Suspicion = { instrument: 'mic', has: () => true };
const errorOf = (tenths: number): Fraction => fraction(BigInt(tenths) * TENTH);

const rule = fc.constantFrom('simple', 'guarded');
const tenths = fc.integer({ min: -14, max: 14 });

describe('a recall of a micrometer', () => {
  it('names exactly the verdicts that a shop with other figures typed would change', () => {
    fc.assert(
      fc.property(randomEngine, rule, tenths, (drawn, by, off) => {
        const [typed, before] = standingAsTyped(asTyped(drawn, by));
        const after = standing(read(asTyped(retyped(drawn, off), by)));
        const expected = verdicts(after).filter((each) => !verdicts(before).includes(each));
        const found = recallOf(typed, ALWAYS, errorOf(off))?.changed ?? [];
        const told = found.map(({ after: row }) => `${keyOf(row)} ${row.judgement.verdict}`);
        expect([...told].sort()).toEqual([...expected].sort());
      }),
      runs(200, 10),
    );
  });

  it('by nothing changes nothing, and by an error and then its opposite restores everything', () => {
    fc.assert(
      fc.property(randomEngine, rule, tenths, (drawn, by, off) => {
        const [typed, before] = standingAsTyped(asTyped(drawn, by));
        const none = recallOf(typed, ALWAYS, ZERO);
        expect([...(none?.changed ?? []), ...(none?.moved ?? [])]).toEqual([]);
        const once = withoutError(typed.engine, ALWAYS, errorOf(off));
        const back = withoutError(once, ALWAYS, negate(errorOf(off)));
        expect(amounts(standing({ ...typed, engine: back }))).toEqual(amounts(before));
      }),
      runs(200, 6),
    );
  });

  it('never moves what never saw it', () => {
    fc.assert(
      fc.property(randomEngine, rule, tenths, (drawn, by, off) => {
        const [typed, before] = standingAsTyped(asTyped(drawn, by));
        const put = { ...typed, engine: withoutError(typed.engine, ALWAYS, errorOf(off)) };
        const after = standing(put);
        const unseen = [...before].filter(([, { routes }]) =>
          routes.every(({ route }) =>
            leavesOf(route).every(({ block }) => !CARRIERS.has(block?.instrument?.name ?? '')),
          ),
        );
        const same = unseen
          .map(([key]) => [key, after.get(key)] as const)
          .flatMap(([key, row]) => (row ? [[key, row] as const] : []));
        expect(amounts(new Map(same))).toEqual(amounts(new Map(unseen)));
      }),
      runs(200, 6),
    );
  });

  it('takes less than twice the time of a check', () => {
    const shops = fc.sample(randomEngine, 4).map((each) => read(asTyped(each, 'guarded')));
    const check = effort(() =>
      shops.map(({ engine, registry }) => reportEngine(engine, registry, {}).state?.findings),
    );
    const recall = effort(() => shops.map((each) => recallOf(each, ALWAYS, errorOf(3))));
    expect(recall).toBeLessThan(2 * check);
  });
});

describe('a clearance whose bore and journal one micrometer sized', () => {
  const files = (clearance: string): Files => ({
    'instruments.yaml':
      'kind: instruments\ninstruments:\n  mic: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in }\n  bore: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in }\n',
    'e/engine.yaml': 'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 1 }\n',
    'e/limits.yaml':
      'kind: limits\nsource: Invented.\nlimits:\n  main_journal_diameter: { new: 2.9990 to 3.0000 }\n  main_bearing_clearance: { new: 0.0020 to 0.0024 }\n',
    'e/session.yaml': `kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings:\n  - { measure: main_journal_diameter, with: mic, at: { 1: 2.9998 } }\n${clearance}`,
  });

  it.each([
    [
      'moves by the error where another gauge read it',
      '  - { measure: main_bearing_bore, with: bore, at: { 1: 3.0020 } }\n',
      ['main_bearing_clearance', 'main_journal_diameter'],
    ],
    [
      'stays where the bore gauge was set with it',
      '  - { measure: main_bearing_bore, with: bore, set_with: mic, at: { 1: 3.0020 } }\n',
      ['main_journal_diameter'],
    ],
    [
      'stays where it was locked at the journal',
      '  - { measure: main_bearing_clearance, with: bore, set_to: journal, set_with: mic, at: { 1: 0.0022 } }\n',
      ['main_journal_diameter'],
    ],
  ])('%s', (_, clearance, changed) => {
    const found = recallOf(read(files(clearance)), ALWAYS, errorOf(-4));
    expect(found?.changed.map(({ after }) => after.characteristic.id).sort()).toEqual(changed);
  });

  it('is put right only on the days and in the part of the range in question', () => {
    const judgeable = read(files(''));
    const changed = (suspicion: Partial<Suspicion>): number | undefined =>
      recallOf(judgeable, { ...ALWAYS, ...suspicion }, errorOf(-4))?.changed.length;
    const inch = (text: number): Fraction => fraction(BigInt(Math.round(text * 254_000_000)));
    expect(changed({ has: (day) => day >= '2026-02-03' })).toBe(1);
    expect(changed({ has: (day) => day > '2026-02-03' })).toBeUndefined();
    expect(changed({ range: { from: inch(2.9998), to: inch(3) } })).toBe(1);
    expect(changed({ range: { from: inch(2.9999), to: inch(3) } })).toBeUndefined();
  });
});
