import { describe, expect, it } from 'vitest';
import { gridOfOne } from '../../../src/characteristics/grid.ts';
import type { SessionView } from '../../../src/checks/judge/row.ts';
import type { Route } from '../../../src/checks/value/route.ts';
import { normalisedError, routesOf } from '../../../src/checks/value/routes.ts';
import type { StatedTemperature } from '../../../src/measurement/temperature.ts';
import { exactly } from '../../../src/measurement/value.ts';
import { type Fraction, fraction, toNumber } from '../../../src/quantity/fraction.ts';
import { engineIn, type Files, REGISTER, sessionOf, shopFiles } from '../../shopOf.ts';
import { characteristicIn, positionIn, viewIn } from '../viewIn.ts';
import { routeOf } from './routeOf.ts';

const thou = (amount: Fraction): number => Math.round(toNumber(amount) / 254) / 1000;

const at = (
  view: SessionView,
  id: string,
  name = '1',
  choice = {},
  warm?: StatedTemperature,
): readonly Route[] => {
  const characteristic = characteristicIn(view, id);
  return view.routes.at(characteristic, positionIn(view, characteristic, name), choice, warm);
};

const viewOf = (blocks: string, more: Files = {}, head = ''): SessionView =>
  viewIn({
    ...shopFiles('main_bearing_clearance: { new: { max: 1 } }', '', 'rebuild', {
      'instruments.yaml': REGISTER,
    }),
    'e/session.yaml': sessionOf('rebuild', blocks, head),
    ...more,
  });

const read = (id: string, value: string, more = ''): string =>
  `- { measure: ${id}${more}, at: { 1: ${value} } }`;
const JOURNAL = read('main_journal_diameter', '3.0000', ', with: mic');
const BORE = read('main_bearing_bore', '3.0030', ', with: bore, set_with: other');

const MEANS = ({ measured }: Route): number => thou(measured.mean.amount);

describe('a reading', () => {
  it('is a route with all that is known of it', () => {
    const view = viewOf(
      `- { measure: main_journal_diameter, with: mick, date: 2026-02-01, stations: [front, rear], at: { 1: { front: 3.0000, rear: 2.99950, note: oily } } }`,
    );
    const [route, ...others] = at(view, 'main_journal_diameter');
    expect(others).toEqual([]);
    expect(route).toMatchObject({
      name: 'read directly',
      with: ['mick'],
      written: ['3.0000', '2.99950'],
      inputs: [],
      warmth: undefined,
      takenOn: '2026-02-01',
      notes: ['oily'],
      putRightBy: undefined,
      takenFrom: undefined,
    });
    if (route === undefined) throw new Error('not read');
    expect(route.assumed.map(({ id }) => id)).toEqual(['mick']);
    expect(thou(route.lastDigit) * 1000).toBe(10);
    expect([route.place.path, route.place.line]).toEqual(['e/session.yaml', 5]);
    expect(route.block).toBe(view.session.blocks[0]);
    expect(route.readIn).toBe(view.session);
    expect([route.measured.least, route.measured.greatest].map(({ amount }) => thou(amount))).toEqual([
      2999.5, 3000,
    ]);
    expect(route.grid.stations.map(({ name }) => name)).toEqual(['front', 'rear']);
  });

  it.each([
    ['a registered gauge and setter', ', with: bore, set_with: mic', []],
    ['a setter that is not registered', ', with: bore, set_with: other', ['other']],
    ['a gauge that is not', ', with: gauge, set_with: mic', ['gauge']],
    ['neither', ', with: gauge, set_with: other', ['gauge', 'other']],
  ])('by %s assumes what is not known', (_, more, expected) => {
    const [route] = at(viewOf(read('main_bearing_bore', '3.0030', more)), 'main_bearing_bore');
    expect(route?.assumed.map(({ id }) => id)).toEqual(expected);
  });

  it('that was not taken is none', () => {
    expect(at(viewOf(read('main_journal_diameter', '~')), 'main_journal_diameter')).toEqual([]);
  });
});

