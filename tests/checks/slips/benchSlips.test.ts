import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../src/checks/finding.ts';
import { lastJudged } from '../bench.ts';

const ENGINE = (unit: string): string =>
  `kind: engine\nname: A\nunits: { length: ${unit} }\nlayout: { mains: 7, cylinders: 6, crankpins: 6 }\n`;

const REGISTER = `kind: instruments
instruments:
  mic: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in }
  bore: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in }
  dial: { type: dial indicator, resolution: 0.0005 in, max_error: 0.0005 in }
  feeler: { type: feeler gauge, max_error: 0.0005 in }
  strip: { type: gauging strip, marks: [0.001 in, 0.0015 in, 0.002 in, 0.003 in, 0.004 in, 0.006 in] }
`;

const LIMITS = `kind: limits
source: invented
units: { length: in }
limits:
  main_journal_diameter: { new: { min: 2.9985, max: 2.9995 }, wear: { min: 2.9975 } }
  main_bearing_bore: { new: { min: 3.0010, max: 3.0020 }, wear: { max: 3.0035 } }
  main_bearing_clearance: { new: { min: 0.0015, max: 0.0035 }, wear: { max: 0.0055 } }
  cylinder_bore: { new: { min: 3.6220, max: 3.6230 }, wear: { max: 3.6260 } }
  piston_diameter: { new: { min: 3.6180, max: 3.6190 }, wear: { min: 3.6160 } }
  piston_clearance: { new: { min: 0.0030, max: 0.0050 }, wear: { max: 0.0090 } }
  crankshaft_end_play: { new: { min: 0.0055, max: 0.0125 }, wear: { max: 0.0170 } }
  crankshaft_runout: { wear: { max: 0.0025 } }
  rod_side_clearance: { new: { min: 0.0075, max: 0.0150 }, wear: { max: 0.0190 } }
`;

const block = (measure: string, gauge: string, values: string): string =>
  values.includes(',')
    ? `  - { measure: ${measure}, with: ${gauge}, at: { ${values
        .split(', ')
        .map((value, index) => `${index + 1}: ${value}`)
        .join(', ')} } }\n`
    : `  - { measure: ${measure}, with: ${gauge}, value: ${values} }\n`;

const found = (
  readings: string,
  unit = 'in',
  more: Readonly<Record<string, string>> = {},
  head = '',
): readonly Finding[] =>
  lastJudged({
    'engine.yaml': ENGINE(unit),
    'instruments.yaml': REGISTER,
    'limits.yaml': LIMITS,
    ...more,
    'teardown.yaml': `kind: session\nstage: teardown\ndate: 2026-02-03\n${head}readings:\n${readings}`,
  }).findings.filter(
    ({ code }) => code.startsWith('reading/') && code !== 'reading/worn' && code !== 'reading/marginal',
  );

const said = (all: readonly Finding[]): readonly string[] =>
  all.map(({ severity, code, message }) => `${severity} ${code}: ${message}`);

const MAINS = '2.9986, 2.9987, 2.9985, 2.9986, 2.9987, 2.9986, 2.9985';
const BORES = '3.0012, 3.0013, 3.0012, 3.0011, 3.0013, 3.0012, 3.0012';
const CYLINDERS = '3.6228, 3.6231, 3.6229, 3.6230, 3.6228, 3.6229';
const PISTONS = '3.6182, 3.6183, 3.6181, 3.6182, 3.6184, 3.6183';

const with2 = (list: string, position: number, value: string): string =>
  list
    .split(', ')
    .map((each, index) => (index + 1 === position ? value : each))
    .join(', ');
const plus = (list: string, by: number): string =>
  list
    .split(', ')
    .map((each) => (Number(each) + by).toFixed(4))
    .join(', ');

