import { describe, expect, it } from 'vitest';
import { blockError } from '../../../src/checks/value/blockError.ts';
import { blockInstrument, isSetToUnnamed, setterOf } from '../../../src/checks/value/blockInstrument.ts';
import { blockWarmth, expandingPart, warmthNote } from '../../../src/checks/value/blockWarmth.ts';
import { earlierDays } from '../../../src/checks/value/earlierDays.ts';
import { notTaken, supportsOf } from '../../../src/checks/value/notTaken.ts';
import { andMore, readingPointsOfBlock } from '../../../src/checks/value/readingPoints.ts';
import { leavesOf } from '../../../src/checks/value/route.ts';
import { steppedBackIn } from '../../../src/checks/value/steppedBack.ts';
import { writtenNumbers } from '../../../src/checks/value/writtenNumbers.ts';
import { type Point, pointsOf, type ReadingBlock } from '../../../src/documents/session/reading.ts';
import type { Instrument } from '../../../src/measurement/instrument.ts';
import { STANDARD_TEMPERATURE } from '../../../src/measurement/temperature.ts';
import { type Fraction, parseDecimal, toNumber } from '../../../src/quantity/fraction.ts';
import { engineIn, type Files, sessionOf, shopFiles } from '../../shopOf.ts';
import { characteristicIn, positionIn, viewIn } from '../viewIn.ts';
import { routeOf } from './routeOf.ts';

const LIMITS = 'piston_clearance: { new: { max: 1 } }';
const tenths = (amount: Fraction | undefined): number | undefined => amount && toNumber(amount) / 25_400;

const REGISTER = `kind: instruments
units: { length: in }
instruments:
  mic: { type: micrometer, resolution: 0.0001, max_error: 0.0002, repeatability: 0.00004 }
  plain: { type: micrometer, max_error: 0.0002 }
  bare: { type: micrometer }
  bore: { type: bore gauge, resolution: 0.0001, max_error: 0.0001 }
  ring: { type: setting master, max_error: 0.00005 }
`;

/** The last block of a session with these blocks, its first point, and what uses it. */
function blockOf(blocks: string, more: Files = {}) {
  const view = viewIn(shopFiles(LIMITS, blocks, 'rebuild', { 'instruments.yaml': REGISTER, ...more }));
  const block = view.session.blocks.at(-1);
  const point = block?.positions.flatMap(pointsOf)[0];
  if (block === undefined || point === undefined) throw new Error('no block');
  return { view, block, point, characteristic: characteristicIn(view, block.measure.id) };
}

const figures = ({ resolution, maxError, ...of }: Instrument) => ({
  ...of,
  resolution: tenths(resolution),
  maxError: maxError && ('amount' in maxError ? tenths(maxError.amount) : toNumber(maxError.share)),
});

describe('what a block was measured with', () => {
  const instrument = (block: string) => {
    const { view, block: found, point, characteristic } = blockOf(block);
    return figures(blockInstrument(characteristic, found, point, view));
  };
  const journal = (text: string, value = '3.0000'): string =>
    `- { measure: main_journal_diameter, ${text}at: { 1: ${value} } }`;

  it('is as registered', () => {
    expect(instrument(journal('with: mic, '))).toMatchObject({
      id: 'mic',
      assumed: false,
      resolution: 1,
      maxError: 2,
    });
  });

  it('is read to the last digit where the register has no steps', () => {
    expect(instrument(journal('with: plain, '))).toMatchObject({
      assumed: false,
      resolution: 1,
      maxError: 2,
    });
    expect(instrument(journal('with: plain, ', '3.00000'))).toMatchObject({ resolution: 0.1 });
  });

  it('is assumed by its type where the register has its name alone', () => {
    expect(instrument(journal('with: bare, '))).toMatchObject({
      id: 'bare',
      assumed: true,
      isRegistered: true,
      resolution: 1,
      maxError: expect.closeTo(5 / 2.54, 9),
      source: 'DIN 863-1, 50 to 100 mm',
    });
  });

  it('is assumed by what is usual where the register does not know it', () => {
    const found = instrument(journal('with: unknown, '));
    expect(found).toMatchObject({ id: 'unknown', type: 'micrometer', assumed: true, resolution: 1 });
    expect(found).not.toHaveProperty('isNameless');
    expect(found).not.toHaveProperty('isRegistered');
  });

  it('is another in each block where nobody names it', () => {
    expect(instrument(journal(''))).toMatchObject({
      id: 'an unnamed micrometer',
      isNameless: true,
      assumed: true,
    });
  });

  it('is read to the finest digit of its block where a bare zero says nothing', () => {
    const play = (values: string) =>
      instrument(`- { measure: crankshaft_runout, with: unknown, at: { ${values} } }`).resolution;
    expect(play('1: 0, 2: 0.0005, 3: 0.001')).toBe(1);
    expect(play('1: 0.001, 2: 0.0005')).toBe(10);
    expect(play('1: 0.000')).toBe(10);
  });

  it('of what is counted or tested is none', () => {
    const found = instrument('- { measure: rod_crack_test, with: eye, at: { 1: pass } }');
    expect(found).toMatchObject({
      id: 'eye',
      type: 'other',
      assumed: false,
      resolution: undefined,
      maxError: undefined,
    });
  });
});

