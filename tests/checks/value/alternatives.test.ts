import { describe, expect, it } from 'vitest';
import { alternatives } from '../../../src/checks/value/alternatives.ts';
import { engineIn, type Files, shopFiles } from '../../shopOf.ts';
import { characteristicIn, positionIn, viewIn } from '../viewIn.ts';

const REGISTER = `kind: instruments
units: { length: in }
instruments:
  low: { type: micrometer, range: { from: 2, to: 3 }, resolution: 0.0001, max_error: 0.0002 }
  high: { type: micrometer, range: { from: 3, to: 4 }, resolution: 0.0001, max_error: 0.0001 }
  any: { type: micrometer, resolution: 0.0001, max_error: 0.0003 }
  bore: { type: bore gauge, resolution: 0.0001, max_error: 0.0001 }
  strip: { type: gauging strip, marks: [0.001, 0.002, 0.003] }
  caliper: { type: caliper, resolution: 0.001, max_error: 0.001 }
  height: { type: height gauge, resolution: 0.0001, max_error: 0.0001 }
`;

/** Ways to measure what was read at position 1, each with its uncertainty in tenths of a thousandth of an inch. */
function waysTo(
  id: string,
  block: string,
  sizes = '',
  more: Files = {},
): readonly (readonly [string, number])[] {
  const view = viewIn(
    shopFiles('piston_clearance: { new: { max: 1 } }', block, 'rebuild', {
      'e/engine.yaml': engineIn('in', sizes === '' ? '' : `sizes: { ${sizes} }\n`),
      'instruments.yaml': REGISTER,
      ...more,
    }),
  );
  const characteristic = characteristicIn(view, id);
  const position = positionIn(view, characteristic, '1');
  const [judged] = view.routes.at(characteristic, position, {});
  if (judged === undefined) throw new Error('not measured');
  return alternatives(characteristic, position, judged, view).map(({ instruments, u }) => [
    instruments,
    u / 25_400,
  ]);
}

const names = (ways: readonly (readonly [string, number])[]): readonly string[] => ways.map(([each]) => each);
const journal = (text: string): string =>
  `- { measure: main_journal_diameter, with: any, at: { 1: ${text} } }`;
const STRIP = '- { measure: main_bearing_clearance, with: strip, at: { 1: 0.0020 } }';
const STEP = 1 / Math.sqrt(12);

describe('the instruments that could read a size directly', () => {
  it.each([
    ['2.0000', ['low', 'any']],
    ['1.9999', ['any']],
    ['2.9999', ['low', 'any']],
    ['3.0000', ['high', 'low', 'any']],
    ['3.0001', ['high', 'any']],
    ['4.0000', ['high', 'any']],
    ['4.0001', ['any']],
  ])('of %s in are those of its type whose range holds it, the finest first: %o', (text, expected) => {
    expect(names(waysTo('main_journal_diameter', journal(text)))).toEqual(expected);
  });

  it('have their own errors and steps', () => {
    expect(waysTo('main_journal_diameter', journal('3.5000'))).toEqual([
      ['high', expect.closeTo(Math.hypot(1 / Math.sqrt(3), STEP), 9)],
      ['any', expect.closeTo(Math.hypot(3 / Math.sqrt(3), STEP), 9)],
    ]);
  });

  it('count as they are certified on the day of the session', () => {
    const later = REGISTER.replace(
      'high: { type: micrometer,',
      'high: { type: micrometer, certificates: [{ date: 2026-01-10, errors: [{ at: 3, as_found: 0 }, { at: 4, as_found: 0 }], uncertainty: 0.0004, k: 2 }],',
    );
    const ways = waysTo('main_journal_diameter', journal('3.5000'), '', { 'instruments.yaml': later });
    expect(ways[0]?.[0]).toBe('any');
    expect(ways[1]?.[1]).toBeCloseTo(Math.hypot(1 / Math.sqrt(3), STEP, 2), 9);
  });
});

