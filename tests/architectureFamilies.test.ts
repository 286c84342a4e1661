import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { AXES } from '../src/layout/axis.ts';

/** Kinds of document and keys of theirs are called so as well; families of them are asked for by constants. */
const ALSO_KEYS = new Set<string>(['engine', 'step']);
const axisNames = AXES.filter((axis) => !ALSO_KEYS.has(axis)).join('|');

/** Ways to ask for one axis or family by its name, where another would do as well. */
const BY_NAME: readonly RegExp[] = [
  /(?<![\w'])(?:WHOLE_ENGINE|CYLINDER)(?![\w'])/,
  /\bfamily\b[^=;]{0,40}[!=]== (?:ENGINE|STEP)\b/,
  /\bat\((?:ENGINE|STEP),/,
  /\?\? (?:ENGINE|STEP)\b/,
  /\bfamilyOf\([^)]*'/,
  new RegExp(`'(?:${axisNames})'`),
  /\bfamily\.name [!=]==/,
];

/** What a document is shown as an example, and how JavaScript imports, ask for nothing. */
const NO_QUESTION: readonly RegExp[] = [/^\s*import\b/, /\babout\(/, /^\s*\w+: \{ label:/];

/** Places outside of the floors that know families: a line that asks by name. */
function placesByName(path: string, text: string): readonly string[] {
  return text.split('\n').flatMap((line, index) => {
    const asks = BY_NAME.some((way) => way.test(line)) && !NO_QUESTION.some((other) => other.test(line));
    return asks ? [`${path}:${index + 1} ${line.trim()}`] : [];
  });
}

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const sources = readdirSync(join(ROOT, 'src'), { recursive: true, encoding: 'utf8' })
  .map((path) => path.replaceAll('\\', '/'))
  // HTML has a `main` of its own.
  .filter((path) => path.endsWith('.ts') && !/^(?:layout|characteristics|output\/page)\//.test(path));

describe('families', () => {
  it('are asked for by name in fewer than ten places outside of layout and characteristics', () => {
    const places = sources.flatMap((path) =>
      placesByName(`src/${path}`, readFileSync(join(ROOT, 'src', path), 'utf8')),
    );
    expect(sources.length).toBeGreaterThan(300);
    expect(places.length, places.join('\n')).toBeLessThan(10);
  });

  it.each([
    'if (position.family === STEP) return;',
    'const is = family !== ENGINE;',
    "const at = familyOf('main');",
    "for (const name of layout.namesAlong('cylinder')) {",
    "names.get('cam bearing')",
    "if (family.name === 'ring') {",
    'layout.at(STEP, [name])',
  ])('asked for by %s are counted', (line) => expect(placesByName('x.ts', line)).toHaveLength(1));

  it.each([
    "import { ENGINE } from '../layout/family.ts';",
    'if (family.isSingle) return;',
    "throw new UsageError('too many', 'tenths diff A [B] [ENGINE]');",
    "kind === 'engine'",
    "textAt(step, 'step')",
  ])('are not by %s', (line) => expect(placesByName('x.ts', line)).toEqual([]));
});