/** What is zeroed at the journal itself reads the clearance. */
const measureFor = (text: string): string =>
  text.includes('journal') ? 'main_bearing_clearance' : 'main_bearing_bore';

describe('what a gauge was set with', () => {
  const setter = (text: string) => {
    const { view, block, point } = blockOf(`- { measure: ${measureFor(text)}, ${text}, at: { 1: 3.0000 } }`);
    const found = setterOf(block, point, view);
    return found && figures(found);
  };

  it.each([
    [
      'a registered one',
      'with: bore, set_with: mic',
      { id: 'mic', assumed: false, resolution: 1, maxError: 2 },
    ],
    [
      'one that is not, a micrometer',
      'with: bore, set_with: other',
      { id: 'other', type: 'micrometer', assumed: true, resolution: 1 },
    ],
  ])('is %s', (_, text, expected) => {
    expect(setter(text)).toMatchObject(expected);
  });

  it.each([
    'with: bore',
    'with: unknown, set_with: mic, set_to: journal',
    'with: bore, set_with: ring, set_to: journal',
  ])('of %s is nothing that its readings carry', (text) => {
    const found = setter(text);
    expect(found?.maxError).toBeUndefined();
    expect(found?.resolution).toBeUndefined();
  });

  it('locked at the journal is how well it closes on it', () => {
    const found = setter('with: bore, set_with: mic, set_to: journal');
    expect(found).toMatchObject({ id: 'mic', resolution: undefined, maxError: undefined });
    expect(tenths(found?.repeatability)).toBeCloseTo(0.4, 9);
    expect(setter('with: bore, set_with: plain, set_to: journal')).toBeUndefined();
  });

  it.each([
    ['with: bore, set_to: 3.0000', true],
    ['with: unknown, set_to: 3.0000', false],
    ['set_to: 3.0000', false],
    ['with: bore', false],
    ['with: bore, set_with: ring, set_to: 3.0000', false],
    ['with: bore, set_to: journal', false],
  ])('%s: to something that nobody names: %s', (text, expected) => {
    const { view, block } = blockOf(`- { measure: ${measureFor(text)}, ${text}, at: { 1: 0.0010 } }`);
    expect(isSetToUnnamed(block, view.engine)).toBe(expected);
    if (expected)
      expect(setter(text)).toMatchObject({
        id: 'an unnamed setting master',
        isNameless: true,
        assumed: true,
      });
  });
});

