import { writeFileSync } from 'node:fs';
import { KeptShop } from './shop.js';

/** A bit of each entry is another, each time in another byte: none is believed, and each is kept anew. */
export function keptFlipped(part) {
  const shop = new KeptShop(part.folder);
  const runs = part.times(30);
  for (let run = 0; run < runs; run++) {
    shop.fill();
    for (const [path, text] of shop.sound) {
      const bytes = Buffer.from(text);
      bytes[Math.floor((run * bytes.length) / runs)] ^= 1 << (run % 8);
      writeFileSync(path, bytes);
    }
    const now = shop.check();
    part.tried += shop.sound.size;
    part.met += [...shop.entries()].filter(([path, text]) => text === shop.sound.get(path)).length;
    if (now !== shop.wanted)
      part.wrong.push(`run ${run}: a damaged entry was believed: ${now.slice(0, 300)}`);
  }
}
