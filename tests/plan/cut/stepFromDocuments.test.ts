import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { orderList } from '../../../src/plan/order/orderList.ts';
import { cutsOf } from '../../../src/plan/work/cut.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { runs } from '../../propertyRuns.ts';
import { type Files, limitsOf, sessionOf } from '../../shopOf.ts';
import { shuffled } from '../../shuffled.ts';
import { contextOf } from '../planOf.ts';

/** An engine of three journals and two bores with wear. Lengths in whole micrometres. */
interface Worn {
  readonly journals: readonly number[];
  /** At the top and at the bottom. */
  readonly bores: readonly (readonly [number, number])[];
  /** Nobody measured how far the bores lie off their old centre where that is undefined. */
  readonly isOffsetRead: boolean;
  readonly less: Lessened;
}

/** What a step has to reach through besides the wear. */
interface Lessened {
  readonly maxError: number;
  readonly runout: number;
  readonly offset: number;
  readonly polish: number;
  readonly honeStock: number;
}

const whole = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max });

const lessened: fc.Arbitrary<Lessened> = fc.record({
  maxError: whole(1, 60),
  runout: whole(0, 80),
  offset: whole(0, 30),
  polish: whole(0, 40),
  honeStock: whole(0, 60),
});

const journal = whole(49_700, 49_990);
const bore: fc.Arbitrary<readonly [number, number]> = fc
  .tuple(whole(80_000, 80_200), whole(0, 60))
  .map(([bottom, by]) => [bottom + by, bottom]);

const worn: fc.Arbitrary<Worn> = fc.record({
  journals: fc.array(journal, { minLength: 3, maxLength: 3 }),
  bores: fc.array(bore, { minLength: 2, maxLength: 2 }),
  isOffsetRead: fc.boolean(),
  less: lessened,
});

const LIMITS = limitsOf(`main_journal_diameter: { new: 49.990 to 50.010, wear: { min: 49.950 } }
cylinder_bore: { new: 80.000 to 80.020, wear: { max: 80.050 } }
crankshaft_runout: { wear: { max: 0.080 } }`);

/** Stated, and each read twice: of what might be a slip, or of another size, nothing is cut. */
const SIZES = 'machined: [{ part: main journals, size: std }, { part: cylinders, size: std }]\n';

const millimetres = (micrometres: number): string => (micrometres / 1000).toFixed(3);

type Order = <T>(things: readonly T[]) => readonly T[];

function wornFiles({ journals, bores, isOffsetRead, less }: Worn, order: Order = (things) => things): Files {
  const at = (texts: readonly string[]): string =>
    `{ ${order(texts.map((text, index) => `${index + 1}: ${text}`)).join(', ')} }`;
  const { maxError, runout, offset, polish, honeStock } = less;
  const blocks = [
    `- { measure: main_journal_diameter, with: mic, at: ${at(journals.map(millimetres))} }`,
    `- { measure: cylinder_bore, with: bore, stations: [top, bottom], at: ${at(bores.map((each) => `[${each.map(millimetres).join(', ')}]`))} }`,
    `- { measure: crankshaft_runout, with: dial, supported_on: [1], at: { 2: ${millimetres(runout)}, 3: ${millimetres(runout)} } }`,
    ...(isOffsetRead
      ? [`- { measure: cylinder_centre_offset, at: ${at(bores.map(() => millimetres(offset)))} }`]
      : []),
  ];
  const error = `resolution: 0.001 mm, max_error: ${millimetres(maxError)} mm`;
  return {
    'shop.yaml': `kind: shop\nunits: { length: mm }\ndecision_rule: simple\nplan: { polish: ${millimetres(polish)}, hone_stock: ${millimetres(honeStock)}, steps: { main_journals: [0.10 under, 0.20 under, 0.30 under], cylinders: [0.10 over, 0.20 over, 0.30 over] } }\n`,
    'register.yaml': `kind: instruments\ninstruments:\n  mic: { type: micrometer, ${error} }\n  bore: { type: bore gauge, ${error} }\n  dial: { type: dial indicator, resolution: 0.001 mm, max_error: 0.001 mm }\n`,
    'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { cylinders: 2, mains: 3 }\n',
    'e/limits.yaml': LIMITS,
    'e/session.yaml': sessionOf('teardown', order([...blocks, ...blocks]).join('\n'), SIZES),
  };
}

/** How far each place is cut, in micrometres: farther than any step where none cleans it up. */
const depthsOf = (files: Files): ReadonlyMap<string, number> =>
  new Map(
    cutsOf(contextOf(files)).flatMap(({ part, places }) =>
      places.map(({ position, choice }): [string, number] => [
        `${part.id} ${position.name}`,
        choice.kind === 'step' ? Math.abs(Number(choice.step.name.split(' ')[0]) * 1000) : 9999,
      ]),
    ),
  );

it('a journal is never ground farther, nor a bore bored, where what a step has to reach through shrinks', () => {
  const nearer = new Set<string>();
  const some = fc.subarray(['maxError', 'runout', 'offset', 'polish', 'honeStock'] as const, {
    minLength: 1,
  });
  fc.assert(
    fc.property(worn, some, fc.nat(80), (engine, shrinking, part) => {
      const less = { ...engine.less };
      for (const each of shrinking) less[each] = Math.ceil((less[each] * part) / 100);
      const [deep, shallow] = [depthsOf(wornFiles(engine)), depthsOf(wornFiles({ ...engine, less }))];
      expect([...shallow.keys()]).toEqual([...deep.keys()]);
      for (const [place, depth] of deep) {
        expect(shallow.get(place), place).toBeLessThanOrEqual(depth);
        if ((shallow.get(place) ?? 0) < depth) nearer.add(place);
      }
    }),
    runs(1000, 40),
  );
  expect(nearer.size).toBeGreaterThan(2);
});

describe('what is to be done and what is to be ordered', () => {
  it('does not depend on the order of blocks and positions', () => {
    let moved = 0;
    const saidOf = (files: Files) => {
      const context = contextOf(files);
      const jobs = jobsOf(context);
      return {
        jobs: jobs.map(({ name, urgency }) => `${urgency} ${name}`),
        lines: orderList(context, jobs).map(({ what, size, count, onShelf }) => [what, size, count, onShelf]),
        depths: depthsOf(files),
      };
    };
    fc.assert(
      fc.property(worn, whole(1, 2 ** 31), (engine, seed) => {
        const [before, after] = [wornFiles(engine), wornFiles(engine, (things) => shuffled(things, seed))];
        if (before['e/session.yaml'] !== after['e/session.yaml']) moved += 1;
        expect(saidOf(after)).toEqual(saidOf(before));
      }),
      runs(200, 12),
    );
    expect(moved).toBeGreaterThan(6);
  });
});
