import { spawn } from 'node:child_process';
import { setTimeout as pause } from 'node:timers/promises';
import { PROGRAM } from '../shop.js';
import { KeptShop, sessionOf } from './shop.js';

const SESSION = 'engines/e0/teardown.yaml';

/** Two checks keep results at once while somebody saves a session: what is kept then belongs to what stands there. */
export async function keptShared(part) {
  const shop = new KeptShop(part.folder);
  for (let run = 0; run < part.times(20); run++) {
    shop.empty();
    shop.write(SESSION, sessionOf('0.008'));
    const both = [0, 1].map(() => startCheck(shop));
    const isOver = Promise.all(both);
    while (shop.entries().size === 0 && (await Promise.race([isOver, pause(1)])) === undefined);
    await pause(run % 5);
    const kept = shop.entries().size;
    shop.write(SESSION, sessionOf('0.030'));
    const codes = await isOver;
    part.tried++;
    part.met += kept > 0 && kept < shop.sound.size ? 1 : 0;
    if (codes.some((code) => code !== 1)) part.wrong.push(`run ${run}: exit ${codes}`);
    if (shop.check() !== shop.check('--no-cache')) part.wrong.push(`run ${run}: a result is out of date`);
  }
}

const startCheck = (shop) =>
  new Promise((end) => {
    const child = spawn(process.execPath, [PROGRAM, ...shop.words], {
      ...{ cwd: shop.shop, env: shop.environment, stdio: 'ignore' },
    });
    child.on('close', end);
  });
