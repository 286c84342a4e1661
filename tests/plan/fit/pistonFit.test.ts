import { describe, expect, it } from 'vitest';
import { NO_OFFERS } from '../../../src/documents/parts/offeredPart.ts';
import { fitsOf, isShort, pistonsFor } from '../../../src/plan/fit/fits.ts';
import { type Files, limitsOf, sessionOf } from '../../shopOf.ts';
import { contextOf, lengthIn } from '../planOf.ts';

const LIMITS = `cylinder_bore: { new: 80.000 to 80.020, wear: { max: 80.100 } }
piston_clearance: { new: 0.030 to 0.070 }`;

const shop = (pistons: string, bores: string, { plan = '', limits = LIMITS, more = '' } = {}): Files => ({
  'shop.yaml': `kind: shop\nunits: { length: mm, mass: g }\n${plan}`,
  'stock.yaml': `kind: stock\npistons: [${pistons}]\n`,
  'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { cylinders: 2 }\n',
  'e/limits.yaml': limitsOf(limits),
  'e/session.yaml': sessionOf('machined', bores, more),
});

function fitIn(files: Files) {
  const context = contextOf(files);
  const fits = fitsOf(context);
  const { pistons } = fits;
  expect(pistonsFor(context, NO_OFFERS)).toEqual(pistons);
  return (
    pistons && {
      of: pistons.clearance.id,
      isToBeBored: pistons.isToBeBored,
      problem: pistons.problem?.kind,
      toBeRenewed: pistons.toBeRenewed.map(({ name }) => name),
      short: isShort(fits),
      places: pistons.places.map(({ position, piston, size, least, greatest, wanted }) =>
        [
          position.name,
          piston.mark,
          ...[size, least, greatest, wanted.min, wanted.middle, wanted.max].map((each) =>
            lengthIn('mm', each),
          ),
        ].join(' '),
      ),
    }
  );
}

const bores = (first: string, second: string): string =>
  `- { measure: cylinder_bore, directions: [thrust, axial], at: { 1: ${first}, 2: ${second} } }`;
const ROUND = bores('[80.010, 80.010]', '[80.020, 80.020]');
const piston = (mark: string, diameter: string, more = ''): string =>
  `{ mark: ${mark}, diameter: ${diameter}${more} }`;
const of = 'piston_clearance';