describe('what is known of the errors of a gauge and of what it was set with', () => {
  const certified = (id: string, error: string): string =>
    `  ${id}: { type: other, correct_readings: true, certificates: [{ date: 2026-01-10, errors: [{ at: 2, as_found: ${error} }, { at: 4, as_found: ${error} }], uncertainty: 0.0001 }] }\n`;
  const known = `kind: instruments\nunits: { length: in }\ninstruments:\n${certified('gauge', '0.0005')}${certified('setter', '0.0002')}  plain: { type: micrometer, max_error: 0.0001 }\n`;
  const error = (text: string, amount = '3.0000', date = '') => {
    const { view, block } = blockOf(`- { measure: ${measureFor(text)}, ${text}${date}, at: { 1: 3.0000 } }`, {
      'instruments.yaml': known,
    });
    return tenths(blockError(block, view.session, view.engine)?.(inches(amount)));
  };
  const inches = (text: string): Fraction => {
    const { n, d } = parseDecimal(text);
    return { n: n * 254_000_000n, d };
  };

  it.each([
    ['its own', 'with: gauge', '3.0000', 5],
    ['that of the other', 'with: plain, set_with: setter', '3.0000', 2],
    ['both together', 'with: gauge, set_with: setter', '3.0000', 7],
    [
      'its own alone where it was zeroed at the journal',
      'with: gauge, set_with: setter, set_to: journal',
      '3.0000',
      5,
    ],
    ['nothing beyond their certificates', 'with: gauge, set_with: setter', '5.0000', 0],
    [
      'that of the other at the size that it was set to',
      'with: plain, set_with: setter, set_to: 3.0000',
      '9.0000',
      2,
    ],
  ])('%s', (_, text, amount, expected) => {
    expect(error(text, amount)).toBeCloseTo(expected, 9);
  });

  it('is nothing where neither has a certificate, and before the day of one', () => {
    expect(error('with: plain')).toBeUndefined();
    expect(error('with: plain, set_with: plain')).toBeUndefined();
    expect(error('with: gauge', '3.0000', ', date: 2026-01-09')).toBe(0);
    expect(error('with: gauge', '3.0000', ', date: 2026-01-10')).toBeCloseTo(5, 9);
  });
});

describe('at what temperature a block was read', () => {
  const MATERIALS = 'materials: { block: cast iron, pistons: aluminium, crankshaft: steel }\n';
  const PISTON = '- { measure: piston_diameter, with: mic, at: { 1: 4.0000 } }';
  const warmth = (block: string, head: string, materials = MATERIALS, gauge: Partial<Instrument> = {}) => {
    const files = shopFiles(LIMITS, '', 'rebuild', {
      'e/engine.yaml': engineIn('in', materials),
      'e/session.yaml': sessionOf('rebuild', block, head),
      'instruments.yaml': REGISTER,
    });
    const view = viewIn(files);
    const found = view.session.blocks.at(-1);
    if (found === undefined) throw new Error('no block');
    return blockWarmth(
      characteristicIn(view, found.measure.id),
      { id: 'mic', type: 'micrometer', assumed: false, ...gauge },
      STANDARD_TEMPERATURE,
      { ...view, block: found },
    );
  };

  it('is that of its session, with what expands', () => {
    const found = warmth(PISTON, 'temperature: 70 degF\n');
    expect(found).toMatchObject({
      to: STANDARD_TEMPERATURE,
      id: 'temperature of session',
      part: { key: 'pistons', id: 'the pistons, aluminium', material: 'aluminium' },
      gauge: { id: 'mic, steel', material: 'steel' },
    });
    expect(found?.from.text).toBe('70 degF');
    expect(found && toNumber(found.from.amount)).toBeCloseTo(190 / 9, 9);
  });

  it('is its own where it says one', () => {
    const own = PISTON.replace('with: mic,', 'with: mic, temperature: 25 degC,');
    const found = warmth(`${PISTON}\n${own}`, 'temperature: 70 degF\n');
    expect(found?.id).toBe('temperature of session, reading 2');
    expect(found?.from.text).toBe('25 degC');
  });

  it('is carried by the scale of the gauge', () => {
    expect(warmth(PISTON, 'temperature: 30 degC\n', MATERIALS, { material: 'aluminium' })?.gauge?.id).toBe(
      'mic, aluminium',
    );
  });

  it.each([
    ['no temperature', PISTON, '', MATERIALS, {}],
    ['no material of the part', PISTON, 'temperature: 30 degC\n', 'materials: { block: cast iron }\n', {}],
    ['a gauge of an unknown material', PISTON, 'temperature: 30 degC\n', MATERIALS, { material: 'glass' }],
    ['a weight', '- { measure: piston_weight, at: { 1: 500 g } }', 'temperature: 30 degC\n', MATERIALS, {}],
    [
      'a clearance',
      '- { measure: piston_clearance, at: { 1: 0.004 } }',
      'temperature: 30 degC\n',
      MATERIALS,
      {},
    ],
  ])('of %s nothing expands', (_, block, head, materials, gauge) => {
    expect(warmth(block, head, materials, gauge)).toBeUndefined();
  });

  it('a part is made of the first of its words that the engine states', () => {
    const view = viewIn(
      shopFiles(LIMITS, PISTON, 'rebuild', {
        'e/engine.yaml': engineIn('in', 'materials: { caps: steel, block: cast iron }\n'),
      }),
    );
    const partOf = (id: string) => expandingPart(characteristicIn(view, id), view.engine, view.registry)?.key;
    expect(partOf('main_housing_bore')).toBe('block');
    expect(partOf('cylinder_bore')).toBe('block');
    expect(partOf('piston_diameter')).toBeUndefined();
    expect(partOf('main_bearing_clearance')).toBeUndefined();
  });

  it('a number that was moved says so, and from where to where', () => {
    expect(warmthNote(warmth(PISTON, 'temperature: 70 degF\n'))).toEqual([
      'reading made at 70 degF, converted to 20 degC',
    ]);
    expect(warmthNote(warmth(PISTON, 'temperature: 20 degC\n'))).toEqual([]);
    expect(warmthNote(undefined)).toEqual([]);
  });
});