describe('a value that is worked out', () => {
  it('is a route with all that stands behind it', () => {
    const view = viewOf(`${BORE}\n${JOURNAL}`);
    const [route, ...others] = at(view, 'main_bearing_clearance');
    const inputs = [at(view, 'main_bearing_bore')[0], at(view, 'main_journal_diameter')[0]];
    expect(others).toEqual([]);
    expect(route).toMatchObject({
      name: 'bearing bore − journal',
      with: ['bore', 'mic'],
      written: [],
      block: undefined,
      warmth: undefined,
      putRightBy: undefined,
      takenOn: '',
      notes: [],
      takenFrom: undefined,
    });
    if (route === undefined) throw new Error('not worked out');
    expect(route.inputs).toEqual(inputs);
    expect(route.assumed.map(({ id }) => id)).toEqual(['other']);
    expect(thou(route.lastDigit)).toBe(0.1);
    expect(route.place).toBe(inputs[0]?.place);
    expect(route.readIn).toBe(view.session);
    expect(route.grid).toEqual(gridOfOne(route.measured.mean));
  });

  it('from a figure that leads back to it takes what was read, and nothing where nothing was', () => {
    const formula = 'main_bearing_clearance + main_journal_diameter';
    const shop = `kind: shop\nunits: { length: in }\ncharacteristics:\n  main_bearing_bore: { label: bore, quantity: length, positions: main, formula: ${formula} }\n`;
    const means = (blocks: string) =>
      at(viewOf(blocks, { 'shop.yaml': shop }), 'main_bearing_clearance').map(MEANS);
    expect(means(`${BORE}\n${JOURNAL}`)).toEqual([3]);
    expect(means(JOURNAL)).toEqual([]);
  });

  it('has the finest last digit of its inputs, and each instrument once', () => {
    const fine = read('main_journal_diameter', '3.00000', ', with: bore');
    const [route] = at(viewOf(`${BORE}\n${fine}`), 'main_bearing_clearance');
    expect(route?.with).toEqual(['bore']);
    expect(route && thou(route.lastDigit)).toBe(0.01);
  });

  it('is worked out as its limit asks, each way for itself', () => {
    const three =
      '- { measure: cylinder_bore, with: bore, stations: { top: 0, middle: 1 in, bottom: 4 in }, at: { 1: [4.0012, 4.0015, 4.0004] } }';
    const view = viewOf(three);
    const taper = (choice: object) => at(view, 'cylinder_taper', '1', choice).map(MEANS);
    expect(taper({ by: 'ends' })).toEqual([0.8]);
    expect(taper({ by: 'range' })).toEqual([1.1]);
    expect(taper({ by: 'ends' })).toEqual([0.8]);
    expect(taper({ by: 'ends', per: fraction(254_000_000) })).toEqual([0.2]);
    expect(taper({ by: 'ends', per: fraction(508_000_000) })).toEqual([0.4]);
  });

  it('is worked out once for each temperature that is asked for', () => {
    const view = viewOf(
      read('piston_diameter', '4.0000', ', with: mic'),
      {
        'e/engine.yaml': engineIn('in', 'materials: { pistons: aluminium }\n'),
      },
      'temperature: 20 degC\n',
    );
    const warm = { amount: fraction(120), text: '120 degC' };
    const standard = at(view, 'piston_diameter');
    expect(at(view, 'piston_diameter')).toBe(standard);
    // 4 in × (20.75 − 11.5) ppm × 100 K
    expect(at(view, 'piston_diameter', '1', {}, warm).map(MEANS)).toEqual([4003.7]);
    expect(at(view, 'piston_diameter', '1', {}, warm)).toBe(at(view, 'piston_diameter', '1', {}, warm));
    expect(standard.map(MEANS)).toEqual([4000]);
  });
});

describe('what a session may have', () => {
  const mayHave = (view: SessionView, ...ids: readonly string[]) =>
    ids.map((id) => view.routes.mayHave(characteristicIn(view, id)));

  it('is what it read, and what comes of that', () => {
    const view = viewOf(`${BORE}\n${JOURNAL}`);
    expect(mayHave(view, 'main_journal_diameter', 'main_bearing_clearance', 'main_journal_taper')).toEqual([
      true,
      true,
      true,
    ]);
    expect(mayHave(view, 'main_housing_bore', 'cylinder_bore')).toEqual([false, false]);
  });

  it('of a session that it uses is what comes of both', () => {
    const earlier = { 'e/trial.yaml': sessionOf('trial', JOURNAL).replace('2026-02-03', '2026-01-20') };
    const using = viewOf(BORE, earlier, 'uses: [trial]\n');
    expect(mayHave(using, 'main_bearing_clearance', 'main_journal_diameter')).toEqual([true, false]);
    expect(mayHave(viewOf(BORE, earlier), 'main_bearing_clearance')).toEqual([false]);
  });
});