describe('slips that a foreman would see', () => {
  test.each([
    [
      'a runout below zero',
      block('crankshaft_runout', 'dial', '0, 0.0005, -0.0010, 0.0005, 0.0005, 0.0005, 0'),
      'error reading/impossible: crankshaft runout 3: 0.0010? written -0.0010: the sign; as read, -0.0010 in is below zero, which is impossible',
    ],
    [
      'a side clearance below zero',
      block('rod_side_clearance', 'feeler', '0.010, 0.011, -0.010, 0.010, 0.009, 0.011'),
      'error reading/impossible: rod side clearance 3: 0.010? written -0.010: the sign; as read, -0.010 in is below zero, which is impossible',
    ],
    [
      'an end play below zero',
      block('crankshaft_end_play', 'dial', '-0.007'),
      'error reading/impossible: crankshaft end play: 0.007? written -0.007: the sign; as read, -0.007 in is below zero, which is impossible',
    ],
    [
      'journals and bores exchanged',
      block('main_journal_diameter', 'mic', BORES) + block('main_bearing_bore', 'bore', MAINS),
      'error reading/impossible: main journal diameter and main bearing bore: at all 7 positions the inner part is larger than the outer, so that main bearing clearance is below zero, which is impossible: are the two lists exchanged?',
    ],
    [
      'a piston larger than its bore',
      block('cylinder_bore', 'bore', CYLINDERS) +
        block('piston_diameter', 'mic', with2(PISTONS, 3, '3.6281')),
      'error reading/impossible: piston diameter 3: 3.6181? written 3.6281: one figure misread, or another service size, which `fitted:` does not state; as read, piston clearance 3: -0.0052 in is not above zero, which is impossible (cylinder bore 3 3.6229 in, piston diameter 3 3.6281 in)',
    ],
    [
      'a piston one figure off its like',
      block('cylinder_bore', 'bore', CYLINDERS) +
        block('piston_diameter', 'mic', with2(PISTONS, 3, '3.5181')),
      'error reading/implausible: piston diameter 3: 3.6181? written 3.5181: one figure misread; as read, 3.5181 in, small by 97.9 thou (wear min 3.6160)',
    ],
    [
      'one journal of seven ten thou off',
      block('main_journal_diameter', 'mic', with2(MAINS, 3, '2.9886')),
      'error reading/implausible: main journal diameter 3: 2.9986? written 2.9886: one figure misread, or another service size, which `fitted:` does not state; as read, 2.9886 in, small by 8.9 thou (wear min 2.9975)',
    ],
    [
      'one journal of seven twenty thou off, which is a turn of nothing',
      block('main_journal_diameter', 'mic', with2(MAINS, 4, '2.9786')),
      'error reading/implausible: main journal diameter 4: 2.9986? written 2.9786: one figure misread, or another service size, which `fitted:` does not state; as read, 2.9786 in, small by 18.9 thou (wear min 2.9975)',
    ],
    [
      'the last two digits exchanged',
      block('main_journal_diameter', 'mic', with2(MAINS, 4, '2.9968')),
      'error reading/implausible: main journal diameter 4: 2.9986? written 2.9968: two digits swapped; as read, 2.9968 in, small by 7 tenths (wear min 2.9975)',
    ],
    [
      'a digit dropped',
      block('main_journal_diameter', 'mic', with2(MAINS, 4, '2.986')),
      'error reading/implausible: main journal diameter 4: 2.9986? written 2.986: a figure dropped; as read, 2.9860 in, small by 11.5 thou (wear min 2.9975)',
    ],
    [
      'the last figure not read',
      block('main_journal_diameter', 'mic', with2(MAINS, 4, '2.998')),
      'warning reading/implausible: main journal diameter 4: written 2.998: the last figure not read, or a nought left out; write what the instrument showed',
    ],
    [
      'an end play ten times too small',
      block('crankshaft_end_play', 'dial', '0.0007'),
      'error reading/implausible: crankshaft end play: 0.007? written 0.0007: the decimal point moved; as read, 0.0007 in, tight by 4.8 thou (new min 0.0055)',
    ],
    [
      'a side clearance ten times too small',
      block('rod_side_clearance', 'feeler', '0.010, 0.011, 0.0015, 0.010, 0.009, 0.011'),
      'error reading/implausible: rod side clearance 3: written 0.0015; possible: 0.015 (the decimal point moved), 0.0105 (two digits swapped); about 0.0100 in is expected here; as read, 0.0015 in, tight by 6 thou (new min 0.0075)',
    ],
    [
      'a radius for a diameter',
      block('main_journal_diameter', 'mic', with2(MAINS, 4, '1.4993')),
      'error reading/implausible: main journal diameter 4: 2.9986? written 1.4993: a radius for a diameter; as read, 1.4993 in, small by 1.4982 in (wear min 2.9975)',
    ],
    [
      'radii for diameters',
      block(
        'main_journal_diameter',
        'mic',
        plus('1.4993, 1.4994, 1.4993, 1.4992, 1.4993, 1.4993, 1.4993', 0),
      ),
      'error reading/implausible: main journal diameter: all 7 readings: a radius for a diameter? 2.9986 for 1.4993; as read, main journal diameter 1: 1.4993 in, small by 1.4982 in (wear min 2.9975), and 6 more',
    ],
    [
      'thousandths as a whole number',
      block('crankshaft_end_play', 'dial', '7'),
      'error reading/implausible: crankshaft end play: 0.007? written 7: thousandths written as a whole number; as read, 7 in, loose by 7 in (wear max 0.017)',
    ],
    [
      "a strip's millimetre scale",
      block('main_bearing_clearance', 'strip', '0.002, 0.002, 0.051, 0.002, 0.002, 0.003, 0.002'),
      "error reading/implausible: main bearing clearance 3: 0.051 mm? written 0.051: read on the strip's millimetre scale; as read, 0.051 in, loose by 45.5 thou (wear max 0.0055)",
    ],
    [
      "a strip's millimetre scale alone",
      block('main_bearing_clearance', 'strip', '0.051, 0.051, 0.051, 0.076, 0.051, 0.051, 0.051'),
      "error reading/implausible: main bearing clearance: all 7 readings: read on the strip's millimetre scale? 0.051 mm for 0.051; as read, main bearing clearance 1: 0.051 in, loose by 45.5 thou (wear max 0.0055), and 6 more",
    ],
    [
      'all bores 25 thou over',
      block('cylinder_bore', 'bore', plus(CYLINDERS, 0.025)),
      'error reading/implausible: cylinder bore: all 6 readings: 25 thousandths out, one turn of a micrometer, the same amount everywhere: was the gauge set wrongly? 3.6228 for 3.6478; as read, cylinder bore 1: 3.6478 in, large by 21.8 thou (wear max 3.6260), and 5 more',
    ],
    [
      'all bores 25 thou over beside their pistons',
      block('cylinder_bore', 'bore', plus(CYLINDERS, 0.025)) + block('piston_diameter', 'mic', PISTONS),
      'error reading/implausible: cylinder bore: all 6 readings: 25 thousandths out, one turn of a micrometer, the same amount everywhere: was the gauge set wrongly? 3.6228 for 3.6478; as read, cylinder bore 1: 3.6478 in, large by 21.8 thou (wear max 3.6260), and 11 more',
    ],
    [
      'used journals all a thou larger than new',
      block('main_journal_diameter', 'mic', plus(MAINS, 0.0019)),
      'error reading/implausible: main journal diameter: all 7 readings: larger than new, by 0.0009 in or more; used parts are not, unless they were plated, sprayed or renewed. The same amount everywhere: was the gauge set wrongly?; as read, main journal diameter 1: 3.0005 in, large by 1 thou (new max 2.9995), and 6 more',
    ],
  ])('%s', (_, readings, answer) => {
    expect(said(found(readings))).toEqual([answer]);
  });

  test('one bore 2 mm off among its like', () => {
    const limits =
      'kind: limits\nsource: invented\nunits: { length: mm }\nlimits:\n  cylinder_bore: { new: { min: 91.98, max: 92.01 }, wear: { max: 92.10 } }\n';
    const bores = block('cylinder_bore', 'bore', '91.985, 91.988, 93.985, 91.986, 91.985, 91.987');
    expect(said(found(bores, 'mm', { 'limits.yaml': limits }))).toEqual([
      'error reading/implausible: cylinder bore 3: 91.985? written 93.985: one figure misread; as read, 93.985 mm, large by 1.885 mm (wear max 92.100)',
    ]);
  });

  test.each([
    [
      '490',
      'hours 490 are fewer than 4850 of earlier; possible: the decimal point moved, a figure dropped, another hour meter; no trend by hours can continue from here',
    ],
    [
      '4805',
      'hours 4805 are fewer than 4850 of earlier; possible: two digits swapped, one figure misread, another hour meter; no trend by hours can continue from here',
    ],
  ])('hours that run backwards, %s after 4850', (hours, message) => {
    const earlier = {
      'earlier.yaml': `kind: session\nstage: service\ndate: 2025-02-03\nhours: 4850\nreadings:\n${block('crankshaft_end_play', 'dial', '0.0070')}`,
    };
    expect(
      said(found(block('crankshaft_end_play', 'dial', '0.0075'), 'in', earlier, `hours: ${hours}\n`)),
    ).toEqual([`warning reading/implausible: ${message}`]);
  });
});

