import { cpSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bundled } from './bundled.js';
import { added, medians } from './runs.js';
import { validate, validatorCalls } from './validator.js';

const here = (name) => fileURLToPath(new URL(name, import.meta.url));
export const NOTHING = here('nothing.js');
export const TENTHS = here('../tenths.cjs');
/** An engine with readings that are out makes the check end with 1. */
export const CHECKED = { exit: [0, 1] };
export const ENGINE = here('engine');

/** Starts of the program beside those of node alone, for one engine of six documents. */
export async function startUp({ scratch, rounds, timed }) {
  const floor = await bundled(scratch, 'floor', 'floorWork');
  const fresh = uncompiled(scratch);
  const measured = runsWarm(
    {
      node: () => timed([NOTHING]),
      version: () => timed([TENTHS, '--version']),
      check: () => timed([TENTHS, 'check', ENGINE, '--no-cache'], CHECKED),
      checkAgain: () => timed([TENTHS, 'check', ENGINE], CHECKED),
      checkFloor: () => timed([floor, ENGINE, '1']),
      checkFresh: () => timed([fresh, 'check', ENGINE, '--no-cache'], { ...CHECKED, env: nothingKept() }),
    },
    rounds,
  );
  return {
    node: { what: 'bare node', against: 'node', ...measured.node },
    version: { what: '--version', against: 'node', ...measured.version },
    check: { what: 'check of one engine, six documents', against: 'node', ...measured.check },
    checkAgain: { what: '  again, nothing changed', against: 'node', ...measured.checkAgain },
    checkFresh: { what: '  anew, nothing compiled before', against: 'node', ...measured.checkFresh },
    checkFloor: { what: '  floor: node, parsing alone', against: 'node', ...measured.checkFloor },
    ...validators(rounds, { timed }),
  };
}

function validators(rounds, runs) {
  const calls = validatorCalls(ENGINE);
  if (calls === undefined) return {};
  const measured = medians(
    {
      session: () => validate(calls.session, runs),
      all: () => added(Object.values(calls).map((words) => validate(words, runs))),
    },
    Math.ceil(rounds / 4),
  );
  return {
    validSession: { what: 'schema alone by ajv-cli, its session', against: 'node', ...measured.session },
    validAll: { what: 'schemas alone by ajv-cli, its six documents', against: 'node', ...measured.all },
  };
}

/** The first call of each fills what is kept for the next. */
export function runsWarm(runs, rounds) {
  for (const run of Object.values(runs)) run();
  return medians(runs, rounds);
}

/** A copy of the program with nothing that the build compiled. */
function uncompiled(scratch) {
  const folder = join(scratch, 'fresh');
  mkdirSync(join(folder, 'bin'), { recursive: true });
  cpSync(TENTHS, join(folder, 'bin/tenths.cjs'));
  const dist = here('../../dist');
  for (const name of readdirSync(dist).filter((each) => each.endsWith('.cjs'))) {
    cpSync(join(dist, name), join(folder, 'dist', name));
  }
  return join(folder, 'bin/tenths.cjs');
}

/** Without a home or a folder for what can be made anew, no node keeps what it compiled. */
const nothingKept = () => ({ PATH: process.env.PATH });
