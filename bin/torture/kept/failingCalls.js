import { callsOn, faultsOf, traced, wasMet, whyNoTracing } from '../failingCalls.js';
import { evenly } from '../part.js';
import { PROGRAM } from '../shop.js';
import { KeptShop } from './shop.js';

/** Of each state of the cache. */
const FAULTS = 40;

/** Each call on the cache fails, while results are kept there and while they are taken from it. */
export function keptCalls(part) {
  part.leftOut = whyNoTracing(part);
  if (part.leftOut !== '') return;
  const shop = new KeptShop(part.folder);
  for (const state of ['empty', 'fill']) {
    const run = (fault) => {
      shop[state]();
      return traced(part, shop.shop, [process.execPath, PROGRAM, ...shop.words], fault, '', shop.environment);
    };
    run();
    const calls = callsOn(part, shop.kept);
    const faults = calls.flatMap((each) => faultsOf(each).map((fault) => ({ ...each, fault })));
    for (const fault of evenly(faults, part.times(FAULTS))) {
      const { status, stdout, stderr } = run(fault);
      const fail = (what) => part.wrong.push(`${state}, ${fault.call} ${fault.nth} ${fault.fault}: ${what}`);
      part.tried++;
      part.met += wasMet(part, shop.kept) ? 1 : 0;
      const isKilled = fault.fault.startsWith('signal');
      if (!isKilled && `${status} ${stdout}${stderr}` !== shop.wanted)
        fail(`exit ${status}, and it says something else: ${stderr.slice(-300)}`);
      shop.judge(fail);
    }
  }
}
