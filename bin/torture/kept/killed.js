import { spawn } from 'node:child_process';
import { setTimeout as pause } from 'node:timers/promises';
import { PROGRAM } from '../shop.js';
import { KeptShop } from './shop.js';

/** A check is killed while it keeps its results: from before the first until after the last. */
export async function keptKilled(part) {
  const shop = new KeptShop(part.folder);
  for (let run = 0; run < part.times(60); run++) {
    shop.empty();
    const child = spawn(process.execPath, [PROGRAM, ...shop.words], {
      ...{ cwd: shop.shop, env: shop.environment, stdio: 'ignore' },
    });
    const ended = new Promise((end) => {
      child.on('close', end);
    });
    while (shop.entries().size === 0 && child.exitCode === null) await pause(1);
    await pause(run % 8);
    child.kill('SIGKILL');
    await ended;
    part.tried++;
    part.met += shop.entries().size < shop.sound.size ? 1 : 0;
    shop.judge((what) => part.wrong.push(`run ${run}: ${what}`));
  }
}
