import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { LIGHT, PICTURES } from '../../../src/output/page/style.ts';
import { sheetOf } from '../../cli/report/page.ts';
import { inCopyOf } from '../../replay.ts';

const FOLDER = fileURLToPath(new URL('../../../docs/pictures/', import.meta.url));

const PUMP = ['engines/reservoir-pump-2'];
const SIX = ['engines/generator-set-6', '--session', 'teardown'];

/** Pictures of docs/report.md by their titles on sheets: of the example shop, and of a case that reaches far enough back. */
const SHOWN: readonly (readonly [
  folder: string,
  words: readonly string[],
  pictures: Readonly<Record<string, string>>,
])[] = [
  [
    'examples',
    PUMP,
    {
      band: 'piston clearance 3',
      'bore-map': 'cylinder bore 3',
      'turning-torque': 'turning torque after each step',
      joint: 'cylinder head: order of tightening',
    },
  ],
  ['examples', SIX, { journal: 'main journal diameter 3' }],
  ['tests/cases/trend/one-gauge', [], { trend: 'cylinder bore 1' }],
];

/** A picture of a page by itself, as it is on paper. */
function aloneIn(html: string, kind: string, title: string): string {
  const found = [...html.matchAll(/<svg class="picture ([\w-]+)"[\s\S]*?<\/svg>/g)].find(
    ([whole, its]) => its === kind && whole.includes(`<title>${title}</title>`),
  );
  if (found === undefined) throw new Error(`no ${kind} of ${title}`);
  const style = `<style>:root { ${LIGHT} } svg { background: var(--paper); } ${PICTURES}</style>`;
  return `${found[0].replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" ').replace('<title>', `${style}<title>`)}\n`;
}

it.each(SHOWN)('pictures of the documents are those of %s %j', (from, words, pictures) =>
  inCopyOf(from, async (folder) => {
    const html = await sheetOf(folder, words);
    for (const [kind, title] of Object.entries(pictures)) {
      const path = join(FOLDER, `${kind}.svg`);
      const made = aloneIn(html, kind, title);
      if (process.env.TENTHS_UPDATE !== undefined) {
        mkdirSync(FOLDER, { recursive: true });
        writeFileSync(path, made);
      }
      expect(readFileSync(path, 'utf8')).toBe(made);
    }
  }),
);
