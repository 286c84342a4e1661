import { describe, expect, it } from 'vitest';
import { isNeverBelowZero } from '../../src/characteristics/belowZero.ts';
import { type Characteristic, type Derivation, placesOf } from '../../src/characteristics/characteristic.ts';
import { characteristics, registryWith } from '../../src/characteristics/registry.ts';
import { ENGINE, STEP } from '../../src/layout/family.ts';
import { unitsOf } from '../../src/quantity/units.ts';
import { type Files, reportOf, shopOf } from '../shopOf.ts';
import { readingsAt, statedWays, type Way, wayOf, wayThrough } from './reached.ts';
import { firstOf, WHOLE_LAYOUT } from './workedOut.ts';

const unitName = ({ quantity }: Characteristic): string => unitsOf(quantity)[0]?.name ?? '';

const withUnit = (number: string, of: Characteristic): string => `${number} ${unitName(of)}`.trim();

/** Where a reading stands, by the axes of what is read. */
function placed({ family }: Characteristic, reading: string): string {
  if (family === ENGINE) return `value: ${reading}`;
  if (family === STEP) return `after: [{ step: crankshaft, value: ${reading} }]`;
  return `at: { ${firstOf(family)}: ${reading} }`;
}

const ENGINE_DOCUMENT = `kind: engine\nname: A\nunits: { length: in, force: lbf }\n${WHOLE_LAYOUT}sizes: { stroke: 50 mm }\n`;

/** A session of one day each for the blocks of each, in their order. */
const shopOfBlocks = (sessions: readonly (readonly string[])[], limits: string): Files => ({
  'e/engine.yaml': ENGINE_DOCUMENT,
  'e/limits.yaml': `kind: limits\nsource: Invented.\n${limits}`,
  ...Object.fromEntries(
    sessions.map((blocks, index) => [
      `e/${index}.yaml`,
      `kind: session\nstage: rebuild\ndate: 2026-02-0${index + 1}\nreadings:\n${blocks.map((block) => `  - ${block}\n`).join('')}`,
    ]),
  ),
});

const shopWith = (of: Characteristic, readings: readonly string[], limits: string): Files =>
  shopOfBlocks(
    readings.map((reading) => [`{ measure: ${of.id}, ${placed(of, reading)} }`]),
    limits,
  );

/** The verdict of each session on the first position, what an error says, and by which route it was come to. */
const judged = (of: Characteristic, files: Files) =>
  reportOf(files).sessions.map(({ rows, findings }) => {
    const row = rows.find(({ characteristic, routes }) => characteristic.id === of.id && routes.length > 0);
    const error = findings.find(({ code, measure }) => code === 'reading/out' && measure === of.id);
    return {
      verdict: row?.judgement.verdict,
      message: error?.message ?? '',
      route: row?.routes[0]?.route.name,
    };
  });

/** Limits, and a figure inside them, on either of them, and beyond each. */
const atLimits = (least: number, greatest: number) => ({
  least,
  greatest,
  figures: [(least + greatest) / 2, least, greatest, least - 0.1, greatest + 0.1],
});
const ABOVE_ZERO = atLimits(10, 20);
const BELOW_ZERO = atLimits(-20, -10);

const limitsOf = (of: Characteristic, least: number, greatest: number): string =>
  `limits: { ${of.id}: { new: { min: ${withUnit(String(least), of)}, max: ${withUnit(String(greatest), of)} } } }\n`;

/** Inside and on its limits it is ok; beyond each it is out, in its own words. */
function expectJudged({ words }: Characteristic, results: ReturnType<typeof judged>): void {
  expect(results.map(({ verdict }) => verdict)).toEqual(['ok', 'ok', 'ok', 'out', 'out']);
  expect(results.slice(0, 3).map(({ message }) => message)).toEqual(['', '', '']);
  expect(results[3]?.message).toContain(`, ${words.below} by `);
  expect(results[4]?.message).toContain(`, ${words.above} by `);
}

const judgedDirectly = (of: Characteristic, { least, greatest, figures }: typeof ABOVE_ZERO) =>
  judged(
    of,
    shopWith(
      of,
      figures.map((each) => withUnit(String(each), of)),
      limitsOf(of, least, greatest),
    ),
  );

const registry = registryWith([]);
const layout = shopOf({ 'e/engine.yaml': ENGINE_DOCUMENT }).engine?.document.layout;

