import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { markedParts } from '../../../src/compare/parts/markedParts.ts';
import { offeredTo } from '../../../src/compare/parts/offered.ts';
import type { Judgeable } from '../../../src/compare/state.ts';
import { openDocument } from '../../../src/documents/opened.ts';
import { readShelfPart } from '../../../src/documents/parts/shelfPart.ts';
import { type Fits, fitsOf } from '../../../src/plan/fit/fits.ts';
import type { OrderLine } from '../../../src/plan/order/orderLine.ts';
import { orderList } from '../../../src/plan/order/orderList.ts';
import { planContext } from '../../../src/plan/work/context.ts';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { runs } from '../../propertyRuns.ts';
import { type Files, limitsOf, reportOf } from '../../shopOf.ts';

const LIMITS = limitsOf(
  `crankpin_diameter: { new: 49.900 to 50.100, wear: { min: 49.800 } }
rod_bearing_clearance: { new: 0.020 to 0.080 }
cylinder_bore: { new: 79.980 to 80.020, wear: { max: 80.200 } }
piston_clearance: { new: 0.020 to 0.060 }`,
);
const CRACKED = 'found: [{ on: crankshaft, is: cracked, do: renew }]\n';

const session = (stage: string, date: string, readings: string, more = ''): string =>
  `kind: session\nstage: ${stage}\ndate: ${date}\n${more}readings: [${readings}]\n`;
const pins = (...sizes: readonly string[]): string =>
  `{ measure: crankpin_diameter, at: { ${sizes.map((size, index) => `${index + 1}: ${size}`).join(', ')} } }`;
const housings = (...sizes: readonly string[]): string =>
  pins(...sizes).replace('crankpin_diameter', 'rod_housing_bore');

/** An engine of two pins, its stock, and another engine beside it. */
const engineFiles = (name: string, stock: string, sessions: Files): Files => ({
  'shop.yaml': 'kind: shop\nunits: { length: mm, mass: g }\n',
  'limits.yaml': LIMITS,
  'stock.yaml': `kind: stock\n${stock}`,
  [`${name}/engine.yaml`]: `kind: engine\nname: ${name}\nlayout: { cylinders: 2, crankpins: 2 }\njob: { number: 7 }\n`,
  ...Object.fromEntries(Object.entries(sessions).map(([path, text]) => [`${name}/${path}.yaml`, text])),
});

const judgeable = (files: Files): Judgeable => reportOf(files);

const part = (mark: string, rest: string, kind = 'crankshaft'): string =>
  `kind: part\npart: ${kind}\nmark: ${mark}\nfits: [Pump]\n${rest}`;
const inspected = (...sizes: readonly string[]): string =>
  `inspections: [{ date: 2026-01-10, readings: [${pins(...sizes)}] }]\n`;

interface Chosen extends Fits {
  readonly whole: string | undefined;
  readonly reasons: Readonly<Record<string, string>>;
  readonly ordered: () => readonly string[];
  readonly lines: () => readonly OrderLine[];
}

function chosenFor(files: Files, documents: readonly string[], others: readonly Judgeable[] = []): Chosen {
  const of = reportOf(files);
  const { engine, registry, state } = of;
  if (state === undefined) throw new Error('no session');
  const known = [of, ...others];
  const called = (name: string) => known.find((each) => each.engine.document.name === name);
  const shelf = documents.flatMap((text, index) => {
    const path = `parts/${index}.yaml`;
    const problems: Parameters<typeof readShelfPart>[2] = [];
    const opened = openDocument(path, path, new TextEncoder().encode(text));
    const read = readShelfPart(opened, called, problems);
    expect([...opened.problems, ...problems].map(({ message }) => message)).toEqual([]);
    return read ?? [];
  });
  const benched = shelf.map((each) => {
    const marked = markedParts(known, shelf).find((one) => one.shelf === each);
    if (marked === undefined || each.bench === undefined) throw new Error('no bench');
    return { marked, shelf: each, bench: each.bench };
  });
  const offers = offeredTo(of, benched);
  const context = planContext(engine, registry, state);
  const fits = fitsOf(context, offers);
  const lines = () => orderList(context, jobsOf(context), offers);
  return {
    ...fits,
    whole: fits.wholes[0]?.chosen.mark,
    reasons: Object.fromEntries(fits.notOffered.map(({ called: name, why }) => [name, why])),
    lines,
    ordered: () =>
      lines()
        .filter(({ count, onShelf }) => count > onShelf)
        .map(({ what }) => what),
  };
}