describe('a clearance of a bearing', () => {
  const mic = 'bore set with high and high';

  it('that was read with a strip could be read at one of its marks, and with nothing else known no other way', () => {
    expect(waysTo('main_bearing_clearance', STRIP)).toEqual([
      ['strip read at one of its marks', expect.closeTo(5 / Math.sqrt(3), 9)],
    ]);
  });

  it('that was worked out could be read with the strip as it is', () => {
    const parts = `${journal('3.2480')}\n- { measure: main_bearing_bore, with: bore, at: { 1: 3.2500 } }`;
    expect(names(waysTo('main_bearing_clearance', parts))).toContain('strip');
  });

  // The micrometer's error is in bore and journal alike: its steps alone are left, once read and once set to.
  it('could be worked out by the size of its journal, the bore gauge set with the micrometer that measures it', () => {
    expect(waysTo('main_bearing_clearance', STRIP, 'main_journal_diameter: 3.2480')[0]).toEqual([
      mic,
      expect.closeTo(Math.hypot(1 / Math.sqrt(3), STEP, STEP, STEP), 9),
    ]);
  });

  it('with the instruments that reach what was read of its parts', () => {
    const read = `${STRIP}\n${journal('2.5000')}`;
    expect(names(waysTo('main_bearing_clearance', read, 'main_bearing_bore: 2.5020'))).toEqual([
      'bore set with low and low',
      'strip read at one of its marks',
    ]);
  });

  it('each with its finest instrument, whichever the register has first', () => {
    const any = '  any: { type: micrometer, resolution: 0.0001, max_error: 0.0003 }\n';
    const anyFirst = REGISTER.replace(any, '').replace('instruments:\n', `instruments:\n${any}`);
    const sizes = 'main_journal_diameter: 3.2480';
    const [way] = waysTo('main_bearing_clearance', STRIP, sizes, { 'instruments.yaml': anyFirst });
    expect(way?.[0]).toBe(mic);
  });

  it('of whose shells no size is known is not worked out through them', () => {
    const withBall = `${REGISTER}  ball: { type: ball micrometer, resolution: 0.0001, max_error: 0.0001 }\n`;
    const more = { 'instruments.yaml': withBall };
    const all = names(waysTo('main_bearing_clearance', STRIP, 'main_journal_diameter: 3.2480', more));
    expect(all).toEqual([mic, 'strip read at one of its marks']);
  });
});

it('two readings of one micrometer share its error and not its steps', () => {
  const lift = `- { measure: lobe_height, with: any, at: { 1I: 1.5000 } }
- { measure: lobe_base_circle, with: any, at: { 1I: 1.2000 } }`;
  const view = viewIn(
    shopFiles('piston_clearance: { new: { max: 1 } }', lift, 'rebuild', {
      'e/engine.yaml': engineIn('in', '').replace('crankpins: 4', 'crankpins: 4, lobes: [1I]'),
      'instruments.yaml': REGISTER,
    }),
  );
  const characteristic = characteristicIn(view, 'lobe_lift');
  const [row] = view.engine.document.layout
    .positionsOf(characteristic.family)
    .flatMap((position) =>
      view.routes.at(characteristic, position, {}).map((route) => ({ position, route })),
    );
  if (row === undefined) throw new Error('not measured');
  expect(alternatives(characteristic, row.position, row.route, view)).toEqual([
    { instruments: 'any', u: expect.closeTo(25_400 * STEP * Math.SQRT2, 6) },
  ]);
});

it('what comes of one reading alone is as uncertain as that, as often as it counts', () => {
  const u = Math.hypot(1 / Math.sqrt(3), STEP);
  expect(waysTo('crank_stroke', '- { measure: crank_throw, with: height, at: { 1: 1.7500 } }')).toEqual([
    ['height', expect.closeTo(u, 9)],
    ['height', expect.closeTo(2 * u, 9)],
  ]);
});