/** The same figures, each worked out from what is read in its session. */
function judgedThrough(
  of: Characteristic,
  derivation: Derivation,
  { given, about = 0, isRound }: Way,
  { least, greatest, figures }: typeof ABOVE_ZERO,
) {
  const position = layout?.positionsOf(of.family)[0];
  const places = layout && position && placesOf(derivation, registry, layout, position);
  if (places === undefined) throw new Error(`${wayOf(of, derivation)} lies nowhere`);
  // The root of a circle is no decimal: of those the nearest inside is read.
  const inside = (figure: number): number =>
    isRound !== true
      ? figure
      : figure === least
        ? least + 0.001
        : figure === greatest
          ? greatest - 0.001
          : figure;
  const sessions = figures.map((figure) => readingsAt(places, given(inside(figure) + about), registry.find));
  return judged(of, shopOfBlocks(sessions, limitsOf(of, least + about, greatest + about)));
}

const measured = characteristics.filter(({ quantity }) => quantity !== 'pass or fail');
const tests = characteristics.filter(({ quantity }) => quantity === 'pass or fail');
const named = (all: readonly Characteristic[]) => all.map((each) => [each.id, each] as const);

/** A press fit is a clearance below zero; of other figures what is never below zero has no limits there. */
const mayLieBelowZero = (of: Characteristic): boolean => of.figure === 'clearance' || !isNeverBelowZero(of);
const belowZero = measured.filter(mayLieBelowZero);

const workedOut = measured.flatMap((of) =>
  of.derivations.map((derivation) => ({
    what: wayOf(of, derivation),
    of,
    derivation,
    way: wayThrough(of, derivation),
  })),
);
const workedOutBelowZero = workedOut.filter(
  ({ of, way }) => mayLieBelowZero(of) && way.isNeverBelowZero !== true,
);

describe('every characteristic', () => {
  it('and there are those of a whole engine', () => expect(measured.length).toBeGreaterThan(200));

  it.each(named(measured))('%s is judged inside, on and beyond each side of its limits', (_, of) => {
    expectJudged(of, judgedDirectly(of, ABOVE_ZERO));
  });

  it.each(named(belowZero))('%s is judged the same by limits below zero', (_, of) => {
    expectJudged(of, judgedDirectly(of, BELOW_ZERO));
  });

  it.each(named(tests))('%s is passed, or out in the words of its finding', (_, of) => {
    expect(of.outcomes).toBeDefined();
    const [passed, failed] = judged(of, shopWith(of, ['pass', 'fail'], 'limits: {}\n'));
    expect(passed).toMatchObject({ verdict: 'ok', message: '' });
    expect(failed?.verdict).toBe('out');
    expect(failed?.message).toContain(of.outcomes?.fail);
  });

  it('comes with what can hurt, in words', () => {
    for (const { id, caution } of characteristics) {
      if (caution !== undefined) expect(caution.length, id).toBeGreaterThan(20);
    }
    for (const id of ['compression_pressure', 'leak_down', 'valve_spring_load_open', 'valve_stem_diameter'])
      expect(characteristics.find((each) => each.id === id)?.caution, id).toBeDefined();
  });
});

describe('every formula', () => {
  it('has a way through it, and no way leads to a formula that is not there', () => {
    expect(workedOut.length).toBeGreaterThan(100);
    const known = workedOut.map(({ what }) => what);
    expect(statedWays.filter((each) => !known.includes(each))).toEqual([]);
  });

  it.each(workedOut)(
    '$what is judged inside, on and beyond each side of its limits',
    ({ of, derivation, way }) => {
      const results = judgedThrough(of, derivation, way, ABOVE_ZERO);
      expect(results.map(({ route }) => route)).toEqual(results.map(() => derivation.route));
      expectJudged(of, results);
    },
  );

  it('and there are press fits', () =>
    expect(workedOutBelowZero.map(({ of }) => of.id)).toEqual(
      expect.arrayContaining([
        'piston_pin_clearance',
        'small_end_clearance',
        'small_end_bush_fit',
        'valve_guide_fit',
        'valve_seat_fit',
        'cam_bearing_fit',
        'gear_fit',
      ]),
    ));

  it.each(workedOutBelowZero)('$what is judged the same by limits below zero', ({ of, derivation, way }) => {
    const results = judgedThrough(of, derivation, way, BELOW_ZERO);
    expect(results.map(({ route }) => route)).toEqual(results.map(() => derivation.route));
    expectJudged(of, results);
  });
});

describe('a session of an engine that measures ten figures', () => {
  it('has rows of what was read or limited and of nothing else', () => {
    const of = characteristics.find(({ id }) => id === 'piston_weight');
    const { rows = [] } =
      of === undefined ? {} : (reportOf(shopWith(of, ['500 g'], 'limits: {}\n')).sessions[0] ?? {});
    expect(rows.map(({ characteristic }) => characteristic.id)).toEqual(['piston_weight']);
  });
});
