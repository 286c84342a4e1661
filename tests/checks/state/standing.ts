import { ENGINE, type Files, limitsOf, reportOf } from '../../shopOf.ts';

const LIMITS = limitsOf(`main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9960 } }
main_bearing_clearance: { new: 0.0020 to 0.0038, wear: { max: 0.0050 } }
crankshaft_end_play: { new: 0.006 to 0.013 }
cylinder_taper: { wear: { max: 0.0020 } }`);

const REGISTER = `kind: instruments
instruments:
  mic: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in }
  bore: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in }
  strip: { type: gauging strip, marks: [0.002 in, 0.003 in, 0.004 in] }
  dial: { type: dial indicator, resolution: 0.0005 in, max_error: 0.0005 in }
`;

export type Told = readonly [stage: string, blocks: string, more?: string];

/** Sessions in the order of their days: the stage, the blocks, and what else they say. */
export const engine = (...sessions: readonly Told[]): Files =>
  Object.fromEntries([
    ['e/engine.yaml', ENGINE],
    ['e/limits.yaml', LIMITS],
    ['e/instruments.yaml', REGISTER],
    ...sessions.map(([stage, blocks, more = ''], index) => [
      `e/${index + 1}.yaml`,
      `kind: session\nstage: ${stage}\ndate: 2026-03-0${index + 1}\n${more}\nreadings:${blocks === '' ? ' []' : `\n${blocks}`}\n`,
    ]),
  ]);

export const journals = (figures: string): string =>
  `  - { measure: main_journal_diameter, with: mic, at: { ${figures} } }`;
export const bores = (figures: string): string =>
  `  - { measure: main_bearing_bore, with: bore, at: { ${figures} } }`;
export const endPlay = (figure: string): string =>
  `  - { measure: crankshaft_end_play, with: dial, value: ${figure} }`;
export const ALL = '1: 2.9985, 2: 2.9984, 3: 2.9986';
export const WORN = '1: 2.9985, 2: 2.9970, 3: 2.9986';

/** What stands: the first figure as typed, or the mean in inches, and the verdict. */
export const standing = (files: Files, measure: string, position: string): string => {
  const row = reportOf(files).state?.rows.find(
    (each) => each.characteristic.id === measure && each.position.name === position,
  );
  const [judged] = row?.routes ?? [];
  if (row === undefined || judged === undefined) return row?.judgement.verdict ?? 'nothing';
  const mean = Number(judged.mean.n) / Number(judged.mean.d) / 254_000_000;
  return `${judged.route.written[0] ?? mean.toFixed(4)} ${row.judgement.verdict}`;
};

export const codes = (files: Files): readonly string[] =>
  reportOf(files).state?.findings.map(({ code }) => code) ?? [];

export const unmeasured = (files: Files): readonly (string | undefined)[] =>
  (reportOf(files).state?.findings ?? [])
    .filter(({ code }) => code === 'session/unmeasured')
    .map(({ measure }) => measure);
