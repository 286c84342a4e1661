import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { filmSchema } from '../../../src/output/schema/filmSchema.ts';
import { callHere } from '../../inProcess.ts';

const cwd = fileURLToPath(new URL('../../../examples', import.meta.url));
const validate = new Ajv({ strict: true }).compile(filmSchema());

async function filmOf(...words: readonly string[]) {
  const { stdout, exitCode } = await callHere(['film', 'reservoir-pump-2', ...words, '--format', 'json'], {
    cwd,
  });
  expect(exitCode).toBe(0);
  const told = JSON.parse(stdout);
  expect(validate(told), JSON.stringify(validate.errors)).toBe(true);
  return told;
}

describe('the films of the example engine', () => {
  it('carry the uncertainty of the measured clearance, and stand beside those of the teardown', async () => {
    const { bearings, demand } = await filmOf();
    const films = bearings.flatMap((each: { films: unknown[] }) => each.films);
    expect(films).toHaveLength(9);
    for (const { spread, oil_L_min, rise_degC, clearance_U_mm } of films) {
      expect(clearance_U_mm).toBeGreaterThan(0);
      expect(spread.oil_L_min.least).toBeLessThan(oil_L_min);
      expect(spread.oil_L_min.greatest).toBeGreaterThan(oil_L_min);
      expect(spread.rise_degC.greatest).toBeGreaterThan(rise_degC);
    }
    expect(films[0].before.date).toBe('2026-02-03');
    expect(films[0].before.oil_L_min).toBeGreaterThan(films[0].oil_L_min);
    const sum = films.reduce((total: number, film: { oil_L_min: number }) => total + film.oil_L_min, 0);
    expect(demand.oil_L_min.value).toBeCloseTo(sum, 6);
  });

  it.each([80, 100, 120])('have a line each in a window of %i columns', async (columns) => {
    const { stdout } = await callHere(['film', 'reservoir-pump-2'], { cwd, columns, env: { NO_COLOR: '1' } });
    const rows = stdout.split('\n').filter((row) => /^ {2}\d.*±/.test(row));
    expect(rows).toHaveLength(9);
    for (const row of rows) expect(row).toMatch(/0\.1\d\d +\d\.\d\d/);
    expect(Math.max(...stdout.split('\n').map((each) => each.length))).toBeLessThanOrEqual(columns);
  });

  it('are of the pressure on the bore', async () => {
    const { bearings } = await filmOf();
    // 400 psi on π/4 × 4.125² in², worked out by hand: 5345.6 lbf.
    expect(bearings[1].load_N / 4.4482216152605).toBeCloseTo(5345.6, 1);
  });

  it('of one kind over a range, with the limits that lie in it', async () => {
    const { what_if: range } = await filmOf('main_bearing_clearance', '--clearance', '0.0019..0.0040');
    expect(range.films[0].clearance_mm).toBeCloseTo(0.04826, 9);
    expect(range.films.at(-1).clearance_mm).toBeCloseTo(0.1016, 9);
    const flows = range.films.map(({ oil_L_min }: { oil_L_min: number }) => oil_L_min);
    expect(flows).toEqual(flows.toSorted((a: number, b: number) => a - b));
    const limits = range.limits.map(
      ({ band, side, clearance_mm }: { band: string; side: string; clearance_mm: number }) =>
        `${band} ${side} ${(clearance_mm / 25.4).toFixed(4)}`,
    );
    expect(limits).toEqual([
      'new min 0.0020',
      'target min 0.0024',
      'target min 0.0026',
      'target max 0.0032',
      'target max 0.0033',
      'new max 0.0038',
    ]);
  });
});