describe('of which days the inputs are', () => {
  const input = (label: string, takenFrom?: string) =>
    routeOf({ characteristic: { label }, takenFrom } as unknown as Parameters<typeof routeOf>[0]);

  it.each([
    ['none is of another', [input('a'), input('b')], []],
    ['all are of one day', [input('a', '2026-01-02'), input('b', '2026-01-02')], ['read 2026-01-02']],
    ['one is of another day', [input('a'), input('b', '2026-01-02')], ['b of 2026-01-02']],
    [
      'they are of two days',
      [input('a', '2026-01-01'), input('b', '2026-01-02')],
      ['a of 2026-01-01', 'b of 2026-01-02'],
    ],
    [
      'several of one figure are of one day',
      [input('a'), input('b', '2026-01-02'), input('b', '2026-01-02')],
      ['b of 2026-01-02'],
    ],
    ['there is none', [], []],
  ])('where %s', (_, inputs, expected) => {
    expect(earlierDays(inputs)).toEqual(expected);
  });
});

it('the readings that a value comes from are those of its inputs, and of theirs', () => {
  const [a, b, c] = ['1', '2', '3'].map((text) => routeOf({ written: [text] })) as [never, never, never];
  const whole = routeOf({ inputs: [routeOf({ inputs: [a, b] }), c] });
  expect(leavesOf(whole)).toEqual([a, b, c]);
  expect(leavesOf(a)).toEqual([a]);
});

describe('the numbers of a point as they stand on the sheet', () => {
  const INCH = 254_000_000n;
  const point = (written: string, amount: string, lastDigit: string, repeats?: readonly string[]): Point => {
    const inches = (text: string): Fraction => {
      const { n, d } = parseDecimal(text);
      return { n: n * INCH, d };
    };
    return {
      written,
      amount: inches(amount),
      lastDigit: inches(lastDigit),
      ...(repeats && { repeats: repeats.map(inches) }),
    } as unknown as Point;
  };
  const numbers = (of: Point) =>
    writtenNumbers(of).map(({ digits, unit, start }) => [
      digits,
      toNumber(unit) / Number(INCH),
      Number((toNumber(start) / Number(INCH)).toFixed(9)),
    ]);

  it.each([
    ['one', point('3.2478', '3.2478', '0.0001'), [['3.2478', 1, 0]]],
    ['one with a unit', point('-3.2478 in', '-3.2478', '0.0001'), [['-3.2478', 1, 0]]],
    ['thousandths', point('7 thou', '0.007', '0.001'), [['7', 0.001, 0]]],
    ['without a leading zero', point('+.0025', '0.0025', '0.0001'), [['+.0025', 1, 0]]],
    ['a deviation from a master of 3 in', point('+0.0012', '3.0012', '0.0001'), [['+0.0012', 1, 3]]],
    [
      'repeats',
      point('3.2478, 3.2479', '3.24785', '0.0001', ['3.2478', '3.2479']),
      [
        ['3.2478', 1, 0],
        ['3.2479', 1, 0],
      ],
    ],
    ['a word', point('pass', '1', '1'), []],
  ])('%s', (_, of, expected) => {
    expect(numbers(of)).toEqual(expected);
  });
});