const STOCK = 'shells: [{ code: S, fits: rod shells, wall: 1.475, count: 4 }]\n';
const CRACKED_ENGINE = engineFiles('Pump', STOCK, {
  s: session('teardown', '2026-02-03', housings('53.000', '53.000'), CRACKED),
});
const GOOD = ['50.000', '50.000'];

describe('a crankshaft of the shelf', () => {
  it('is chosen in place of one that must be renewed, with shells for its own pins, and is not ordered', () => {
    const { whole, wholes, shells, ordered, lines } = chosenFor(CRACKED_ENGINE, [
      part('K1', inspected(...GOOD)),
    ]);
    expect(whole).toBe('K1');
    expect(wholes[0]?.inPlaceOf).toEqual(['renew crankshaft']);
    expect(shells[0]?.places.map(({ chosen }) => chosen?.upper.code)).toEqual(['S', 'S']);
    expect(ordered()).not.toContain('crankshaft');
    expect(lines().filter(({ what }) => what === 'crankshaft')).toEqual([
      {
        what: 'crankshaft',
        code: 'K1',
        size: '',
        count: 1,
        onShelf: 1,
        when: 'now',
        for: 'in place of: renew crankshaft',
      },
    ]);
    expect(chosenFor(CRACKED_ENGINE, []).ordered()).toContain('crankshaft');
  });

  it('counts by the size that it was ground to', () => {
    const stock = STOCK.replace(
      ' }]',
      ' }, { code: U, fits: rod shells, size: 0.250 mm under, wall: 1.600, count: 4 }]',
    );
    const ground = `inspections: [{ date: 2026-01-10, stage: machined, machined: [{ part: crankpins, size: 0.250 mm under }], readings: [${pins('49.750', '49.750')}] }]\n`;
    const { whole, shells } = chosenFor({ ...CRACKED_ENGINE, 'stock.yaml': `kind: stock\n${stock}` }, [
      part('K1', ground),
    ]);
    expect([whole, shells[0]?.places[0]?.chosen?.upper.code]).toEqual(['K1', 'U']);
  });

  it('goes in where it is in order, and never the one that stays', () => {
    const sound = engineFiles('Pump', STOCK, {
      s: session('teardown', '2026-02-03', `${housings('53.000', '53.000')}, ${pins(...GOOD)}`),
    });
    const { whole, reasons } = chosenFor(sound, [part('K1', inspected(...GOOD))]);
    expect(whole).toBeUndefined();
    expect(reasons['crankshaft K1']).toMatch(/needs no other/);
  });

  const ferry = (more: Files): Judgeable => judgeable(engineFiles('Ferry', STOCK, more));
  const inFerry = session('rebuild', '2025-05-01', '', 'fitted: { crankshaft: { mark: K1 } }\n');

  it.each([
    ['another engine has it', inspected(...GOOD), { a: inFerry }, /^in Ferry since 2025-05-01$/],
    [
      'it ran since it was read',
      `from: [{ engine: Ferry, date: 2026-01-20 }]\n${inspected(...GOOD)}`,
      { a: inFerry },
      /^not measured since it came to lie here: crankpin diameter 1, 2$/,
    ],
    [
      'it is cracked',
      `${inspected(...GOOD).replace(' }]\n', `, ${CRACKED.trim()} }]\n`)}`,
      {},
      /^crankshaft: cracked, to be renewed/,
    ],
    [
      'it came out of its last engine cracked',
      `from: [{ engine: Ferry, date: 2026-01-05 }]\n${inspected(...GOOD)}`,
      { a: inFerry, b: session('teardown', '2026-01-04', '', CRACKED) },
      /^crankshaft: cracked, to be renewed/,
    ],
    [
      'documents contradict each other',
      `from: [{ engine: Ferry, date: 2026-01-05 }]\n${inspected('50.010', '50.000')}`,
      {
        a: session(
          'rebuild',
          '2025-05-01',
          pins('49.990', '50.000'),
          'fitted: { crankshaft: { mark: K1 } }\n',
        ),
      },
      /^what documents say of it cannot all be true: .*came back/,
    ],
    ['another job has it', `reserved: 8\n${inspected(...GOOD)}`, {}, /^reserved for 8$/],
    ['a pin was not read', inspected('50.000'), {}, /^not measured .*: crankpin diameter 2$/],
    ['a pin of it is out', inspected('50.000', '49.790'), {}, /^it must be cut itself: grind crankpins$/],
  ] as const)('is not offered where %s', (_, rest, sessions, why) => {
    const { whole, reasons, ordered } = chosenFor(CRACKED_ENGINE, [part('K1', `${rest}`)], [ferry(sessions)]);
    expect(whole).toBeUndefined();
    expect(reasons['crankshaft K1']).toMatch(why);
    expect(ordered()).toContain('crankshaft');
  });

  it('that this job has reserved is offered', () => {
    expect(chosenFor(CRACKED_ENGINE, [part('K1', `reserved: 7\n${inspected(...GOOD)}`)]).whole).toBe('K1');
  });
});

