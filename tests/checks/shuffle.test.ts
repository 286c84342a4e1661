import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oncePerTexts } from '../oncePerTexts.ts';
import { runs } from '../propertyRuns.ts';
import { type Files, rowsOf, verdictsOf } from '../shopOf.ts';
import { shuffled } from '../shuffled.ts';
import { blockTexts, filesOf, type RandomShop, randomShop } from './randomShop.ts';

/** Every flow mapping of a line, and the lines of a block mapping, in another order. */
const shuffleKeys = (text: string, seed: number): string =>
  text.replace(
    /\{ ([^{}[\]]+) \}/g,
    (_, inside: string) => `{ ${shuffled(inside.split(', '), seed).join(', ')} }`,
  );

function shuffleTop(text: string, seed: number): string {
  const entries = text.split(/^(?=\S)/m);
  return shuffled(entries, seed).join('');
}

const seeds = fc.integer({ min: 1, max: 2 ** 31 });

const RUNS = runs(60, 15);

/** Each verdict with the reading that it was passed on. */
const judgedOf = (files: Files): Readonly<Record<string, string>> =>
  Object.fromEntries(
    rowsOf(files).map(({ characteristic, position, judgement, routes: [judged] }) => [
      `${characteristic.id} ${position.name}`,
      `${judgement.verdict} ${judged?.least.n}/${judged?.least.d} ${judged?.greatest.n}/${judged?.greatest.d}`,
    ]),
  );

const judgedAsDrawn = oncePerTexts(judgedOf);

const changes = (
  name: string,
  change: (shop: RandomShop, seed: number) => Record<string, string>,
  tried = RUNS,
) =>
  it(name, () => {
    let moved = 0;
    fc.assert(
      fc.property(randomShop, seeds, (shop, seed) => {
        const [before, after] = [filesOf(shop, 'in'), change(shop, seed)];
        if (JSON.stringify(Object.entries(before)) !== JSON.stringify(Object.entries(after))) moved += 1;
        expect(judgedOf(after)).toEqual(judgedAsDrawn(before));
      }),
      tried,
    );
    expect(moved).toBeGreaterThan(tried.numRuns / 2);
  });

describe('no verdict depends on the order of', () => {
  changes('files, and what they are called', (shop, seed) => {
    const renamed = Object.entries(filesOf(shop, 'in')).map(([path, text], index): [string, string] => [
      path.startsWith('e/') ? `e/${'abc'[(index + seed) % 3]}${index}/${path.slice(2)}` : path,
      text,
    ]);
    return Object.fromEntries(
      shuffled(
        renamed.map(([path, text]) => [keepEngine(path), text] as const),
        seed,
      ),
    );
  });

  changes(
    'the blocks of a session',
    (shop, seed) => {
      const files = filesOf(shop, 'in');
      const blocks = shuffled(blockTexts(shop, 'in'), seed).map((text) => `  ${text}\n`);
      const head = (files['e/session.yaml'] ?? '').split('readings:\n')[0];
      const session = `${head}readings:\n${blocks.join('')}`;
      // With one block there is nothing to exchange: the head of the file stands in for it.
      return { ...files, 'e/session.yaml': shop.blocks.length > 1 ? session : shuffleTop(session, seed) };
    },
    runs(1200, 60),
  );

  changes('keys, inside a line and at the top of a file', (shop, seed) =>
    Object.fromEntries(
      Object.entries(filesOf(shop, 'in')).map(([path, text]) => [
        path,
        shuffleTop(shuffleKeys(text, seed), seed),
      ]),
    ),
  );

  changes('the lines of the limits', (shop, seed) => {
    const files = filesOf(shop, 'in');
    const [head, lines = ''] = (files['e/limits.yaml'] ?? '').split('limits:\n');
    const sorted = shuffled(lines.split(/(?<=\n)/), seed).join('');
    return { ...files, 'e/limits.yaml': `${head}limits:\n${sorted}` };
  });
});

/** The engine document says where the engine is. */
const keepEngine = (path: string): string => (path.endsWith('/engine.yaml') ? 'e/engine.yaml' : path);

describe('blocks on either side of work', () => {
  it('keep their sides, and within a side any order gives the same verdict', () => {
    const before = [
      '{ measure: cylinder_bore, with: bore, at: { 3: 4.1310 } }',
      '{ measure: piston_diameter, with: mic, at: { 3: 4.1200 } }',
    ];
    const after = [
      '{ measure: cylinder_bore, with: bore, at: { 3: 4.1250 } }',
      '{ measure: main_journal_diameter, with: mic, at: { 1: 3.2478 } }',
    ];
    const verdictsIn = (first: readonly string[], second: readonly string[]) =>
      verdictsOf({
        'e/engine.yaml': 'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: 3, cylinders: 4 }\n',
        'e/limits.yaml':
          'kind: limits\nsource: Invented.\nlimits: { cylinder_bore: { new: { max: 4.1300 } }, piston_clearance: { new: { max: 0.0060 } } }\n',
        'e/session.yaml': `kind: session\nstage: machined\ndate: 2026-02-03\nreadings:\n${[...first, '{ work: honed, on: cylinder 3 }', ...second].map((text) => `  - ${text}\n`).join('')}`,
      });
    const expected = verdictsIn(before, after);
    expect(expected).toMatchObject({ 'cylinder_bore 3': 'ok', 'piston_clearance 3': 'ok' });
    expect(verdictsIn(before.toReversed(), after)).toEqual(expected);
    expect(verdictsIn(before, after.toReversed())).toEqual(expected);
    expect(verdictsIn(before.toReversed(), after.toReversed())).toEqual(expected);
    expect(verdictsIn(after, before)).not.toEqual(expected);
  });
});
