import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Grid } from '../../src/characteristics/grid.ts';
import { registryWith } from '../../src/characteristics/registry.ts';
import { settled } from '../../src/checks/judge/limits.ts';
import type { Side } from '../../src/checks/judge/sideLimit.ts';
import { judge } from '../../src/checks/judge/verdict.ts';
import { startOfFile } from '../../src/diagnostic/place.ts';
import { exactly, meanValue } from '../../src/measurement/value.ts';
import { type Fraction, parseDecimal } from '../../src/quantity/fraction.ts';
import { toBase, unitNamed } from '../../src/quantity/units.ts';
import { runs, some } from '../propertyRuns.ts';
import { limitsOf, rowsOf, sessionOf } from '../shopOf.ts';

/** A figure as a person reads it off: whole steps of a scale, written in its unit. */
interface Scale {
  readonly unit: string;
  readonly decimals: number;
}

const TENTHS: Scale = { unit: 'in', decimals: 4 };
const HALF_TENTHS: Scale = { unit: 'in', decimals: 5 };
const HUNDREDTHS: Scale = { unit: 'mm', decimals: 2 };
const MICRONS: Scale = { unit: 'mm', decimals: 3 };

function written(steps: bigint, decimals: number): string {
  const digits = (steps < 0n ? -steps : steps).toString().padStart(decimals + 1, '0');
  return `${steps < 0n ? '-' : ''}${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}

/** The same length in the other unit, written out exactly: 1 in is 25.4 mm, and 1 mm has no end in inches. */
const inMillimetres = (steps: bigint, { unit, decimals }: Scale): string =>
  unit === 'mm' ? written(steps, decimals) : written(steps * 254n, decimals + 1);

/** Readings of each part: several are repeats of one point, and their mean counts. All in steps of the scale. */
interface Parts {
  readonly [id: string]: readonly (readonly bigint[])[];
}

interface Case {
  readonly measure: string;
  readonly scale: Scale;
  readonly parts: Parts;
  /** What the parts leave, to the last digit. */
  readonly limit: bigint;
  readonly limitInMillimetres: boolean;
  readonly side: Side;
  /** The part whose first reading a step up makes the clearance larger. */
  readonly outer: string;
}

const big = (min: number, max: number) => fc.integer({ min, max }).map(BigInt);

const scales = fc.constantFrom(TENTHS, HALF_TENTHS, HUNDREDTHS, MICRONS);
const sides = fc.constantFrom<Side>('min', 'max');

/** Journals from half an inch to eight, to every digit of the scale. */
const journalOn = ({ unit, decimals }: Scale) => {
  const inch = unit === 'in' ? 1 : 25.4;
  return big(Math.ceil(0.5 * inch * 10 ** decimals), Math.floor(8 * inch * 10 ** decimals));
};

const base = scales.chain((scale) =>
  fc.record({
    scale: fc.constant(scale),
    journal: journalOn(scale),
    limit: big(0, 300),
    side: sides,
    limitInMillimetres: fc.boolean(),
  }),
);

const direct: fc.Arbitrary<Case> = base.map(({ journal, ...rest }) => ({
  ...rest,
  measure: 'main_bearing_clearance',
  outer: 'main_bearing_clearance',
  parts: { main_bearing_clearance: [[rest.limit]] },
}));

const boreLessJournal: fc.Arbitrary<Case> = base.map(({ journal, ...rest }) => ({
  ...rest,
  measure: 'main_bearing_clearance',
  outer: 'main_bearing_bore',
  parts: { main_bearing_bore: [[journal + rest.limit]], main_journal_diameter: [[journal]] },
}));

const housingLessTwoWalls: fc.Arbitrary<Case> = fc
  .tuple(base, big(500, 2000))
  .map(([{ journal, ...rest }, wall]) => ({
    ...rest,
    measure: 'main_bearing_clearance',
    outer: 'main_housing_bore',
    parts: {
      main_housing_bore: [[journal + rest.limit + 2n * wall]],
      main_shell_thickness: [[wall]],
      main_journal_diameter: [[journal]],
    },
  }));

const housingLessBothShells: fc.Arbitrary<Case> = fc
  .tuple(base, big(500, 2000), big(500, 2000))
  .map(([{ journal, ...rest }, upper, lower]) => ({
    ...rest,
    measure: 'main_bearing_clearance',
    outer: 'main_housing_bore',
    parts: {
      main_housing_bore: [[journal + rest.limit + upper + lower]],
      main_shell_thickness: [[upper], [lower]],
      main_journal_diameter: [[journal]],
    },
  }));

/** Means of two or three readings whose sums, not whose means, come out even: thirds have no end in decimals. */
const meansOf = (count: 2 | 3): fc.Arbitrary<Case> =>
  fc
    .tuple(base, fc.array(big(-9, 9), { minLength: 2 * count, maxLength: 2 * count }))
    .map(([{ journal, ...rest }, strays]) => {
      const shaft = strays.slice(0, count).map((stray) => journal + stray);
      const moved = strays.slice(count, -1);
      const balance = -moved.reduce((sum, stray) => sum + stray, 0n);
      const bore = shaft.map((each, index) => each + rest.limit + (moved[index] ?? balance));
      return {
        ...rest,
        measure: 'main_bearing_clearance',
        outer: 'main_bearing_bore',
        parts: { main_bearing_bore: [bore], main_journal_diameter: [shaft] },
      };
    });

/**
 * Means of three everywhere: of housing, of either shell and of journal. No two of them leave the same third over,
 * so a mean rounded before it is subtracted is seen.
 */
const meansThroughShells: fc.Arbitrary<Case> = fc
  .tuple(
    base,
    fc.array(big(500, 2000), { minLength: 6, maxLength: 6 }),
    fc.array(big(-9, 9), { minLength: 3, maxLength: 3 }),
  )
  .map(([{ journal, ...rest }, walls, strays]) => {
    const [upper, lower] = [walls.slice(0, 3), walls.slice(3)];
    const shaft = strays.map((stray) => journal + stray);
    const housing = shaft.map(
      (each, index) => each + rest.limit + (upper[2 - index] ?? 0n) + (lower[index] ?? 0n),
    );
    return {
      ...rest,
      measure: 'main_bearing_clearance',
      outer: 'main_housing_bore',
      parts: {
        main_housing_bore: [housing],
        main_shell_thickness: [upper, lower],
        main_journal_diameter: [shaft],
      },
    };
  });

const KINDS: readonly (readonly [string, fc.Arbitrary<Case>])[] = [
  ['read directly', direct],
  ['bore − journal', boreLessJournal],
  ['housing − 2 walls − journal', housingLessTwoWalls],
  ['housing − both shells − journal', housingLessBothShells],
  ['means of two readings', meansOf(2)],
  ['means of three readings', meansOf(3)],
  ['means of three readings of housing, shells and journal', meansThroughShells],
];

/** With those in torque all of them come to 100,000. */
const RUNS = runs(13_000, 500);
const TORQUE_RUNS = runs(9000, 400);

const registry = registryWith([]);

const amountOf = (steps: bigint, { unit, decimals }: Scale): Fraction =>
  toBase(parseDecimal(written(steps, decimals)), unitNamed(unit));

const gridOf = (points: readonly (readonly bigint[])[], scale: Scale): Grid => ({
  stations: points.map(() => ({})),
  directions: [undefined],
  rows: points.map((repeats) => [meanValue(repeats.map((steps) => exactly(amountOf(steps, scale))))]),
});

/** The verdict at the level of values: through the registry's own sums, rounded once, then judged. */
function verdictOf({ measure, scale, parts, limit, limitInMillimetres, side }: Case): string | null {
  const characteristic = registry.find(measure);
  const derivation = characteristic?.derivations.find(({ inputs }) => inputs.every((id) => id in parts));
  const grids = (derivation?.inputs ?? [measure]).map((id) => gridOf(parts[id] ?? [], scale));
  const [own] = grids;
  const value =
    derivation === undefined
      ? own?.rows[0]?.[0]
      : derivation.compute(grids, {})?.[side === 'min' ? 'least' : 'greatest'];
  if (value === undefined) throw new Error('nothing was worked out');
  const text = limitInMillimetres ? inMillimetres(limit, scale) : written(limit, scale.decimals);
  const bound = toBase(parseDecimal(text), unitNamed(limitInMillimetres ? 'mm' : scale.unit));
  const amount = settled(value.amount, 'length');
  return judgeAgainst(amount, settled(bound, 'length'), side);
}

function judgeAgainst(amount: Fraction, bound: Fraction, side: Side): string | null {
  const limit = { amount: bound, written: '', band: 'new' as const, place: startOfFile('limits.yaml') };
  const bands = { new: { min: undefined, max: undefined, [side]: limit } };
  const value = { least: amount, greatest: amount, u: 0, dof: Number.POSITIVE_INFINITY, expanded: 0 };
  return judge(value, bands, ['new', 'wear'], 'simple').verdict;
}

/** The least that the scale can show past the limit: one reading, one step. */
function oneStepBeyond(of: Case): Case {
  const [[first = 0n, ...repeats] = [], ...points] = of.parts[of.outer] ?? [];
  const moved = first + (of.side === 'max' ? 1n : -1n);
  return { ...of, parts: { ...of.parts, [of.outer]: [[moved, ...repeats], ...points] } };
}

describe('a clearance exactly on its limit is inside, and the smallest step beyond is out', () => {
  it.each(KINDS)('%s, in inches and millimetres, the limit in either', (_, cases) => {
    let falseAlarms = 0;
    let missed = 0;
    fc.assert(
      fc.property(cases, (each) => {
        if (verdictOf(each) !== 'ok') falseAlarms += 1;
        if (verdictOf(oneStepBeyond(each)) !== 'out') missed += 1;
      }),
      RUNS,
    );
    expect({ falseAlarms, missed }).toEqual({ falseAlarms: 0, missed: 0 });
  });

  it('torque: lbf in against lbf ft, and the other way about', () => {
    let falseAlarms = 0;
    let missed = 0;
    const torques = fc.record({
      steps: big(1, 200_000),
      decimals: fc.integer({ min: 1, max: 3 }),
      side: sides,
      readIn: fc.constantFrom('lbf in', 'lbf ft'),
    });
    fc.assert(
      fc.property(torques, ({ steps, decimals, side, readIn }) => {
        const amount = (text: string, unit: string) => toBase(parseDecimal(text), unitNamed(unit));
        const small = (by: bigint) => amount(written(12n * steps + by, decimals), 'lbf in');
        const large = (by: bigint) => amount(written(steps + by, decimals), 'lbf ft');
        const [read, bound] = readIn === 'lbf in' ? [small, large(0n)] : [large, small(0n)];
        if (judgeAgainst(settled(read(0n), 'torque'), bound, side) !== 'ok') falseAlarms += 1;
        const beyond = read(side === 'max' ? 1n : -1n);
        if (judgeAgainst(settled(beyond, 'torque'), bound, side) !== 'out') missed += 1;
      }),
      TORQUE_RUNS,
    );
    expect({ falseAlarms, missed }).toEqual({ falseAlarms: 0, missed: 0 });
  });

  it('one reading in a hundred thousand is not left to luck: as doubles the same sums are off', () => {
    const off = fc.sample(boreLessJournal, { numRuns: 1000 }).filter(({ scale, parts, limit }) => {
      const number = (steps: bigint) => Number(written(steps, scale.decimals));
      const [[bore = 0n] = []] = parts.main_bearing_bore ?? [];
      const [[journal = 0n] = []] = parts.main_journal_diameter ?? [];
      return number(bore) - number(journal) > number(limit);
    });
    expect(off.length).toBeGreaterThan(100);
  });
});

const POSITIONS = 30;
const SHOPS = some(70, 4);

/** The same cases written as documents, thirty main bearings a shop. */
function verdictsThroughDocuments(cases: readonly Case[]): readonly (string | null)[] {
  const engine = `kind: engine\nname: Long\nunits: { length: in }\nlayout: { mains: ${POSITIONS} }\n`;
  const limits = cases.map(({ scale, limit, limitInMillimetres, side }, index) => {
    const text = limitInMillimetres
      ? `${inMillimetres(limit, scale)} mm`
      : `${written(limit, scale.decimals)} ${scale.unit}`;
    return `${index + 1}: { new: { ${side}: ${text} } }`;
  });
  const blocks = cases.flatMap(({ scale, parts }, index) =>
    Object.entries(parts).map(
      ([id, points]) => `- { measure: ${id}, at: { ${index + 1}: ${pointsOf(points, scale)} } }`,
    ),
  );
  const rows = rowsOf(
    {
      'e/engine.yaml': engine,
      'e/limits.yaml': limitsOf(`main_bearing_clearance: { at: { ${limits.join(', ')} } }`),
      'e/session.yaml': sessionOf('rebuild', blocks.join('\n')),
    },
    { rule: 'simple' },
  );
  const clearances = rows.filter(({ characteristic }) => characteristic.id === 'main_bearing_clearance');
  expect(clearances.map(({ position }) => position.name)).toEqual(cases.map((_, index) => String(index + 1)));
  return clearances.map(({ judgement }) => judgement.verdict);
}

function pointsOf(points: readonly (readonly bigint[])[], scale: Scale): string {
  const text = (steps: bigint) => `${written(steps, scale.decimals)} ${scale.unit}`;
  const point = (repeats: readonly bigint[]) =>
    repeats.length === 1 ? text(repeats[0] ?? 0n) : `{ repeat: [${repeats.map(text).join(', ')}] }`;
  return points.length === 1 ? point(points[0] ?? []) : `[${points.map(point).join(', ')}]`;
}

describe('the same through documents, routes and limits', () => {
  it('every case is inside, and one step beyond out', () => {
    const all = fc.oneof(...KINDS.map(([, cases]) => cases));
    const sample = fc.sample(all, { numRuns: POSITIONS * SHOPS });
    for (let shop = 0; shop < SHOPS; shop++) {
      const cases = sample.slice(shop * POSITIONS, (shop + 1) * POSITIONS);
      expect(new Set(verdictsThroughDocuments(cases))).toEqual(new Set(['ok']));
      expect(new Set(verdictsThroughDocuments(cases.map(oneStepBeyond)))).toEqual(new Set(['out']));
    }
  });
});