describe('pistons for finished bores', () => {
  it('are chosen together, with what each will run at', () => {
    expect(fitIn(shop(`${piston('A', '79.970')}, ${piston('B', '79.960')}`, ROUND))).toEqual({
      of,
      isToBeBored: false,
      problem: undefined,
      toBeRenewed: [],
      short: false,
      places: ['1 B 80.010 0.050 0.050 0.030 0.050 0.070', '2 A 80.020 0.050 0.050 0.030 0.050 0.070'],
    });
  });

  it('are held to the limits where they bear, along the thrust axis, from least to greatest', () => {
    const stations = bores(
      '[[80.004, 80.000], [80.012, 80.000]]',
      '[[80.010, 80.100], [80.010, 80.100]]',
    ).replace('directions', 'stations: [top, bottom], directions');
    expect(
      fitIn(
        shop(`${piston('A', '79.960')}, ${piston('B', '79.960')}`, stations, {
          limits: LIMITS.replace('80.000 to 80.020, wear: { max: 80.100 }', '80.000 to 80.200'),
        }),
      )?.places.map((each) => each.split(' ').slice(3, 5)),
    ).toEqual([
      ['0.044', '0.052'],
      ['0.050', '0.050'],
    ]);
  });

  const problem = (files: Files) => {
    const { places, ...fit } = fitIn(files) ?? { places: [] };
    expect(places).toEqual([]);
    return fit;
  };
  const lacking = (why: string, isToBeBored = false) => ({
    of,
    isToBeBored,
    problem: why,
    toBeRenewed: [],
    short: true,
  });
  const TWO = `${piston('A', '79.970')}, ${piston('B', '79.960')}`;

  it.each([
    [
      'limits of new parts are stated on one side alone',
      shop(TWO, ROUND, { limits: LIMITS.replace('0.030 to 0.070', '{ max: 0.070 }') }),
      lacking('no limits'),
    ],
    ['a bore was not measured', shop(TWO, bores('[80.010, 80.010]', '~')), lacking('not measured')],
    ['there are fewer than bores', shop(piston('A', '79.970'), ROUND), lacking('too few')],
    [
      'there are fewer of the size that is bored',
      shop(
        `${TWO}, ${piston('C', '80.220', ', size: 0.25 over')}`,
        ROUND.replaceAll('80.0', '80.2').replaceAll('80.210', '80.260').replaceAll('80.220', '80.270'),
        { more: 'machined: [{ part: cylinders, size: 0.25 over }]\n' },
      ),
      lacking('too few'),
    ],
    [
      'one brings both bores inside, and the other none',
      shop(`${piston('A', '79.960')}, ${piston('B', '79.900')}`, ROUND),
      lacking('nothing fits'),
    ],
    [
      'no two are of one weight',
      shop(`${piston('A', '79.970', ', weight: 400')}, ${piston('B', '79.960', ', weight: 404')}`, ROUND, {
        plan: 'plan: { weight_spread: 3 g }\n',
      }),
      lacking('of no one weight'),
    ],
  ])('are none where %s', (_, files, fit) => expect(problem(files)).toEqual(fit));

  it.each([
    ['renewed for what was seen', ROUND, LIMITS, 'found: [{ on: cylinder 2, is: cracked, do: renew }]\n'],
    [
      'past its last size',
      bores('[80.010, 80.010]', '[80.110, 80.110]'),
      LIMITS.replace('wear: { max: 80.100 }', 'wear: { max: 80.100 }, largest_bore: 80.100'),
      '',
    ],
  ])('are chosen beside a bore that is %s: that one is named', (_, read, limits, more) => {
    const { problem: none, short, toBeRenewed, places } = fitIn(shop(TWO, read, { limits, more })) ?? {};
    expect([none, short, toBeRenewed]).toEqual([undefined, true, ['2']]);
    expect(places?.map((each) => each.slice(0, 3))).toEqual(['1 B']);
  });

  it('are chosen for no bore that only should be renewed, or whose piston is used again', () => {
    const files = shop(TWO, bores('[80.010, 80.010]', '[80.050, 80.050]'), {
      limits: LIMITS.replace('wear: { max: 80.100 }', 'wear: { max: 80.100 }, largest_bore: 80.100'),
    });
    const worn = { ...files, 'e/session.yaml': `${files['e/session.yaml']}`.replace('machined', 'teardown') };
    const owned = { 'e/engine.yaml': `${files['e/engine.yaml']}job: { customer: Canal works (invented) }\n` };
    const again = shop(TWO, ROUND, {
      more: 'found: [{ on: piston 2, is: sound, do: reuse, by: TM }]\n',
    });
    expect(fitIn(worn)).toMatchObject({ toBeRenewed: ['2'], short: true });
    for (const each of [{ ...worn, ...owned }, again]) {
      const { short, toBeRenewed, places } = fitIn(each) ?? {};
      expect([short, toBeRenewed, places?.map((place) => place.slice(0, 3))]).toEqual([false, [], ['1 B']]);
    }
  });

  it('are chosen though a bore is to be renewed and nobody says which', () => {
    const more = 'found: [{ on: cylinder, is: cracked, do: renew }]\n';
    expect(fitIn(shop(TWO, ROUND, { more }))?.problem).toBeUndefined();
  });

  it('are of one weight at exactly the spread', () => {
    const two = `${piston('A', '79.970', ', weight: 400')}, ${piston('B', '79.960', ', weight: 403')}`;
    expect(fitIn(shop(two, ROUND, { plan: 'plan: { weight_spread: 3 g }\n' }))?.problem).toBeUndefined();
  });

  const oneWeight = (marks: string, weight: number, ...diameters: readonly string[]): readonly string[] =>
    diameters.map((diameter, index) => piston(marks.charAt(index), diameter, `, weight: ${weight}`));
  const near = oneWeight('AB', 410, '79.970', '79.960');
  const off = oneWeight('CD', 400, '79.975', '79.965');
  const alike = oneWeight('EF', 400, '79.970', '79.960');
  it.each([
    ['nearest to the middle, though another stands first', [...off, ...near], ['1 B', '2 A']],
    ['nearest to the middle, though another stands last', [...near, ...off], ['1 B', '2 A']],
    ['that stands first of two that come as near', [...near, ...alike], ['1 B', '2 A']],
  ])('are the set of one weight %s', (_, stock, places) => {
    const files = shop(stock.join(', '), ROUND, { plan: 'plan: { weight_spread: 3 g }\n' });
    expect(fitIn(files)?.places.map((each) => each.split(' ').slice(0, 2).join(' '))).toEqual(places);
  });

  it('are of the size that the one bore of an engine was bored to', () => {
    const files = shop(
      piston('A', '80.210', ', size: 0.25 over'),
      '- { measure: cylinder_bore, directions: [thrust, axial], at: { 1: [80.260, 80.260] } }',
      { more: 'machined: [{ part: cylinders, size: 0.25 over }]\n' },
    );
    const single = { 'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { cylinders: 1 }\n' };
    expect(fitIn({ ...files, ...single })?.problem).toBeUndefined();
  });

  it('are not spoken of where the shelf has none', () => {
    expect(fitIn(shop('', ROUND))).toBeUndefined();
  });
});

