import { expect, it } from 'vitest';
import { inCopyOf } from '../replay.ts';
import { pageOf, shown } from './report/page.ts';

/** Calls that give a page, by the folder in which they are made. */
const CALLS: readonly (readonly [folder: string, calls: readonly string[]])[] = [
  [
    'examples',
    [
      'plan engines/reservoir-pump-2 --session teardown',
      'plan engines/reservoir-pump-2 --session teardown --for customer',
      'plan engines/generator-set-6 --session teardown --for machine-shop',
      'plan engines/generator-set-6 --session teardown --order',
      'plan engines/reservoir-pump-2 --closing',
      'diff teardown rebuild engines/reservoir-pump-2 --all',
      'torque main-caps engines/reservoir-pump-2',
    ],
  ],
  ['tests/cases/trend/one-gauge', ['trend cylinder_bore']],
];

/** Words with a figure or a letter in them, without the marks of Markdown; a drawing of characters is a picture on a page. */
const wordsOf = (markdown: string): readonly string[] =>
  markdown
    .replaceAll(/^```[\s\S]*?^```/gm, '')
    .replaceAll(/&#(\d+);/g, (_, code) => String.fromCodePoint(Number(code)))
    .replaceAll(/[|*\\]|^(?:#+|- (?:\[ \])?)/gm, ' ')
    .split(/[,;:.]?\s+/)
    .filter((word) => /[\p{L}\d]/u.test(word));

it.each(CALLS)(
  'in %s a page says every word of the Markdown of its call, and fetches nothing',
  (from, calls) =>
    inCopyOf(from, async (folder) => {
      for (const words of calls) {
        const { html, markdown } = await pageOf(folder, words.split(' '));
        const page = shown(html).toLowerCase();
        const told = wordsOf(markdown);
        expect(told.length).toBeGreaterThan(20);
        expect(
          told.filter((word) => !page.includes(word.toLowerCase())),
          words,
        ).toEqual([]);
        expect(html).not.toMatch(/https?:|<img|src=/);
      }
    }),
);