describe('what is no slip', () => {
  test.each([
    ['a press fit, with limits below zero', 'piston_clearance: { new: { min: -0.0010, max: 0.0005 } }'],
  ])('%s', (_, limits) => {
    const all = found(
      block('cylinder_bore', 'bore', CYLINDERS) + block('piston_diameter', 'mic', plus(CYLINDERS, 0.0003)),
      'in',
      {
        'limits.yaml': `kind: limits\nsource: invented\nlimits:\n  ${limits}\n`,
      },
    );
    expect(said(all)).toEqual([]);
  });

  const pins = (limits: string): readonly string[] =>
    found(
      block('piston_pin_bore', 'bore', '1.0625, 1.0626') +
        block('piston_pin_diameter', 'mic', '1.0627, 1.0627'),
      'in',
      {
        'limits.yaml': `kind: limits\nsource: invented\nlimits:\n  ${limits}\n`,
      },
    ).flatMap(({ code, message }) => (code === 'reading/impossible' ? [message] : []));

  test('a pin that is pressed in, where no limit says that it turns', () => {
    expect(pins('crankshaft_runout: { wear: { max: 0.0025 } }')).toEqual([]);
    expect(pins('piston_pin_clearance: { new: { min: -0.0003, max: 0.0002 } }')).toEqual([]);
    expect(pins('piston_pin_clearance: { new: { min: 0.0001, max: 0.0004 } }')).toHaveLength(1);
  });

  test('journals that were sprayed and ground are larger than worn ones', () => {
    const journals = block('main_journal_diameter', 'mic', plus(MAINS, 0.0019));
    const work = '  - { work: sprayed and ground, on: main journals }\n';
    const codes = found(work + journals).map(({ code }) => code);
    expect(new Set(codes)).toEqual(new Set(['reading/out']));
  });

  test('a crankshaft ground to a service size that nobody states', () => {
    const all = found(
      block('main_journal_diameter', 'mic', plus(MAINS, -0.01)) +
        block('main_bearing_bore', 'bore', plus(BORES, -0.01)),
    );
    expect(all.filter(({ code }) => code === 'reading/implausible' || code === 'reading/impossible')).toEqual(
      [],
    );
  });

  test('a block whose every nought at the end was left out', () => {
    expect(
      said(
        found(block('main_journal_diameter', 'mic', '2.999, 2.9987, 2.998, 2.9986, 2.999, 2.9986, 2.999')),
      ),
    ).toEqual([]);
  });
});
