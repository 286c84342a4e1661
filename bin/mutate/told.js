import { table } from '../table.js';
import { AREAS } from './areas.js';

/** By area, and whether each has enough of its mutants killed: a timeout is shown apart, and counts as noticed. */
export function tableOf(mutants, least) {
  const rows = Object.keys(AREAS).flatMap((area) => {
    const own = mutants.filter((each) => each.area === area);
    const count = (fate) => own.filter((each) => each.fate === fate).length;
    return own.length === 0 ? [] : [[area, own.length, count('killed'), count('timeout'), count('survived')]];
  });
  const share = ([, all, killed, timeout]) => (100 * (killed + timeout)) / all;
  const [head, ...lines] = table(['area', 'mutants', 'killed', 'timeout', 'survived'], rows);
  const shares = rows.map(
    (row) => `  ${share(row).toFixed(1).padStart(5)} %${share(row) < least ? '  TOO FEW' : ''}`,
  );
  return {
    lines: [head, ...lines.map((line, at) => line + (shares[at] ?? ''))],
    isEnough: rows.every((row) => share(row) >= least),
  };
}

export const survivorLines = (mutants, sourceOf) =>
  mutants
    .filter(({ fate }) => fate === 'survived')
    .map((mutant) => ({ ...mutant, line: lineOf(sourceOf(mutant.file), mutant.start) }))
    .sort((a, b) => (a.file + String(a.line).padStart(5) < b.file + String(b.line).padStart(5) ? -1 : 1))
    .map(
      (mutant) => `survived ${codeOf(mutant, sourceOf)}${mutant.asked === 0 ? '  (no test reaches it)' : ''}`,
    );

/** `src/a.ts:3  < becomes <=: the code`. */
export function codeOf({ file, what, start, end }, sourceOf) {
  const text = sourceOf(file);
  return `${file}:${lineOf(text, start)}  ${what}: ${text.slice(start, end).replaceAll(/\s+/g, ' ').slice(0, 90)}`;
}

const lineOf = (text, offset) => text.slice(0, offset).split('\n').length;
