import { describe, expect, it } from 'vitest';
import { ENGINE, type Files, reportOf } from '../../shopOf.ts';
import { bores, endPlay, engine, journals, standing } from './standing.ts';

const clearanceRow = (files: Files) =>
  reportOf(files).state?.rows.find(
    ({ characteristic, position }) => characteristic.id === 'main_bearing_clearance' && position.name === '1',
  );

describe('a bore with its cap on, read in an earlier session, ends', () => {
  const BORES = bores('1: 3.0013, 2: 3.0013');
  const after = (says: string): readonly string[] => {
    const files = engine(['trial', BORES], ['rebuild', endPlay('0.009'), says]);
    return ['1', '2'].map((position) => standing(files, 'main_bearing_bore', position));
  };

  it.each([
    ['where the caps are replaced', 'replaced: [{ part: main caps }]', ['nothing', 'nothing']],
    ['at the one whose cap is replaced', 'replaced: [{ part: main cap 2 }]', ['3.0013 null', 'nothing']],
    ['where the caps are machined', 'machined: [{ part: main caps }]', ['nothing', 'nothing']],
    ['and not where those of the rods are', 'replaced: [{ part: rod caps }]', ['3.0013 null', '3.0013 null']],
  ])('%s', (_, says, stands) => expect(after(says)).toEqual(stands));
});

describe('a clearance of a bore and a journal of two sessions', () => {
  const register = (calibrated: string): Files => ({
    'e/instruments.yaml': `kind: instruments
instruments:
  mic: { type: micrometer, resolution: 0.00001 in, max_error: 0.0005 in, calibrated: ${calibrated} }
  bore: { type: bore gauge, resolution: 0.00001 in }
`,
  });
  const read = (calibrated: string): number | undefined =>
    clearanceRow({
      ...engine(
        ['trial', bores('1: 3.0013').replace('with: bore', 'with: bore, set_with: mic')],
        ['rebuild', journals('1: 2.9985')],
      ),
      ...register(calibrated),
    })?.routes[0]?.route.expanded;

  it('is freed of the error of the micrometer that served both, within one calibration alone', () => {
    const [before, between] = [read('2026-01-10') ?? 0, read('2026-03-02') ?? 0];
    expect(before).toBeGreaterThan(0);
    // 0.0005 in / √3 in both, and in neither.
    expect(between).toBeGreaterThan(3 * before);
  });

  it('takes each to 20 °C by the temperature of its own session', () => {
    const files = (first: string, second: string): Files => ({
      ...engine(['trial', bores('1: 3.0013'), first], ['rebuild', journals('1: 2.9985'), second]),
      'e/engine.yaml': `${ENGINE}materials: { crankshaft: aluminium, block: aluminium }\n`,
    });
    const clearance = (first: string, second: string): number => {
      const mean = clearanceRow(files(first, second))?.routes[0]?.mean ?? { n: 0n, d: 1n };
      return Number(mean.n) / Number(mean.d) / 254e6;
    };
    const warm = 'temperature: 40 degC';
    expect(clearance('', '')).toBeCloseTo(0.0028, 6);
    // 20 °C of (20.75 − 11.5) millionths on three inches: half a thou and more, of the bore or of the journal.
    expect(clearance(warm, 'temperature: 20 degC')).toBeCloseTo(0.0028 - 3.0013 * 9.25e-6 * 20, 6);
    expect(clearance('temperature: 20 degC', warm)).toBeCloseTo(0.0028 + 2.9985 * 9.25e-6 * 20, 6);
  });
});