describe('what stands in from sessions that this one uses', () => {
  const trial = (name: string, date: string, blocks: string, head = ''): Files => ({
    [`e/${name}.yaml`]: sessionOf('trial', blocks, head).replace('2026-02-03', date),
  });
  const journal = (value: string): string => read('main_journal_diameter', value, ', with: mic');
  const older = trial('older', '2026-01-10', journal('2.9990'));
  const newer = trial('newer', '2026-01-20', journal('2.9995'));
  const clearance = (files: Files, head: string, blocks = BORE) =>
    at(viewOf(blocks, files, head), 'main_bearing_clearance');

  it('is the latest reading, with its day', () => {
    const [route, ...others] = clearance({ ...newer, ...older }, 'uses: [older, newer]\n');
    expect(others).toEqual([]);
    expect(route && MEANS(route)).toBe(3.5);
    expect(route?.inputs.map(({ takenFrom }) => takenFrom)).toEqual([undefined, '2026-01-20']);
    expect(route?.notes).toEqual(['main journal diameter of 2026-01-20']);
    expect(route?.readIn.date).toBe('2026-02-03');
  });

  it('is that of the one that has it', () => {
    const none = trial('newer', '2026-01-20', read('cylinder_bore', '4.0000'));
    expect(clearance({ ...older, ...none }, 'uses: [newer, older]\n').map(MEANS)).toEqual([4]);
  });

  it('is nothing that this session read itself', () => {
    expect(clearance(newer, 'uses: [newer]\n', `${BORE}\n${JOURNAL}`).map(MEANS)).toEqual([3]);
  });

  it.each([
    ['no session is used', '', newer],
    ['another one is', 'uses: [older]\n', { ...trial('older', '2026-01-10', BORE), ...newer }],
    ['the part was changed since', 'uses: [newer]\nreplaced: [{ part: crankshaft }]\n', newer],
    [
      'it was changed in between',
      'uses: [older]\n',
      {
        ...older,
        ...trial(
          'newer',
          '2026-01-20',
          read('cylinder_bore', '4.0000'),
          'machined: [{ part: main journals }]\n',
        ),
      },
    ],
  ])('is nothing where %s', (_, head, files) => {
    expect(clearance(files, head)).toEqual([]);
  });

  it('holds where the part was changed before it was read', () => {
    const machined = trial(
      'older',
      '2026-01-10',
      read('cylinder_bore', '4.0000'),
      'machined: [{ part: main journals }]\n',
    );
    expect(clearance({ ...machined, ...newer }, 'uses: [newer]\n').map(MEANS)).toEqual([3.5]);
  });

  it('makes no value of figures that come wholly from there: those were judged there', () => {
    const both = trial('newer', '2026-01-20', `${BORE}\n${JOURNAL}`);
    expect(clearance(both, 'uses: [newer]\n', read('cylinder_bore', '4.0000'))).toEqual([]);
  });

  it('is told of by whoever asks for it', () => {
    const view = viewOf(BORE, newer, 'uses: [newer]\n');
    const isInUsed = (id: string, name = '1') => {
      const characteristic = characteristicIn(view, id);
      return view.routes.isInUsed(characteristic, positionIn(view, characteristic, name));
    };
    expect(isInUsed('main_journal_diameter')).toBe(true);
    expect(isInUsed('main_journal_diameter', '2')).toBe(false);
    expect(isInUsed('main_bearing_bore')).toBe(false);
    const changed = viewOf(BORE, newer, 'uses: [newer]\nreplaced: [{ part: crankshaft }]\n');
    const journals = characteristicIn(changed, 'main_journal_diameter');
    expect(changed.routes.isInUsed(journals, positionIn(changed, journals, '1'))).toBe(false);
  });

  it('of an id that nobody knows there is nothing', () => {
    const view = viewOf(BORE);
    const position = positionIn(view, characteristicIn(view, 'main_bearing_bore'), '1');
    expect(view.routes.inputsAt({ id: 'nothing', position })).toEqual([]);
    expect(view.routes.inputsAt({ id: 'main_bearing_bore', position }).map(MEANS)).toEqual([3003]);
  });
});

it('the routes of a session are built once for all that ask', () => {
  const { engine, registry, session } = viewOf(JOURNAL);
  const built = new Map();
  const first = routesOf(engine, registry, session, built);
  expect(routesOf(engine, registry, session, built)).toBe(first);
  expect(built.get(session)).toBe(first);
});

describe('the normalised error of two values without uncertainty', () => {
  const known = (amount: number, cycle?: number) =>
    routeOf({
      characteristic: { cycle: cycle === undefined ? undefined : fraction(cycle) } as Route['characteristic'],
      measured: {
        least: exactly(fraction(amount)),
        mean: exactly(fraction(amount)),
        greatest: exactly(fraction(amount)),
      },
    });

  it.each([
    ['is nothing where they are alike', known(5), known(5), 0],
    ['is none where they differ', known(5), known(6), null],
    ['is nothing a whole turn apart', known(5, 720), known(725, 720), 0],
    ['is none half a turn apart', known(5, 720), known(365, 720), null],
  ])('%s', (_, a, b, expected) => {
    expect(normalisedError(a, b)).toBe(expected);
  });
});
