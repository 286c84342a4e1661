import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { grouped } from './grouped.js';
import { switched } from './switched.js';

/** The plan of a run: every mutant, in a file of the folder in which the run keeps all that is its own. */
export const planOf = () => JSON.parse(readFileSync(process.env.MUTATE_PLAN, 'utf8'));

/** How the sources are compiled for a run: with all its mutants in them, each behind its switch. */
export function mutantSources() {
  const byFile = mutantsByFile(planOf());
  return {
    into: join(dirname(process.env.MUTATE_PLAN), 'sources'),
    change: (text, path) => counted(switched(text, byFile.get(path) ?? [])),
  };
}

export const mutantsByFile = (mutants) => grouped(mutants, ({ file }) => file);

/** Says while it is loaded, once what it imports is there: whenever that is, since some sources are loaded in a test. */
const counted = (code) => `globalThis.moduleLoads?.(1);${code}\n;globalThis.moduleLoads?.(-1);`;
