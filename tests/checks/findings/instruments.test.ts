import { describe, expect, test } from 'vitest';
import { type Documents, lastJudged, messages, rowAt, withCode } from '../bench.ts';

const ENGINE = `kind: engine
name: A
units: { length: in }
layout: { mains: 3, cylinders: 2, crankpins: 2 }
sizes: { main_journal_diameter: 3.2480 }
`;
const REGISTER = `kind: instruments
instruments:
  mic-3-4: { type: micrometer, range: { from: 3 in, to: 4 in }, resolution: 0.0001 in, max_error: 0.0001 in, due: 2026-02-03 }
  halves: { type: micrometer, resolution: 0.0005 in, max_error: 0.0005 in }
  bore-2-6: { type: bore gauge, range: { from: 2 in, to: 6 in }, resolution: 0.0001 in, max_error: 0.0001 in, repeatability: 0.00005 in }
  dial: { type: dial indicator, range: { from: 0 in, to: 0.4 in }, resolution: 0.0001 in }
  strip: { type: gauging strip, marks: [0.002 in, 0.003 in, 0.004 in, 0.006 in] }
`;
const LIMITS = `kind: limits
source: invented
limits:
  main_bearing_clearance: { new: { min: 0.0025, max: 0.0035 } }
`;

const read = (readings: string, more: Partial<Documents> = {}, head = 'date: 2026-02-03') =>
  lastJudged({
    'engine.yaml': ENGINE,
    'instruments.yaml': REGISTER,
    'limits.yaml': LIMITS,
    's.yaml': `kind: session\nstage: rebuild\n${head}\n${readings}`,
    ...more,
  });

const one = (block: string): string => `readings:\n  - { ${block} }\n`;
const JOURNAL = 'measure: main_journal_diameter';

describe('the due date of an instrument', () => {
  test('on its very day it is not overdue', () => {
    expect(messages(read(one(`${JOURNAL}, with: mic-3-4, at: { 1: 3.2478 }`)), 'instrument/overdue')).toEqual(
      [],
    );
  });

  test('the day after it is', () => {
    const found = read(one(`${JOURNAL}, with: mic-3-4, at: { 1: 3.2478 }`), {}, 'date: 2026-02-04');
    expect(messages(found, 'instrument/overdue')).toEqual([
      'mic-3-4 was due for calibration on 2026-02-03, and was used on 2026-02-04',
    ]);
  });

  test("a block's own date counts, and what the gauge was set with", () => {
    const block =
      'measure: main_bearing_bore, with: bore-2-6, set_with: mic-3-4, date: 2026-02-05, at: { 1: 3.2507 }';
    const found = withCode(read(one(block)), 'instrument/overdue');
    expect(found.map(({ message }) => message)).toEqual([
      'mic-3-4 was due for calibration on 2026-02-03, and was used on 2026-02-05',
    ]);
  });
});

