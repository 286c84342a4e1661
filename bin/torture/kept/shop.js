import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { ENVIRONMENT, tenths } from '../shop.js';

const ENGINES = 6;

/** Invented; of half of the engines the end play is out. */
const FILES = {
  'shop.yaml': 'kind: shop\nunits: { length: in }\n',
  ...Object.fromEntries(
    Array.from({ length: ENGINES }, (_, index) => [
      [`engines/e${index}/engine.yaml`, `kind: engine\nname: E${index}\nlayout: { cylinders: 4 }\n`],
      [
        `engines/e${index}/limits.yaml`,
        'kind: limits\nsource: Invented.\nlimits: { crankshaft_end_play: { new: 0.006 to 0.013 } }\n',
      ],
      [`engines/e${index}/teardown.yaml`, sessionOf(index % 2 === 0 ? '0.008' : '0.020')],
    ]).flat(),
  ),
};

export function sessionOf(endPlay) {
  return `kind: session\nstage: teardown\ndate: 2026-02-03\nreadings: [{ measure: crankshaft_end_play, value: ${endPlay} }]\n`;
}

/** A shop beside a cache of its own: what `check` prints with whatever stands in it must be what it prints without. */
export class KeptShop {
  /** What `check` is called with. */
  words = ['check', '--format', 'json'];

  constructor(folder) {
    [this.shop, this.kept, this.filled] = ['shop', 'kept', 'filled'].map((name) => join(folder, name));
    this.environment = { ...ENVIRONMENT, XDG_CACHE_HOME: this.kept };
    for (const [path, text] of Object.entries(FILES)) {
      mkdirSync(dirname(join(this.shop, path)), { recursive: true });
      this.write(path, text);
    }
    this.empty();
    this.wanted = this.check('--no-cache');
    this.check();
    cpSync(this.kept, this.filled, { recursive: true });
    this.sound = this.entries();
  }

  write(path, text) {
    writeFileSync(join(this.shop, path), text);
  }

  check(...more) {
    const { status, said } = tenths(this.shop, [...this.words, ...more], '', this.environment);
    return `${status} ${said}`;
  }

  /** As before the first run. */
  empty() {
    rmSync(this.kept, { recursive: true, force: true });
    mkdirSync(this.kept);
  }

  /** As after it. */
  fill() {
    rmSync(this.kept, { recursive: true, force: true });
    cpSync(this.filled, this.kept, { recursive: true });
  }

  /** Every result that was kept, by its path. */
  entries() {
    const found = readdirSync(this.kept, { recursive: true, withFileTypes: true })
      .filter(
        (each) => each.isFile() && each.parentPath.includes('/results/') && !each.name.endsWith('.part'),
      )
      .map(({ parentPath, name }) => join(parentPath, name));
    return new Map(found.sort().map((path) => [path, readFileSync(path, 'utf8')]));
  }

  /** Nothing torn stands there, and with what does `check` says the same. */
  judge(fail) {
    for (const [path, text] of this.entries())
      if (text !== this.sound.get(path)) fail(`an entry is torn: ${text.slice(0, 100)}`);
    const now = this.check();
    if (now !== this.wanted) fail(`check says something else with what is kept: ${now.slice(0, 300)}`);
    if (this.entries().size !== ENGINES) fail(`${this.entries().size} of ${ENGINES} results are kept`);
  }
}
