import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFolder } from './program.ts';
import { carryOut, inCopyOf, isUpdating, type Step, stepsOf, transcript } from './replay.ts';
import { type Block, blocksByFolder, blocksOf, documents } from './transcripts.ts';

/** The document with what its blocks really print. */
async function carriedOut(markdown: string): Promise<string> {
  const blocks = blocksOf(markdown);
  const texts = new Map<Block, string>();
  for (const [folder, together] of blocksByFolder(blocks)) {
    await inCopyOf(folder && join(projectFolder, folder), async (copy) => {
      for (const block of together) {
        texts.set(block, docText(await carryOut(stepsOf(block.text), copy, 'unless 0')));
      }
    });
  }
  return blocks.reduceRight(
    (text, block) =>
      `${text.slice(0, block.start)}${texts.get(block)}${text.slice(block.start + block.text.length)}`,
    markdown,
  );
}

const docText = (steps: readonly Step[]): string => transcript(steps);

describe('what the documents show is what happens', () => {
  it.concurrent.each(documents)('%s', async (name) => {
    const path = join(projectFolder, name);
    const written = readFileSync(path, 'utf8');
    const done = await carriedOut(written);
    if (isUpdating) writeFileSync(path, done);
    else expect(done).toBe(written);
  });

  it('a block is found with its folder, and only one that runs tenths', () => {
    const markdown =
      'Text.\n\n<!-- in: examples -->\n```console\n$ tenths check\nout\n```\n\n```console\n$ npm ci\n```\n\n```sh\n$ tenths\n```\n';
    expect(blocksOf(markdown)).toEqual([
      { folder: 'examples', text: '$ tenths check\nout\n', start: markdown.indexOf('$ tenths check') },
    ]);
  });

  it('a block that no longer holds is noticed, and one with … that holds stays', async () => {
    const document = (told: string): string =>
      `Before.\n\n\`\`\`console\n$ tenths --help\n${told}\n\`\`\`\n\nAfter.\n`;
    expect(await carriedOut(document('Usage: tenths [options] [command]\n…'))).toBe(
      document('Usage: tenths [options] [command]\n…'),
    );
    const changed = await carriedOut(document('Usage: none'));
    expect(changed).toContain('Usage: tenths');
    expect(changed).toMatch(/^Before\.\n\n```console\n\$ tenths --help\n[\s\S]+\n```\n\nAfter\.\n$/);
  });
});