describe('the scale of an instrument', () => {
  test.each([
    ['mic-3-4', '3.0000', 0],
    ['mic-3-4', '4.0000', 0],
    ['mic-3-4', '2.9999', 1],
    ['mic-3-4', '4.0001', 1],
    ['halves', '2.8740', 0],
  ])('%s at %s: %i out of range', (instrument, reading, count) => {
    const found = read(one(`${JOURNAL}, with: ${instrument}, at: { 1: ${reading} }`));
    expect(withCode(found, 'instrument/range')).toHaveLength(count);
  });

  test('a block says it once, with how many more there are', () => {
    const found = read(one(`${JOURNAL}, with: mic-3-4, at: { 1: 2.8741, 2: 2.8742, 3: 3.2478 }`));
    expect(messages(found, 'instrument/range')).toEqual([
      'main journal diameter 1: 2.8741 is outside the range of mic-3-4, 3 in to 4 in, and 1 more in this block',
    ]);
  });

  test('a dial set to a master keeps its range by the deviation', () => {
    const block = 'measure: main_bearing_bore, with: dial, set_to: 3.2500, at: { 1: +0.0007 }';
    expect(withCode(read(one(block)), 'instrument/range')).toEqual([]);
  });

  test('a gauge zeroed on the journal reads clearances, far below its own range', () => {
    const block = 'measure: main_bearing_clearance, with: bore-2-6, set_to: journal, at: { 1: 0.0030 }';
    expect(withCode(read(one(block)), 'instrument/range')).toEqual([]);
  });

  test.each([
    ['0.0020', 0],
    ['0.0060', 0],
    ['0.0019', 1],
    ['0.0061', 1],
    ['under 0.002', 0],
  ])('a strip with marks from 0.002 to 0.006 read at %s: %i off its marks', (reading, count) => {
    const found = read(one(`measure: main_bearing_clearance, with: strip, at: { 1: ${reading} }`));
    expect(withCode(found, 'instrument/range')).toHaveLength(count);
  });

  test.each([
    ['mic-3-4', '3.2478', 0, 'its own digits'],
    ['mic-3-4', '3.24780', 1, 'a nought too many'],
    ['mic-3-4', '82.495 mm', 0, 'turned into millimetres'],
    ['mic-3-4', '82.49412 mm', 0, 'turned exactly into millimetres'],
    ['mic-3-4', '82.4953 mm', 1, 'a digit finer than inches turn into'],
    ['mic-3-4', '{ repeat: [3.2478, 3.2477, 3.2478] }', 0, 'a mean of three is no whole step'],
    ['mic-3-4', '{ repeat: [3.2478, 3.2477, 3.24775] }', 0, 'the first reading says the digits'],
    ['halves', '3.24750', 1, 'a nought too many of a coarser scale'],
    ['halves', '3.2475', 0, 'on a half thousandth'],
    ['halves', '3.2477', 1, 'between two of its steps'],
    ['unknown', '3.247812', 0, 'nothing is known of it'],
  ])('%s reading %s: %i with too many digits (%s)', (instrument, reading, count) => {
    const found = read(one(`${JOURNAL}, with: ${instrument}, at: { 1: ${reading} }`));
    expect(withCode(found, 'instrument/digits')).toHaveLength(count);
  });

  test('deviations from a master count by themselves', () => {
    const block = 'measure: main_bearing_bore, with: halves, set_to: 3.2498, at: { 1: +0.0005 }';
    expect(withCode(read(one(block)), 'instrument/digits')).toEqual([]);
  });
});

describe('an instrument that the register does not hold', () => {
  test('is named with what was perhaps meant, also where a gauge was set with it', () => {
    const found = read(
      one('measure: main_bearing_bore, with: bore-2-6, set_with: mic-3-5, at: { 1: 3.2507 }'),
    );
    expect(messages(found, 'instrument/unknown')).toEqual([
      'mic-3-5 is not in the register of instruments: did you mean mic-3-4?',
    ]);
  });

  test('as a setter it is assumed to be a micrometer, and its error still cancels against its own readings', () => {
    const found = read(
      `readings:
  - { measure: main_journal_diameter, with: old, at: { 1: 3.2478 } }
  - { measure: main_bearing_bore, with: bore-2-6, set_with: old, at: { 1: 3.2508 } }
`,
    );
    const terms = rowAt(found, 'main_bearing_clearance', '1').routes[0]?.route.measured.mean.terms;
    expect([...(terms?.keys() ?? [])].filter((source) => source.endsWith(' of old'))).toEqual([]);
    const bore = rowAt(found, 'main_bearing_bore', '1').routes[0]?.route.measured.mean.terms;
    expect(bore?.get('largest error of old')?.u).toBeCloseTo(50_000 / Math.sqrt(3), 3);
  });

  test('a gauge zeroed in a micrometer locked at the journal carries nothing of its own error', () => {
    const block =
      'measure: main_bearing_clearance, with: bore-2-6, set_with: mic-3-4, set_to: journal, at: { 1: 0.0030 }';
    const terms = rowAt(read(one(block)), 'main_bearing_clearance', '1').routes[0]?.route.measured.mean.terms;
    expect([...(terms?.keys() ?? [])].filter((source) => source.includes('mic-3-4'))).toEqual([]);
  });
});

