import { describe, expect, it } from 'vitest';
import { usualInstrument } from '../../src/bench/instruments.ts';
import { engineIn, limitsOf, sessionOf, shopOf } from '../shopOf.ts';

const mic = (id: string, from: string, to: string): string =>
  `  ${id}: { type: micrometer, range: { from: ${from} in, to: ${to} in }, resolution: 0.0001 in }`;
const REGISTER = `kind: instruments
instruments:
${mic('mic-1-2', '1', '2')}
${mic('mic-2-3', '2', '3')}
${mic('mic-3-4', '3', '4')}
${mic('mic-2-6', '2', '6')}
  bore-gauge: { type: bore gauge, range: { from: 0 in, to: 0.05 in }, resolution: 0.0001 in }
  strip-fine: { type: gauging strip, marks: [0.001 in, 0.002 in, 0.003 in] }
  strip-wide: { type: gauging strip, marks: [0.002 in, 0.004 in, 0.006 in] }
`;

/** What is named for a characteristic by its limits, in an engine that may have been measured before. */
function named(measure: string, limits: string, before = '', more = ''): string | undefined {
  const { engine, registry } = shopOf({
    'shop.yaml': 'kind: shop\nunits: { length: in }\n',
    'register.yaml': REGISTER,
    'e/engine.yaml': engineIn('in', more),
    'e/limits.yaml': limitsOf(limits === '' ? 'crankshaft_end_play: { new: 0.005 to 0.010 }' : limits),
    ...(before === '' ? {} : { 'e/session.yaml': sessionOf('trial', before) }),
  });
  const of = registry.find(measure);
  if (engine === undefined || of === undefined) throw new Error('not sound');
  return usualInstrument(of, engine);
}

const MAIN = 'main_journal_diameter';
const read = (with_: string, more = ''): string =>
  `- { measure: ${MAIN}, with: ${with_},${more} at: { 1: 2.4980, 2: 2.4980 } }`;

describe('the instrument that a new session names', () => {
  it.each([
    ['holds all that is allowed', `${MAIN}: { new: 2.4980 to 2.4990, wear: { min: 2.4960 } }`, 'mic-2-3'],
    ['holds both limits of new parts', `${MAIN}: { new: 2.9990 to 3.0010 }`, 'mic-2-6'],
    ['holds the wear limit too', `${MAIN}: { new: 3.0000 to 3.0010, wear: { min: 2.9960 } }`, 'mic-2-6'],
    ['is not asked for a last size', `${MAIN}: { new: 3.0100 to 3.0110, last_size: 2.9500 }`, 'mic-3-4'],
    [
      'holds every position',
      `${MAIN}: { new: 2.4980 to 2.4990, at: { 3: { new: 3.4980 to 3.4990 } } }`,
      'mic-2-6',
    ],
    [
      'holds the first position where none holds all',
      `${MAIN}: { new: 1.4980 to 1.4990, at: { 3: { new: 3.4980 to 3.4990 } } }`,
      'mic-1-2',
    ],
    ['is none where no range does', `${MAIN}: { new: 7.4980 to 7.4990 }`, undefined],
    ['is the first of its kind where nothing is known', '', 'mic-1-2'],
  ])('%s', (_, limits, id) => expect(named(MAIN, limits)).toBe(id));

  it('has the marks for it', () => {
    const clearance = 'main_bearing_clearance: { new: 0.0020 to 0.0038, wear: { max: 0.0050 } }';
    expect(named('main_bearing_clearance', clearance)).toBe('strip-wide');
  });

  it.each([
    ['which was used last time and holds it', 'mic-2-6', 'mic-2-6'],
    ['and not what was used last time, where its range is another', 'mic-3-4', 'mic-2-3'],
  ])('%s', (_, last, id) => {
    expect(named(MAIN, `${MAIN}: { new: 2.4980 to 2.4990 }`, read(last))).toBe(id);
  });

  it('stays a gauge that was set to a size: its range is that of its dial', () => {
    const bore = '- { measure: cylinder_bore, with: bore-gauge, set_to: 4.0000, in: tenths, at: { 1: 5 } }';
    expect(named('cylinder_bore', 'cylinder_bore: { new: 4.0000 to 4.0010 }', bore)).toBe('bore-gauge');
  });

  it('holds the size that the part was made to', () => {
    const limits = `${MAIN}: { new: 3.0040 to 3.0050 }`;
    expect(named(MAIN, limits)).toBe('mic-3-4');
    const ground = 'fitted: { crankshaft: { main: 0.010 under } }\n';
    expect(named(MAIN, limits, '', ground)).toBe('mic-2-3');
  });
});
