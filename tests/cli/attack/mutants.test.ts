import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { openDocument } from '../../../src/documents/opened.ts';
import { KINDS } from '../../../src/documents/schema/kinds.ts';
import { mutantOf } from '../../documents/yaml/anyText.ts';
import { callHere } from '../../inProcess.ts';
import { HIDDEN } from '../../output/escape/hidden.ts';
import { projectFolder } from '../../program.ts';
import { some } from '../../propertyRuns.ts';
import { benchFolder } from '../calling.ts';

const bench = benchFolder();

const EXAMPLES = join(projectFolder, 'examples');

/** The documents of the example shop and a part on its shelf, by path: every kind there is. */
const DOCUMENTS: Readonly<Record<string, string>> = {
  'parts/crankshaft.yaml':
    'kind: part\npart: crankshaft\nmark: C-17\nbought: at an auction\nlies: rack 3\nfrom: [{ engine: Old pump, date: 2019-05-20 }]\n',
  ...Object.fromEntries(
    readdirSync(EXAMPLES, { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.yaml'))
      .sort()
      .map((path) => [path, readFileSync(join(EXAMPLES, path), 'utf8')]),
  ),
};

/** How many, and for how many seconds at the most: `npm run attack` says. */
const COUNT = Number(process.env.ATTACK_COUNT ?? some(2_000, 80));
const SECONDS = Number(process.env.ATTACK_SECONDS ?? 3600);

/** A shop is judged far more slowly than a document is read. */
const SHOPS = Math.ceil(COUNT / 20);

const upTo = (numRuns: number) => ({
  numRuns,
  interruptAfterTimeLimit: SECONDS * 500,
  markInterruptAsFailure: false,
});

it('a mutant of any document is read, or refused with a place in it', () => {
  const kinds = new Set(Object.values(DOCUMENTS).map((text) => /^kind: (\w+)/m.exec(text)?.[1]));
  expect(KINDS.filter((kind) => !kinds.has(kind))).toEqual([]);
  const property = fc.property(mutantOf(Object.values(DOCUMENTS)), (text) => {
    const { kind, root, problems } = openDocument('a.yaml', 'a.yaml', Buffer.from(text));
    if (root === undefined && kind !== undefined) expect(problems).not.toEqual([]);
    const lines = text.split('\n').length;
    for (const { place } of problems) {
      expect(place.line).toBeGreaterThanOrEqual(1);
      expect(place.endLine).toBeLessThanOrEqual(lines + 1);
    }
  });
  fc.assert(property, upTo(COUNT));
});

/** What may be asked of a shop, in every language that is written. */
const CALLS = [
  'check --all --detail',
  'check --format markdown',
  'check --format json',
  'check --format sarif',
  'check --format junit',
  'check --format github',
  'check --format csv',
  'check --format lines',
  'plan generator-set-6',
  'torque main-caps reservoir-pump-2',
  'diff teardown rebuild reservoir-pump-2',
  'trend main_bearing_clearance generator-set-6',
  'instruments',
  'part',
];

const mutantOfShop = fc
  .tuple(fc.constantFrom(...Object.keys(DOCUMENTS)), fc.constantFrom(...CALLS))
  .chain(([path, call]) =>
    fc.record({ path: fc.constant(path), call: fc.constant(call), text: mutantOf([DOCUMENTS[path] ?? '']) }),
  );

it('a shop with a mutant among its documents is judged, or its problem is told', async () => {
  bench.put(DOCUMENTS);
  const property = fc.asyncProperty(mutantOfShop, async ({ path, call, text }) => {
    bench.put({ [path]: text });
    try {
      const { exitCode, stdout, stderr } = await callHere(call.split(' '), { cwd: bench.folder() });
      expect([0, 1, 2]).toContain(exitCode);
      expect(stdout + stderr).not.toMatch(/\bNaN\b|undefined|\[object |^ +at /m);
      expect((stdout + stderr).replaceAll('\r\n', '\n')).not.toMatch(HIDDEN);
    } finally {
      bench.put({ [path]: DOCUMENTS[path] ?? '' });
    }
  });
  await fc.assert(property, upTo(SHOPS));
});