describe('the check before measuring', () => {
  const checked = (entry: string) => messages(read(`checked:\n  - { ${entry} }\n`), 'instrument/off');

  test.each(['3.0001', '2.9999', '3.0000'])(
    'a micrometer that may be off by a tenth reads %s on 3.0000',
    (seen) => {
      expect(checked(`instrument: mic-3-4, standard: 3.0000, read: ${seen}`)).toEqual([]);
    },
  );

  test('off by two tenths is more than it may be', () => {
    expect(checked('instrument: mic-3-4, standard: 3.0000, read: 2.9998')).toEqual([
      'mic-3-4 read 2.9998 in on a standard of 3.0000 in: off by 0.0002 in, and its largest error is 0.0001 in; tenths recall mic-3-4 --error -0.0002in shows what it changes',
    ]);
  });

  test('an instrument that nobody registered is said to be unknown', () => {
    const found = read('checked:\n  - { instrument: mic-9, standard: 3.0000, read: 3.1 }\n');
    expect(withCode(found, 'instrument/unknown')).toHaveLength(1);
    expect(withCode(found, 'instrument/off')).toEqual([]);
  });
});

describe('an instrument too coarse for the tolerance', () => {
  const strip = one('measure: main_bearing_clearance, with: strip, at: { 1: 0.0030, 2: 0.0031 }');

  // The gauge 0.0001/√3 and 0.00005, two resolutions 0.0001/√12, the micrometer cancelled: u 0.0000866 in.
  test('a strip with marks a thousandth apart proves nothing inside a thousandth; gauge and micrometer would do', () => {
    expect(messages(read(strip), 'instrument/coarse')).toEqual([
      'main bearing clearance 1, 2: strip, ±0.00057 in, is too coarse to show a value inside new min 0.0025 and new max 0.0035; ' +
        'bore-2-6 set with mic-3-4 and mic-3-4 would do, ±0.00018',
    ]);
  });

  test('where the register has nothing finer it says what it takes', () => {
    const poor = {
      'instruments.yaml':
        'kind: instruments\ninstruments:\n  strip: { type: gauging strip, marks: [0.002 in, 0.003 in, 0.004 in] }\n',
    };
    expect(messages(read(strip, poor), 'instrument/coarse')[0]).toContain(
      'no registered instrument would do: ±0.00050 is needed',
    );
  });

  test('a strip that was read as a range is reported how it would do, at its position with the label', () => {
    const labelled = { 'engine.yaml': `${ENGINE}labels: { main: { 1: front } }\n` };
    const under = one('measure: main_bearing_clearance, with: strip, at: { 1: under 0.004 }');
    const fine = {
      'instruments.yaml':
        'kind: instruments\ninstruments:\n  strip: { type: gauging strip, marks: [0.0019 in, 0.002 in, 0.0021 in] }\n',
    };
    expect(messages(read(under, { ...fine, ...labelled }), 'instrument/coarse')).toEqual([
      'main bearing clearance 1 (front): strip, ±0.0023 in, is too coarse to show a value inside new min 0.0025 and new max 0.0035; ' +
        'strip read at one of its marks would do, ±0.000057',
    ]);
  });

  test('a reading that its last digit alone makes too coarse is to be written with one more', () => {
    const feelers = {
      'engine.yaml': 'kind: engine\nname: E\nunits: { length: mm }\nlayout: { cylinders: 3, valves: [I] }\n',
      'limits.yaml': 'kind: limits\nsource: Invented.\nlimits: { valve_lash_cold: { new: 0.15 to 0.25 } }\n',
      'instruments.yaml':
        'kind: instruments\ninstruments:\n  feelers: { type: feeler gauge, max_error: 0.008 mm }\n',
    };
    const lash = one(
      'measure: valve_lash_cold, with: feelers, at: { 1: { I: 0.2 }, 2: { I: 0.20 }, 3: { I: 0.2 mm } }',
    );
    const rest = (text: string) =>
      `its last digit counts as the step of the scale: write ${text} where it was read so, ±0.011`;
    expect(messages(read(lash, feelers), 'instrument/coarse').map((each) => each.split('; ')[1])).toEqual([
      rest('0.20'),
      rest('0.20 mm'),
    ]);
  });

  test('a limit on one side can always be proven, and so can a wide one', () => {
    const max = { 'limits.yaml': LIMITS.replace('min: 0.0025, ', '') };
    expect(messages(read(strip, max), 'instrument/coarse')).toEqual([]);
    const wide = { 'limits.yaml': LIMITS.replace('0.0025', '0.0020') };
    expect(messages(read(strip, wide), 'instrument/coarse')).toEqual([]);
  });

  // metrology of JCGM 106: tolerance / 4u = 0.866 for a strip of ±0.0005 in against 0.0010 in
  test('its capability is 0.866, and by the guarded rule the very middle is undecided at 92 %', () => {
    const row = rowAt(
      lastJudged(
        {
          'engine.yaml': ENGINE,
          'instruments.yaml': REGISTER,
          'limits.yaml': LIMITS,
          's.yaml': `kind: session\nstage: rebuild\ndate: 2026-02-03\n${strip}`,
        },
        { rule: 'guarded' },
      ),
      'main_bearing_clearance',
      '1',
    );
    expect(254_000 / (4 * (row.routes[0]?.route.u ?? 0))).toBeCloseTo(0.866, 3);
    expect(row.judgement.verdict).toBe('undecided');
    expect(row.judgement.probability).toBeCloseTo(0.9167, 4);
  });
});