describe('what of the shelf goes in whole', () => {
  const read = (...sizes: readonly string[]) =>
    engineFiles('Pump', STOCK, {
      s: session('teardown', '2026-02-03', `${housings('53.000', '53.000')}, ${pins(...sizes)}`),
    });

  it('is named by what need not be done', () => {
    const { wholes } = chosenFor(read('49.790', '50.000'), [part('K1', inspected(...GOOD))]);
    expect(wholes.map(({ inPlaceOf }) => inPlaceOf)).toEqual([['grind crankpins']]);
  });

  it('is named in place of the renewal of one with a pin beyond its last size', () => {
    const limits = LIMITS.replace('wear: { min: 49.800 }', 'wear: { min: 49.800 }, last_size: 49.700');
    const files = { ...read('49.790', '50.000'), 'limits.yaml': limits };
    const { wholes } = chosenFor(files, [part('K1', inspected(...GOOD))]);
    expect(wholes.map(({ inPlaceOf }) => inPlaceOf)).toEqual([['renew crankshaft']]);
  });

  it.each([
    ['used parts where it was looked at in use', 'service', {}, ['W', 'W']],
    [
      'new parts where it was machined',
      'machined',
      { 'crankshaft K1': 'it must be cut itself: grind crankpins' },
      [],
    ],
  ])('is judged by the limits of %s', (_, stage, reasons, codes) => {
    const files = { s: session('teardown', '2026-02-03', housings('53.000', '53.000'), CRACKED) };
    const stock = 'shells: [{ code: W, fits: rod shells, wall: 1.530, count: 4 }]\n';
    const worn = inspected('49.890', '49.890').replace('readings', `stage: ${stage}, readings`);
    const found = chosenFor(engineFiles('Pump', stock, files), [part('K1', worn)]);
    const chosen = found.shells.flatMap(({ places }) => places.flatMap((each) => each.chosen ?? []));
    expect([found.reasons, chosen.map(({ upper }) => upper.code)]).toEqual([reasons, codes]);
  });

  it.each([
    ['whose condition alone is stated', 'condition: used'],
    ['that only its code is stated of', 'code: C7'],
  ])('takes no size from the engine’s own %s', (_, says) => {
    const own = `fitted: { crankshaft: { ${says} } }\n`;
    const files = {
      s: session(
        'teardown',
        '2026-02-03',
        `${housings('53.000', '53.000')}, ${pins('49.790', '50.000')}`,
        own,
      ),
    };
    expect(chosenFor(engineFiles('Pump', STOCK, files), [part('K1', inspected('50.000'))]).reasons).toEqual({
      'crankshaft K1': 'not measured since it came to lie here: crankpin diameter 2',
    });
  });

  it('is not asked for where the engine’s own is only worn', () => {
    const { whole, reasons } = chosenFor(read('49.850', '50.000'), [part('K1', inspected(...GOOD))]);
    expect([whole, reasons['crankshaft K1']]).toEqual([
      undefined,
      "the engine's own crankshaft needs no other",
    ]);
  });

  it('is the better of two, and the other is told so', () => {
    const { whole, reasons } = chosenFor(CRACKED_ENGINE, [
      part('K1', inspected('50.010', '50.010')),
      part('K2', inspected(...GOOD)),
    ]);
    expect([whole, reasons]).toEqual([
      'K2',
      { 'crankshaft K1': 'it would do; the chosen one fits no worse' },
    ]);
  });

  it('is the first of two that are alike', () => {
    const alike = ['K1', 'K2'].map((mark) => part(mark, inspected(...GOOD)));
    expect(chosenFor(CRACKED_ENGINE, alike).whole).toBe('K1');
  });

  it('has its sizes known where shells are chosen by them, whatever else the shelf holds', () => {
    const stock = STOCK.replace(' }]', ' }, { code: M, fits: main shells, wall: 2, count: 4 }]');
    const files = { ...CRACKED_ENGINE, 'stock.yaml': `kind: stock\n${stock}` };
    expect(chosenFor(files, [part('K1', inspected('50.000'))]).reasons).toEqual({
      'crankshaft K1': 'not measured since it came to lie here: crankpin diameter 2',
    });
  });

  it('need not be read where nothing on the shelf goes by it', () => {
    const engine =
      CRACKED_ENGINE['Pump/engine.yaml']?.replace('crankpins: 2', 'crankpins: 2, mains: 3') ?? '';
    const files = { ...CRACKED_ENGINE, 'Pump/engine.yaml': engine };
    expect(chosenFor(files, [part('K1', inspected(...GOOD))]).whole).toBe('K1');
  });

  describe('a block', () => {
    const pistons = 'pistons: [{ mark: P1, diameter: 79.965 }, { mark: P2, diameter: 79.965 }]\n';
    const bored = (size: string): string => `{ measure: cylinder_bore, at: { 1: ${size}, 2: ${size} } }`;
    const block = (mark: string, size: string): string =>
      part(mark, `inspections: [{ date: 2026-01-10, readings: [${bored(size)}] }]\n`, 'block');
    const files = engineFiles('Pump', pistons, { s: session('teardown', '2026-02-03', bored('80.210')) });

    it('is chosen in place of one whose bores are out, by what its pistons come to', () => {
      const { wholes, notOffered } = chosenFor(files, [block('B1', '80.100'), block('B2', '80.000')]);
      expect(wholes.map(({ chosen, inPlaceOf }) => [chosen.mark, inPlaceOf])).toEqual([
        ['B2', ['bore cylinders']],
      ]);
      expect(notOffered).toEqual([{ called: 'block B1', why: 'it would do; the chosen one fits no worse' }]);
    });

    it.each([
      [
        'pistons are chosen by them',
        pistons,
        ['block B1: not measured since it came to lie here: cylinder bore 1, 2'],
      ],
      ['the shelf has no pistons, no more', 'pistons: []\n', []],
    ])('has its bores known where %s', (_, stock, reasons) => {
      const cracked = 'found: [{ on: block, is: cracked, do: renew }]\n';
      const engine = engineFiles('Pump', stock, { s: session('teardown', '2026-02-03', '', cracked) });
      const text = engine['Pump/engine.yaml']?.replace('crankpins: 2', 'crankpins: 2, mains: 2') ?? '';
      const housed =
        'inspections: [{ date: 2026-01-10, readings: [{ measure: main_housing_bore, at: { 1: 60.000, 2: 60.000 } }] }]\n';
      const { notOffered } = chosenFor({ ...engine, 'Pump/engine.yaml': text }, [
        part('B1', housed, 'block'),
      ]);
      expect(notOffered.map(({ called, why }) => `${called}: ${why}`)).toEqual(reasons);
    });
  });

  it('is nothing that is chosen otherwise', () => {
    const documents = [part('F1', '', 'flywheel'), part('K1', inspected(...GOOD))];
    expect(chosenFor(CRACKED_ENGINE, documents).notOffered).toEqual([
      { called: 'flywheel F1', why: 'nothing is chosen for it by measured sizes' },
    ]);
  });
});

