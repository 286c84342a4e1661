import { join } from 'node:path';
import { appending, judgeAppend, makeFile } from './appender.js';
import { callsOn, faultsOf, traced, wasMet, whyNoTracing } from './failingCalls.js';
import { evenly } from './part.js';

/** Each system call of one append that touches the folder, failed in turn. */
export function appendCalls(part) {
  part.leftOut = whyNoTracing(part);
  if (part.leftOut !== '') return;
  const probe = makeFile(join(part.folder, 'probe'));
  traced(part, probe, appending(probe, 'x', 1));
  const faults = callsOn(part, probe).flatMap((each) => faultsOf(each).map((fault) => ({ ...each, fault })));
  for (const [at, fault] of evenly(faults, part.times(faults.length)).entries()) {
    const folder = makeFile(join(part.folder, `${at}`));
    const ended = traced(part, folder, appending(folder, 'x', 1), fault);
    part.tried++;
    part.met += wasMet(part, folder) ? 1 : 0;
    judgeAppend(part, folder, ended);
  }
}
