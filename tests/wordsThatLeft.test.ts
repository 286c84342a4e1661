import { hash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

/**
 * Runs of words and figures that left the examples, the documents, the schemas and the program, as digests, so that they
 * stand nowhere: notes and limits that were not of our own making.
 */
const LEFT: ReadonlySet<string> = new Set([
  'abd384feaceab994',
  '1c6c8b1f3a086e97',
  '31a35a10da08d310',
  '93c41801b7186ee7',
  'ec7a824d595e7562',
  '1adcc60341cbf40f',
  '35bd6d177ef3e06e',
  'ab6ac538255960c2',
  '7cdd8746732bf2cb',
  '0e622db11e58dc1b',
  'b4a98a63dd385a11',
  'a2cda77128064d15',
]);

const root = fileURLToPath(new URL('..', import.meta.url));
const WHERE = ['README.md', 'docs', 'examples', 'schemas', 'src', 'bin/bench/engine'];
const IS_TEXT = /\.(?:md|yaml|json|ts|txt)$/;
const IS_MADE = /generated/;

const filesIn = (path: string): readonly string[] =>
  IS_TEXT.test(path)
    ? [path]
    : readdirSync(join(root, path), { recursive: true, encoding: 'utf8' })
        .map((name) => `${path}/${name.replaceAll('\\', '/')}`)
        .filter((each) => IS_TEXT.test(each) && !IS_MADE.test(each));

/** Words and numbers, without what stands between them. */
const wordsOf = (text: string): readonly string[] =>
  text.toLowerCase().match(/\d+(?:\.\d+)?|\.\d+|[a-z]+/g) ?? [];

const digestOf = (run: string): string => hash('sha256', run).slice(0, 16);

/** All of one length, so that a text is gone through once. */
const LENGTH = 4;

function leftIn(text: string): readonly string[] {
  const words = wordsOf(text);
  const runs = new Set(words.map((_, at) => words.slice(at, at + LENGTH).join(' ')));
  return [...runs].filter((run) => LEFT.has(digestOf(run)));
}

describe('words and figures that left', () => {
  it('are found where they stand', () => {
    expect(leftIn('a note: "these four words left", and on')).toEqual(['these four words left']);
  });

  it('stand in none of these files', () => {
    const files = WHERE.flatMap(filesIn);
    expect(files.length).toBeGreaterThan(300);
    const found = files.flatMap((path) =>
      leftIn(readFileSync(join(root, path), 'utf8')).map((run) => `${path}: ${run}`),
    );
    expect(found).toEqual([]);
  });
});