describe('a piston with a document of its own', () => {
  const bores = engineFiles('Pump', 'pistons: [{ mark: P1, diameter: 79.960 }]\n', {
    s: session('machined', '2026-02-03', '{ measure: cylinder_bore, at: { 1: 80.000, 2: 80.010 } }'),
  });
  const piston = (mark: string, size: string, more = ''): string =>
    part(
      mark,
      `${more}inspections: [{ date: 2026-01-10, readings: [{ measure: piston_diameter, at: { 1: ${size} } }] }]\n`,
      'piston',
    );

  it('is chosen beside those of the stock, as near to the middle as all together allow', () => {
    const { pistons, notOffered } = chosenFor(bores, [piston('P8', '79.970'), piston('P9', '79.900')]);
    expect(pistons?.places.map((each) => each.piston.mark)).toEqual(['P1', 'P8']);
    expect(notOffered).toEqual([]);
  });

  it('counts for the size that it was made to', () => {
    const over = piston('P8', '79.970', 'fitted: { piston: { size: 0.25 mm over } }\n');
    expect(chosenFor(bores, [over]).pistons?.problem?.kind).toBe('too few');
  });

  it('that ran in another engine goes back there alone', () => {
    const other = judgeable(
      engineFiles('Ferry', 'pistons: []\n', {
        a: session('rebuild', '2025-05-01', '', 'fitted: { pistons: { at: { 1: { mark: P8 } } } }\n'),
      }),
    );
    const used = piston('P8', '79.970', 'from: [{ engine: Ferry, date: 2026-01-05 }]\n');
    const { pistons, reasons } = chosenFor(bores, [used], [other]);
    expect(pistons?.problem?.kind).toBe('too few');
    expect(reasons['piston P8']).toMatch(/goes back to its own bore/);
  });

  it('has to be read, at one cylinder alone', () => {
    const twice = piston('P9', '79.970').replace('{ 1: 79.970 }', '{ 1: 79.970, 2: 79.970 }');
    const { reasons } = chosenFor(bores, [
      part('P8', 'inspections: [{ date: 2026-01-10, readings: [] }]\n', 'piston'),
      twice,
    ]);
    expect(reasons).toEqual({
      'piston P8': 'not measured since it came to lie here',
      'piston P9': 'measured at several cylinders, and it is one piston',
    });
  });

  it('is weighed with the others', () => {
    const weighed = (mark: string, grams: number): string =>
      piston(mark, '79.970').replace(' }]', ` }, { measure: piston_weight, at: { 1: ${grams} } }]`);
    const files = { ...bores, 'shop.yaml': `${bores['shop.yaml']}plan: { weight_spread: 3 g }\n` };
    const marks = (...grams: readonly number[]) =>
      chosenFor(
        files,
        grams.map((each, index) => weighed(`W${index}`, each)),
      ).pistons?.places.map((each) => each.piston.mark);
    expect(marks(400, 410, 412)).toEqual(['W1', 'W2']);
    expect(marks(400, 410, 414)).toEqual([]);
  });
});