it('the points of a block that are wanted are told with where they stand', () => {
  const { block } = blockOf(
    '- { measure: main_journal_diameter, stations: [front, rear], at: { 1: [3.0000, 2.9999], 2: [2.9998, ~] } }',
  );
  const found = readingPointsOfBlock(block as ReadingBlock, ({ written }) => written !== '2.9999');
  expect(found.map(({ reading, point }) => [reading.position.name, point.written])).toEqual([
    ['1', '3.0000'],
    ['2', '2.9998'],
  ]);
  expect(found.every((each) => each.block === block)).toBe(true);
});

it.each([
  [0, ''],
  [1, ', and 1 more in this block'],
  [3, ', and 3 more in this block'],
])('%i more are told as “%s”', (count, expected) => expect(andMore(count)).toBe(expected));

describe('readings that work made step back', () => {
  const stepped = (blocks: string) =>
    steppedBackIn(viewIn(shopFiles(LIMITS, blocks))).map(
      ({ measure, label, position, written, work, place }) => [
        measure,
        label,
        position.name,
        written,
        work.index,
        place.line,
      ],
    );
  const BORES =
    '- { measure: cylinder_bore, stations: [top, bottom], at: { 2: [4.0010, 4.0005], 3: [~, ~], 4: 4.0001 } }';

  it('are told with the first work that came after them', () => {
    expect(
      stepped(
        `${BORES}\n- { work: bored, on: cylinder 2 }\n- { work: honed, on: cylinders }\n- { measure: cylinder_bore, at: { 2: 4.0200 } }`,
      ),
    ).toEqual([
      ['cylinder_bore', 'cylinder bore', '2', ['4.0010', '4.0005'], 1, 5],
      ['cylinder_bore', 'cylinder bore', '4', ['4.0001'], 2, 5],
    ]);
  });

  it('are none without work, nor after it', () => {
    expect(stepped(BORES)).toEqual([]);
    expect(stepped(`- { work: honed, on: cylinders }\n${BORES}`)).toEqual([]);
  });
});

describe('a reading that was not taken', () => {
  const BARE = '- { measure: main_journal_diameter, at: { 1: 3.0000, 2: ~ } }';
  const said = BARE.replace('2: ~', '2: { value: ~, note: cap seized }');
  const left = (blocks: string, at = '2', before = BARE) => {
    const view = viewIn({
      ...shopFiles(LIMITS, ''),
      'e/before.yaml': sessionOf('trial', before).replace('2026-02-03', '2026-01-03'),
      'e/session.yaml': sessionOf('rebuild', blocks),
    });
    const characteristic = characteristicIn(view, 'main_journal_diameter');
    const found = notTaken(
      characteristic,
      positionIn(view, characteristic, at),
      view.engine.sessions.toReversed(),
      view.engine.document.layout,
    );
    return found && [found.reason, found.session.date, found.place.path, found.place.line];
  };

  it('has its reason in all that is noted of it, each once', () => {
    const ends = (front: string, rear: string) =>
      left(
        `- { measure: main_journal_diameter, at: { 2: { front: { value: ~, note: ${front} }, rear: { value: ~, note: ${rear} } } } }`,
      );
    expect(left(said)).toEqual(['cap seized', '2026-02-03', 'e/session.yaml', 5]);
    expect(ends('cap seized', 'no light')?.[0]).toBe('cap seized; no light');
    expect(ends('cap seized', 'cap seized')?.[0]).toBe('cap seized');
  });

  it('has none where nobody says why', () => expect(left(BARE)?.[0]).toBe(''));

  it('is that of the first session that has one there', () => {
    const other = '- { measure: main_journal_diameter, at: { 1: 3.0000 } }';
    expect(left(other)?.slice(0, 3)).toEqual(['', '2026-01-03', 'e/before.yaml']);
    expect(left(said, '2', other)?.[1]).toBe('2026-02-03');
  });

  it('is none where it was read, in part or elsewhere alone', () => {
    expect(left(BARE, '1')).toBeUndefined();
    const part = '- { measure: main_journal_diameter, stations: [front, rear], at: { 2: [~, 3.0000] } }';
    expect(left(part, '2', part)).toBeUndefined();
    const other = '- { measure: crankpin_diameter, at: { 2: ~ } }';
    expect(left(other, '2', other)).toBeUndefined();
  });
});

