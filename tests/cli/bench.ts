import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { inCopyOf } from '../replay.ts';

type Files = Readonly<Record<string, string | Uint8Array>>;

/** Does something in a shop with two engines: one that has something of every colour to show, and one that is sound. */
export const atTheBench = <Result>(files: Files, act: (folder: string) => Promise<Result>): Promise<Result> =>
  inCopyOf(undefined, (folder) => {
    for (const [path, content] of Object.entries({ ...SHOP, ...files })) {
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), content);
    }
    return act(folder);
  });

const SHOP: Files = {
  'shop.yaml': 'kind: shop\nname: Mill\nunits: { length: in }\n',
  'instruments.yaml': `kind: instruments
instruments:
  mic-3-4: { type: micrometer, resolution: 0.0001, max_error: 0.0001 }
`,
  'limits.yaml': `kind: limits
source: Invented.
limits:
  main_journal_diameter: { new: { min: 3.2475, max: 3.2485 }, wear: { min: 3.2465 } }
`,
  'sound/engine.yaml': 'kind: engine\nname: Sound pump\nlayout: { mains: 2 }\n',
  'sound/teardown.yaml': `kind: session
stage: teardown
date: 2026-02-03
readings:
  - measure: main_journal_diameter
    with: mic-3-4
    at: { 1: 3.2481, 2: 3.2479 }
`,
  'worn/engine.yaml':
    'kind: engine\nname: Worn pump\nlayout: { mains: 5 }\nlabels: { main: { 1: front, 3: centre, 5: flywheel end } }\n',
  'worn/teardown.yaml': `kind: session
stage: teardown
date: 2026-02-03
readings:
  - measure: main_journal_diameter
    with: mic-3-4
    stations: [front, rear]
    at: { 1: [3.2478, 3.2477], 2: [3.2470, 3.2471], 3: [3.2455, 3.2459], 5: [3.2480, 3.2482] }
`,
};