/** In thousandths of a millimetre. */
const millimetres = (thousandths: number): string => (thousandths / 1000).toFixed(3);

interface Shell {
  readonly wall: number;
  readonly count: number;
}

/** The least that two pins can cost with pairs of these shells; undefined where one of them goes without. */
function leastCost(rooms: readonly number[], shells: readonly Shell[]): number | undefined {
  const [room, ...rest] = rooms;
  if (room === undefined) return 0;
  const costs = shells.flatMap((shell, index) => {
    const clearance = room - 2 * shell.wall;
    if (shell.count < 2 || clearance < 20 || clearance > 80) return [];
    const left = shells.map((each, at) => (at === index ? { ...each, count: each.count - 2 } : each));
    const others = leastCost(rest, left);
    return others === undefined ? [] : [((clearance - 50) / 30) ** 2 + others];
  });
  return costs.length === 0 ? undefined : Math.min(...costs);
}

describe('of all crankshafts and shells of the shelf', () => {
  const journal = fc.integer({ min: 49_960, max: 50_040 });
  const shell = fc.record({
    wall: fc.integer({ min: 1455, max: 1495 }),
    count: fc.integer({ min: 0, max: 4 }),
  });

  it('those are chosen that lie as near to the middle as the best, found by trying every one with every pair', () => {
    fc.assert(
      fc.property(
        fc.tuple(fc.integer({ min: 52_980, max: 53_020 }), fc.integer({ min: 52_980, max: 53_020 })),
        fc.array(fc.tuple(journal, journal), { minLength: 1, maxLength: 4 }),
        fc.array(shell, { minLength: 1, maxLength: 4 }),
        (holes, cranks, shells) => {
          const stock = shells.map(
            ({ wall, count }, index) =>
              `  - { code: S${index}, fits: rod shells, wall: ${millimetres(wall)}, count: ${count} }\n`,
          );
          const files = engineFiles('Pump', `shells:\n${stock.join('')}`, {
            s: session('teardown', '2026-02-03', housings(...holes.map(millimetres)), CRACKED),
          });
          const { whole, shells: fits } = chosenFor(
            files,
            cranks.map((sizes, index) => part(`K${index}`, inspected(...sizes.map(millimetres)))),
          );
          const tried = cranks.map((sizes) =>
            leastCost(
              sizes.map((size, pin) => (holes[pin] ?? 0) - size),
              shells,
            ),
          );
          const best = Math.min(...tried.flatMap((cost) => cost ?? []));
          if (best === Number.POSITIVE_INFINITY) return;
          expect(tried[Number(whole?.slice(1))]).toBeCloseTo(best, 9);
          expect(fits[0]?.places.every(({ chosen }) => chosen !== undefined)).toBe(true);
        },
      ),
      { seed: 20_261_131, ...runs(60, 20) },
    );
  });
});
