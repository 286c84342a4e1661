import { describe, expect, it } from 'vitest';
import { type Files, refusalsOf, sessionOf, shopOf, verdictsOf } from '../shopOf.ts';

const engine = (units: string) => `kind: engine\nname: A\n${units}layout: { mains: 3 }\n`;
const READINGS = '- { measure: main_bearing_clearance, at: { 1: 0.1 } }';

/** The first reading in thousandths of a millimetre. */
function microns(files: Files): number | undefined {
  const point = shopOf(files).engine?.sessions[0]?.blocks[0]?.positions[0]?.rows[0]?.[0];
  return point === undefined ? undefined : Number(point.amount.n) / Number(point.amount.d) / 10_000;
}

describe('a plain number is in the unit of', () => {
  const shop = { 'shop.yaml': 'kind: shop\nunits: { length: thou }\n' };

  it.each<[string, Files, number]>([
    [
      'its own document before all others',
      {
        ...shop,
        'e/engine.yaml': engine('units: { length: in }\n'),
        'e/s.yaml': sessionOf('teardown', READINGS, 'units: { length: mm }\n'),
      },
      100,
    ],
    [
      'else its engine',
      {
        ...shop,
        'e/engine.yaml': engine('units: { length: in }\n'),
        'e/s.yaml': sessionOf('teardown', READINGS),
      },
      2540,
    ],
    [
      'else the shop',
      { ...shop, 'e/engine.yaml': engine(''), 'e/s.yaml': sessionOf('teardown', READINGS) },
      2.54,
    ],
    [
      'the nearest shop above it',
      {
        ...shop,
        'row/shop.yaml': 'kind: shop\nunits: { length: um }\n',
        'row/e/engine.yaml': engine(''),
        'row/e/s.yaml': sessionOf('teardown', READINGS),
      },
      0.1,
    ],
  ])('%s', (_, files, expected) => expect(microns(files)).toBe(expected));

  it('is chosen for each quantity by itself', () => {
    const files = {
      'shop.yaml': 'kind: shop\nunits: { length: mm, torque: N m }\n',
      'e/engine.yaml': engine('units: { length: in }\n'),
      'e/l.yaml': 'kind: limits\nsource: Invented.\nlimits: { turning_torque: { new: { max: 2 } } }\n',
      'e/s.yaml': sessionOf(
        'rebuild',
        '- { measure: turning_torque, after: [{ step: a, value: 2 N m }, { step: b, value: 2 lbf ft }] }',
      ),
    };
    expect(Object.values(verdictsOf(files))).toEqual(['ok', 'out']);
  });

  it('with none of them it is an error at the number', () => {
    expect(refusalsOf({ 'e/engine.yaml': engine(''), 'e/s.yaml': sessionOf('teardown', READINGS) })).toEqual([
      'e/s.yaml:5:49 no-unit',
    ]);
  });

  it('is asked for once in a file, and once for each quantity', () => {
    const files = {
      'e/engine.yaml': engine(''),
      'e/l.yaml': `kind: limits
source: Invented.
limits:
  turning_torque: { new: { max: 2 } }
  main_bearing_clearance: { new: 0.002 to 0.003 }
  crankshaft_end_play: { new: 0.006 to 0.012 }
`,
      'e/s.yaml': sessionOf('teardown', '- { measure: main_journal_diameter, at: { 1: 2.1, 2: 2.2 } }'),
    };
    expect(refusalsOf(files).toSorted()).toEqual([
      'e/l.yaml:4:33 no-unit',
      'e/l.yaml:5:34 no-unit',
      'e/s.yaml:5:48 no-unit',
    ]);
  });

  it('shared limits are never in the units of an engine that merely uses them', () => {
    const shared = (units: string) => ({
      'limits.yaml': `kind: limits\nsource: Invented.\n${units}limits: { main_bearing_clearance: { new: { max: 0.1 } } }\n`,
      'e/engine.yaml': engine('units: { length: mm }\n'),
      'e/s.yaml': sessionOf('rebuild', READINGS),
    });
    expect(refusalsOf(shared(''))).toEqual(['limits.yaml:3:49 no-unit']);
    expect(verdictsOf({ ...shared(''), ...shop })['main_bearing_clearance 1']).toBe('out');
    expect(verdictsOf(shared('units: { length: in }\n'))['main_bearing_clearance 1']).toBe('ok');
  });

  it('limits that are extended keep their own', () => {
    const files = {
      'family.yaml':
        'kind: limits\nsource: Invented.\nunits: { length: mm }\nlimits: { main_bearing_clearance: { new: { max: 0.1 } } }\n',
      'e/engine.yaml': engine('units: { length: in }\n'),
      'e/l.yaml':
        'kind: limits\nsource: Invented.\nextends: ../family.yaml\nlimits: { main_bearing_clearance: { new: { min: 0.0001 } } }\n',
      'e/s.yaml': sessionOf('rebuild', '- { measure: main_bearing_clearance, at: { 1: 0.1 mm } }'),
    };
    expect(verdictsOf(files)['main_bearing_clearance 1']).toBe('ok');
    const wear = { ...files, 'family.yaml': files['family.yaml'].replace('new:', 'wear:') };
    expect(verdictsOf(wear)['main_bearing_clearance 1']).toBe('ok');
    const tight = { ...wear, 'family.yaml': wear['family.yaml'].replace('max: 0.1', 'max: 0.0999') };
    expect(verdictsOf(tight)['main_bearing_clearance 1']).toBe('out');
  });
});

describe('units that are none, or of another quantity, are refused once', () => {
  const refused = (units: string) => refusalsOf({ 'e/engine.yaml': engine(`units: ${units}\n`) });
  it.each([
    ['{ length: lbf ft }', 'value'],
    ['{ length: furlong }', 'value'],
    ['{ lenght: in }', 'unknown-key'],
  ])('%s', (units, code) => expect(refused(units).map((each) => each.replace(/.* /, ''))).toEqual([code]));
});