describe('a limit for a length of the part', () => {
  const limits = {
    'limits.yaml':
      'kind: limits\nsource: invented\nlimits:\n  main_journal_taper: { per: 1 in, wear: { max: 0.0005 } }\n',
  };
  test.each([
    ['[front, rear]', 1],
    ['{ front: 0.25 in, rear: 1.75 in }', 0],
  ])('with stations %s: %i says that it cannot judge', (stations, count) => {
    const block = `${JOURNAL}, stations: ${stations}, at: { 1: [3.2478, 3.2476], 2: [3.2478, 3.2476] }`;
    const found = withCode(read(one(block), limits), 'limits/no-distance');
    expect(found).toHaveLength(count);
    if (count > 0) expect(found[0]?.limitPlace?.path).toBe('limits.yaml');
  });

  test('one reading a journal has no taper, with distances or without', () => {
    expect(withCode(read(one(`${JOURNAL}, at: { 1: 3.2478 }`), limits), 'limits/no-distance')).toEqual([]);
  });
});

describe('a gauge set to a size', () => {
  const BORE = 'measure: main_bearing_bore, with: bore-2-6, set_to: 3.2500, at: { 1: +0.0007 }';
  const u = (block: string): number =>
    rowAt(read(one(block)), 'main_bearing_bore', '1').routes[0]?.route.u ?? 0;
  const assumed = (block: string): readonly string[] =>
    withCode(read(one(block)), 'instrument/assumed').map(({ message }) => message);

  test('without a word of the master carries that of a usual one, and says so', () => {
    const bare = u(BORE.replace('set_to: 3.2500, at: { 1: +0.0007 }', 'at: { 1: 3.2507 }'));
    const master = 20_000 / Math.sqrt(3);
    expect(u(BORE)).toBeCloseTo(Math.hypot(bare, master), 3);
    expect(assumed(BORE)).toEqual([
      'main bearing bore: no registered master is named; the largest error of a setting master is assumed, ±0.000079 in',
    ]);
  });

  test('with its master named carries that one', () => {
    expect(assumed(BORE.replace('set_to', 'set_with: mic-3-4, set_to'))).toEqual([]);
  });

  test('and not registered has its setting in what is assumed of it', () => {
    expect(assumed(BORE.replace('with: bore-2-6, ', ''))).toEqual([
      'main bearing bore: no registered instrument is named; the largest error of a bore gauge is assumed, ±0.00024 in',
    ]);
  });
});
