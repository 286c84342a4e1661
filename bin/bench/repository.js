import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { commitAll } from '../commitAll.js';
import { bundled } from './bundled.js';
import { writeShop } from './shop.js';
import { CHECKED, NOTHING, runsWarm, TENTHS } from './startUp.js';

/** A repository of 400 sessions, three an engine, in which the last commit changed one reading of one session. */
export async function repository({ scratch, rounds, timed }) {
  const folder = join(scratch, 'repository');
  writeShop(folder, 134);
  commitAll(folder);
  changeReading(join(folder, 'engines/pump-0100/sessions/2-trial.yaml'));
  commitAll(folder);
  const floor = await bundled(scratch, 'floor', 'floorWork');
  const tenths = (...words) => timed([TENTHS, ...words], { ...CHECKED, cwd: folder });
  const least = (states, ...calls) => timed([floor, 'engines/pump-0100', states, ...calls], { cwd: folder });
  const measured = runsWarm(
    {
      node: () => timed([NOTHING]),
      engine: () => tenths('check', 'engines/pump-0100', '--no-cache'),
      since: () => tenths('check', '--since', 'HEAD~1', '--no-cache'),
      sinceFloor: () => least('1', 'rev-parse HEAD~1', 'ls-tree -r HEAD~1'),
      diff: () => tenths('diff', 'HEAD~1', 'HEAD'),
      diffFloor: () => least('2', 'ls-tree -r HEAD~1', 'ls-tree -r HEAD'),
    },
    rounds,
  );
  const row = (name, what) => ({ [name]: { what, against: 'bare', ...measured[name] } });
  return {
    bare: { what: 'bare node, in the same rounds', ...measured.node },
    ...row('engine', 'check of one engine with three sessions'),
    ...row('since', 'check --since HEAD~1 of 400 sessions'),
    ...row('sinceFloor', '  floor: node, git twice, parsing one engine'),
    ...row('diff', 'diff HEAD~1 HEAD of 400 sessions'),
    ...row('diffFloor', '  floor: node, git twice, parsing one engine twice'),
  };
}

const changeReading = (session) =>
  writeFileSync(session, readFileSync(session, 'utf8').replace(/value: 0\.\d+/, 'value: 0.0088'));