describe('the sources of error of a point by name', () => {
  const sources = (block: string) => {
    const { view, characteristic } = blockOf(block);
    const [route] = view.routes.at(characteristic, positionIn(view, characteristic, '1'), {});
    return [...(route?.worse.terms.keys() ?? [])];
  };

  it('are those of its instrument and of its own place', () => {
    expect(sources('- { measure: main_journal_diameter, with: mic, at: { 1: 3.0000 } }')).toEqual([
      'largest error of mic',
      'resolution of mic at e/session.yaml#/readings/0/at/1',
      'repeatability of mic at e/session.yaml#/readings/0/at/1',
    ]);
  });

  it('of a gauge that was set are those of the zero of its block', () => {
    expect(
      sources(
        '- { measure: main_journal_diameter, at: { 1: 3 } }\n- { measure: main_bearing_bore, with: bore, set_with: mic, at: { 1: 3.0030 } }',
      ),
    ).toEqual([
      'largest error of bore',
      'largest error of mic',
      'resolution of mic at zeroing at e/session.yaml#/readings/1',
      'repeatability of mic at zeroing at e/session.yaml#/readings/1',
      'resolution of bore at e/session.yaml#/readings/1/at/1',
    ]);
  });

  it('zeroed at each journal are those of that zero', () => {
    expect(
      sources(
        '- { measure: main_bearing_clearance, with: bore, set_with: mic, set_to: journal, at: { 1: 0.0030 } }',
      ),
    ).toContain('repeatability of mic at zeroing at e/session.yaml#/readings/0 1');
  });

  it('of what a gauge was set with are those at the size that it was set to', () => {
    const { view, characteristic } = blockOf(
      '- { measure: main_bearing_bore, with: bore, set_with: share, set_to: 3.0000, at: { 1: 0.1000 } }',
      { 'instruments.yaml': `${REGISTER}  share: { type: micrometer, max_error: 1 % }\n` },
    );
    const [route] = view.routes.at(characteristic, positionIn(view, characteristic, '1'), {});
    const u = route?.worse.terms.get('largest error of share')?.u ?? Number.NaN;
    expect(u / 254e6).toBeCloseTo(0.03 / Math.sqrt(3), 9);
  });

  it('of repeats are their spread, of one reading none', () => {
    const repeats = (text: string) =>
      sources(`- { measure: main_journal_diameter, with: plain, at: { 1: { repeat: [${text}] } } }`).filter(
        (each) => each.startsWith('spread'),
      );
    expect(repeats('3.0000, 3.0004')).toEqual(['spread of repeats at e/session.yaml#/readings/0/at/1']);
    expect(repeats('3.0000, 3.0000')).toEqual([]);
  });
});

it('a shaft lies in its supports where its runout is read, and nowhere for anything else', () => {
  const { view } = blockOf(
    '- { measure: crankshaft_runout, with: dial, supported_on: [1, 3], at: { 2: 0.001 } }',
  );
  const supports = (id: string) =>
    [...supportsOf(characteristicIn(view, id), [view.session])].map(({ name }) => name);
  expect(supports('crankshaft_runout')).toEqual(['1', '3']);
  expect(supports('main_journal_diameter')).toEqual([]);
});
