import { describe, expect, it } from 'vitest';
import { atTheBench } from '../../cli/bench.ts';
import { callHere } from '../../inProcess.ts';

const printed = (measure: string, limits: string, readings: string, words: readonly string[]) =>
  atTheBench(
    {
      'saw/engine.yaml':
        'kind: engine\nname: Saw\nunits: { length: in }\nlayout: { cylinders: 2, mains: 3, crankpins: 2 }\n',
      'saw/limits.yaml': `kind: limits\nsource: Invented.\nlimits: { ${measure}: { ${limits} } }\n`,
      'saw/s.yaml': `kind: session\nstage: teardown\ndate: 2026-02-03\nreadings: [{ measure: ${measure}, stations: [front, rear], at: { all: ${readings} } }]\n`,
    },
    async (cwd) => (await callHere(words, { cwd })).stdout,
  );

async function inJson(measure: string, limits: string, readings: string): Promise<unknown> {
  const out = await printed(measure, limits, readings, ['check', 'saw', '--format', 'json']);
  const { engines }: { engines: { state: { rows: { measure: string; may_still_be_cut: unknown }[] } }[] } =
    JSON.parse(out);
  return engines[0]?.state.rows.find((row) => row.measure === measure)?.may_still_be_cut;
}

describe('what may still be cut from a head or a block', () => {
  it.each([
    [
      'head_thickness',
      'new: 4.745 to 4.755, least_thickness: 4.715',
      '[4.7500, 4.7390]',
      '0.0240 in may still be cut',
      0.024,
    ],
    [
      'head_thickness',
      'new: 4.745 to 4.755, wear: { min: 4.715 }',
      '[4.7500, 4.7390]',
      '0.0240 in may still be cut',
      0.024,
    ],
    [
      'head_thickness',
      'wear: { min: 4.720 }, least_thickness: 4.715',
      '[4.7500, 4.7390]',
      '0.0190 in may still be cut',
      0.019,
    ],
    ['head_thickness', 'least_thickness: 4.715', '[4.7150, 4.7160]', 'nothing may be cut any more', 0],
    ['head_thickness', 'least_thickness: 4.715', '[4.7140, 4.7160]', 'nothing may be cut any more', 0],
    ['deck_height', 'least_thickness: 11.880', '[11.8910, 11.8925]', '0.0110 in may still be cut', 0.011],
  ])('%s with %s, read %s: %s', async (measure, limits, readings, said, amount) => {
    expect(await inJson(measure, limits, readings)).toBe(amount);
    expect(await printed(measure, limits, readings, ['check', 'saw', '--detail'])).toContain(said);
    expect(await printed(measure, limits, readings, ['explain', measure, 'all', 'saw'])).toContain(said);
  });

  it.each([
    ['head_thickness', 'new: 4.745 to 4.755'],
    ['head_gasket_thickness', 'least_thickness: 0.045'],
  ])('is not said of %s with %s', async (measure, limits) => {
    expect(await inJson(measure, limits, '[4.7500, 4.7390]')).toBeNull();
    expect(await printed(measure, limits, '[4.7500, 4.7390]', ['check', 'saw', '--detail'])).not.toMatch(
      /cut/,
    );
  });
});