describe('bores that are still to be bored', () => {
  const WORN = bores('[80.110, 80.010]', '[80.005, 80.005]');
  const over = (mark: string, diameter: string, more = ''): string =>
    piston(mark, diameter, `, size: 0.25 over${more}`);
  const STOCK = `${piston('S', '79.960')}, ${over('R', '80.205', ', ran_in: "1"')}, ${over('A', '80.210')}, ${over('B', '80.216')}`;

  it('are finished each to its own piston of the step, for the middle of the clearance', () => {
    expect(fitIn(shop(STOCK, WORN))).toEqual({
      of,
      isToBeBored: true,
      problem: undefined,
      toBeRenewed: [],
      short: false,
      places: ['1 A 80.260 0.050 0.050 0.030 0.050 0.070', '2 B 80.266 0.050 0.050 0.030 0.050 0.070'],
    });
  });

  const plan = 'plan: { weight_spread: 3 g }\n';
  it('take the first set of one weight that is large enough', () => {
    const weighed = [
      ['A', 400],
      ['B', 410],
      ['C', 411],
      ['D', 412],
    ].map(([mark, grams], index) => over(`${mark}`, `80.21${index}`, `, weight: ${grams}`));
    expect(
      fitIn(shop(weighed.join(', '), WORN, { plan }))?.places.map((each) =>
        each.split(' ').slice(0, 3).join(' '),
      ),
    ).toEqual(['1 B 80.261', '2 C 80.262']);
  });

  it.each([
    [
      'fewer of the step than bores',
      shop(`${piston('S', '79.960')}, ${over('A', '80.210')}`, WORN),
      'too few',
    ],
    [
      'enough, and no two of one weight',
      shop(`${over('A', '80.210', ', weight: 400')}, ${over('B', '80.210', ', weight: 410')}`, WORN, {
        plan,
      }),
      'of no one weight',
    ],
  ])('have no pistons where there are %s', (_, files, problem) => {
    expect(fitIn(files)).toEqual({
      of,
      isToBeBored: true,
      problem,
      toBeRenewed: [],
      short: true,
      places: [],
    });
  });
});

describe('bores of two sizes', () => {
  const two = `${piston('A', '79.960')}, ${piston('B', '80.460', ', size: 0.50 mm over')}`;

  it('take pistons each of its own size', () => {
    const files = shop(two, bores('[80.510, 80.510]', '[80.010, 80.010]'), {
      more: 'machined: [{ part: cylinder 1, size: 0.50 mm over }]\n',
    });
    expect(fitIn(files)?.places.map((each) => each.split(' ').slice(0, 3).join(' '))).toEqual([
      '1 B 80.510',
      '2 A 80.010',
    ]);
    expect(
      fitIn({
        ...files,
        ...shop(piston('A', '79.960'), ROUND),
        'e/session.yaml': files['e/session.yaml'] ?? '',
      })?.problem,
    ).toBe('too few');
  });

  it('that are still to be bored as well', () => {
    const steps = 'plan: { separate: [cylinders], steps: { cylinders: [0.50 over, 1.00 over] } }\n';
    const files = shop(
      `${piston('C', '80.960', ', size: 1.00 mm over')}, ${two}`,
      `${bores('[80.110, 80.110]', '[80.700, 80.700]')}\n${bores('[80.110, 80.110]', '[80.700, 80.700]')}`.replaceAll(
        '  ',
        ' ',
      ),
      { plan: steps },
    );
    expect(
      fitIn({
        ...files,
        'e/session.yaml': (files['e/session.yaml'] ?? '').replace('stage: machined', 'stage: teardown'),
      })?.places.map((each) => each.split(' ').slice(0, 3).join(' ')),
    ).toEqual(['1 B 80.510', '2 C 81.010']);
  });
});
