import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { oncePer } from '../src/checks/once.ts';
import { importsOf } from './imports.ts';

/** From top to bottom: a folder imports from itself and from lower floors, never from its neighbours on a floor. */
const FLOORS: readonly (readonly string[])[] = [
  ['build'],
  ['cli'],
  ['shell'],
  ['output'],
  ['compare', 'plan', 'bench', 'oiling'],
  ['checks'],
  ['characteristics'],
  ['documents'],
  ['torque', 'film'],
  ['measurement'],
  ['layout'],
  ['formula', 'calculator', 'parquet'],
  ['diagnostic'],
  ['quantity'],
];

/** Stands beside the floors: anyone may say which version this is. */
const BESIDE = 'src/version.ts';

/** Who may import a package: folders, or single files. `node:` stands for everything that is Node's own. */
const PACKAGES: Readonly<Record<string, readonly string[]>> = {
  commander: ['src/cli/'],
  yaml: ['src/documents/'],
  'csv-parse': ['src/documents/csv.ts'],
  chalk: ['src/output/'],
  mathjs: ['src/calculator/'],
  'hyparquet-writer': ['src/parquet/'],
  'string-width': ['src/output/'],
  'cli-table3': ['src/output/terminal/table.ts'],
  preact: ['src/output/page/'],
  'preact-render-to-string': ['src/output/escape/html.ts'],
  ajv: ['src/build/'],
  // Files, git, the clock, the terminal and the process come in through the shell alone, or through what node starts.
  'node:': ['src/shell/', 'src/build/', 'src/cli/main.ts', 'src/cli/check/poolMember.ts'],
};

/** Words that go past what others rely on: where each may stand. */
const RESERVED_WORDS: Readonly<Record<string, readonly string[]>> = {
  // Text leaves the program escaped, docs/decisions/0010-escape-last.md: by a language's own writer.
  letOut: ['src/output/escape/', 'src/shell/process/promptLoop.ts'],
  'as Written': ['src/output/escape/language.ts'],
  ownPiece: ['src/output/escape/', 'src/output/terminal/paint.ts', 'src/output/terminal/table.ts'],
  'process.stdout': ['src/shell/process/standardStream.ts'],
  'process.stderr': ['src/shell/process/standardStream.ts'],
};

const NO_FOLDERS = ['utils', 'helpers', 'common', 'core', 'types'];

/** More side by side than a reader takes in: then a folder has rooms, each named after what it knows. */
const MOST_FILES = 20;

/** A file is one idea. Much past two hundred lines it stands here with its reason. */
const MOST_LINES = 210;
const LONGER: Readonly<Record<string, string>> = {
  'src/documents/assemble.ts':
    'reads the documents of an engine together: each kind needs what the one before gave',
  'src/checks/value/routes.ts': 'every way to one value, asked and remembered in one place',
  'src/checks/findings/readings.ts': 'seven kinds of finding beside the messages that tell them',
};

interface SourceFile {
  /** From the project's folder, with `/`. */
  readonly path: string;
  readonly text: string;
}

/** Several rules ask for them. */
const importsIn = oncePer(({ text }: SourceFile) => importsOf(text));

/** Every breach of the rules, as a line that says where and what. */
function breaches(files: readonly SourceFile[]): readonly string[] {
  return [
    ...files.flatMap((file) => [...breachesOf(file), ...importBreaches(file)]),
    ...crowdedFolders(files),
    ...circles(files),
  ];
}

function crowdedFolders(files: readonly SourceFile[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const folder of files.map(({ path }) => posix.dirname(path))) {
    counts.set(folder, (counts.get(folder) ?? 0) + 1);
  }
  return [...counts].flatMap(([folder, count]) =>
    count > MOST_FILES ? [`${folder} holds ${count} files: sort them into folders by what they know`] : [],
  );
}

function importBreaches(file: SourceFile): readonly string[] {
  const { path } = file;
  return importsIn(file).flatMap(({ from, line }) => {
    const wrong = from.startsWith('.') ? wrongFloor(path, from) : wrongPackage(path, from);
    return wrong === undefined ? [] : [`${path}:${line} ${wrong}`];
  });
}

function wrongFloor(path: string, from: string): string | undefined {
  const target = resolved(path, from);
  if (target === BESIDE) return undefined;
  if (!target.startsWith('src/')) return `imports ${target}, which is no part of src`;
  const [own, other] = [folderOf(path), folderOf(target)];
  return own === other || floorOf(own) < floorOf(other)
    ? undefined
    : `imports ${other}, which is not below ${own}`;
}

function wrongPackage(path: string, from: string): string | undefined {
  const name = from.startsWith('node:') ? 'node:' : packageOf(from);
  const allowed = Object.hasOwn(PACKAGES, name) ? (PACKAGES[name] ?? []) : [];
  return allowed.some((each) => path.startsWith(each)) ? undefined : `may not import ${from}`;
}

function breachesOf({ path, text }: SourceFile): readonly string[] {
  const lines = text.trimEnd().split('\n').length;
  const parts = path.split('/').slice(0, -1);
  const found: string[] = [];
  if (path !== BESIDE && floorOf(folderOf(path)) < 0) found.push(`${path} lies on no floor`);
  for (const part of parts.filter((each) => NO_FOLDERS.includes(each))) {
    found.push(`${path} lies in ${part}: a folder is named after what it knows`);
  }
  if (path.endsWith('/formats/index.ts') && /^import (?!type\b)/m.test(text))
    found.push(`${path} loads more than the names of formats`);
  if (path.startsWith('src/cli/') && /\bformat [!=]==? '(?!tenths\.)/.test(text))
    found.push(`${path} asks for the name of a format, which its writer alone knows`);
  if (/^export default\b|\bas default\b/m.test(text)) found.push(`${path} has a default export`);
  for (const [word, allowed] of Object.entries(RESERVED_WORDS)) {
    if (!new RegExp(`\\b${word}\\b`).test(text) || allowed.some((each) => path.startsWith(each))) continue;
    found.push(`${path} may not say ${word}`);
  }
  if (lines > MOST_LINES && !Object.hasOwn(LONGER, path)) found.push(`${path} has ${lines} lines`);
  return found;
}

/** Files that lead back to themselves, each circle once, told from its first file. */
function circles(files: readonly SourceFile[]): readonly string[] {
  const targets = new Map(
    files.map((file) => [
      file.path,
      importsIn(file).flatMap(({ from }) => (from.startsWith('.') ? [resolved(file.path, from)] : [])),
    ]),
  );
  const done = new Set<string>();
  const found: string[] = [];
  const visit = (path: string, trail: readonly string[]): void => {
    const start = trail.indexOf(path);
    if (start >= 0) found.push(`${[...trail.slice(start), path].join(' → ')} is a circle`);
    if (start >= 0 || done.has(path)) return;
    for (const target of targets.get(path) ?? []) visit(target, [...trail, path]);
    done.add(path);
  };
  for (const path of targets.keys()) visit(path, []);
  return found;
}

const resolved = (path: string, from: string): string => posix.join(posix.dirname(path), from);

/** `src/documents/schema/shared.ts` lies in `documents`. */
const folderOf = (path: string): string => path.split('/')[1] ?? '';

const floorOf = (folder: string): number => FLOORS.findIndex((floor) => floor.includes(folder));

const packageOf = (from: string): string =>
  from
    .split('/')
    .slice(0, from.startsWith('@') ? 2 : 1)
    .join('/');

const root = fileURLToPath(new URL('..', import.meta.url));

const sources: readonly SourceFile[] = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
  .map((name) => `src/${name.replaceAll('\\', '/')}`)
  .filter((path) => path.endsWith('.ts') && !path.endsWith('.d.ts'))
  .sort()
  .map((path) => ({ path, text: readFileSync(join(root, path), 'utf8') }));

describe('the source keeps to its floors', () => {
  it('is found at all', () => {
    expect(sources.length).toBeGreaterThan(100);
    expect(sources.flatMap(importsIn).length).toBeGreaterThan(400);
  });

  it('breaks no rule', () => {
    expect(breaches(sources)).toEqual([]);
  });

  it('lists no file as long that is not', () => {
    const long = sources.filter(({ text }) => text.trimEnd().split('\n').length > MOST_LINES);
    expect(Object.keys(LONGER).filter((path) => !long.some((file) => file.path === path))).toEqual([]);
  });

  it('names in its imports everything that the bundler finds', async () => {
    const { metafile } = await build({
      absWorkingDir: root,
      stdin: { contents: sources.map(({ path }) => `import './${path}';`).join('\n'), resolveDir: root },
      // Otherwise it leaves out what it takes to do nothing.
      treeShaking: false,
      bundle: true,
      packages: 'external',
      platform: 'node',
      format: 'esm',
      write: false,
      metafile: true,
      logLevel: 'silent',
    });
    const unseen = sources.flatMap((file) => {
      const { path } = file;
      const seen = importsIn(file).map(({ from }) => from);
      return (metafile.inputs[path]?.imports ?? [])
        .map((each) => each.original ?? each.path)
        .filter((from) => !seen.includes(from))
        .map((from) => `${path} ${from}`);
    });
    expect(unseen).toEqual([]);
    expect(Object.keys(metafile.inputs)).toEqual(expect.arrayContaining(sources.map(({ path }) => path)));
  });
});

describe('a breach is seen', () => {
  const file = (path: string, text: string): SourceFile => ({ path, text });
  const cases: readonly (readonly [title: string, files: readonly SourceFile[], told: string])[] = [
    [
      'of a floor, by a value',
      [file('src/quantity/a.ts', "import { b } from '../checks/b.ts';\n")],
      'src/quantity/a.ts:1 imports checks, which is not below quantity',
    ],
    [
      'of a floor, by a type alone',
      [file('src/documents/schema/a.ts', "import type {\n  B,\n  C,\n} from '../../checks/b.ts';\n")],
      'src/documents/schema/a.ts:4 imports checks, which is not below documents',
    ],
    [
      'of a floor, by handing on',
      [file('src/quantity/a.ts', "export { b } from '../checks/b.ts';\nexport * from '../output/c.ts';\n")],
      'src/quantity/a.ts:2 imports output, which is not below quantity',
    ],
    [
      'of a floor, while it runs',
      [file('src/quantity/a.ts', "const b = await import('../checks/b.ts');\n")],
      'src/quantity/a.ts:1 imports checks, which is not below quantity',
    ],
    [
      'of a floor, by a neighbour on it',
      [file('src/torque/a.ts', "import { b } from '../characteristics/b.ts';\n")],
      'src/torque/a.ts:1 imports characteristics, which is not below torque',
    ],
    [
      'of the walls of src',
      [file('src/cli/a.ts', "import { b } from '../../tests/b.ts';\n")],
      'src/cli/a.ts:1 imports tests/b.ts, which is no part of src',
    ],
    [
      'of who may read YAML',
      [file('src/checks/a.ts', "import { parse } from 'yaml';\n")],
      'src/checks/a.ts:1 may not import yaml',
    ],
    [
      'of a package that nobody may import',
      [file('src/formula/a.ts', "import 'mathjs';\n")],
      'src/formula/a.ts:1 may not import mathjs',
    ],
    [
      'of a file inside a package',
      [file('src/documents/a.ts', "import type { A } from 'ajv/dist/core.js';\n")],
      'src/documents/a.ts:1 may not import ajv/dist/core.js',
    ],
    [
      'of who may touch files',
      [file('src/cli/a.ts', "import { existsSync } from 'node:fs';\n")],
      'src/cli/a.ts:1 may not import node:fs',
    ],
    [
      'of the rule against circles',
      [
        file('src/checks/a.ts', "import { b } from './b.ts';\n"),
        file('src/checks/b.ts', "import type { C } from './c.ts';\n"),
        file('src/checks/c.ts', "import { a } from './a.ts';\n"),
      ],
      'src/checks/a.ts → src/checks/b.ts → src/checks/c.ts → src/checks/a.ts is a circle',
    ],
    ['of names', [file('src/checks/a.ts', 'export default 1;\n')], 'src/checks/a.ts has a default export'],
    [
      'of names, written otherwise',
      [file('src/checks/a.ts', 'const a = 1;\nexport { a as default };\n')],
      'src/checks/a.ts has a default export',
    ],
    [
      'of how folders are named',
      [file('src/checks/utils/a.ts', '')],
      'src/checks/utils/a.ts lies in utils: a folder is named after what it knows',
    ],
    ['of the list of floors', [file('src/extra/a.ts', '')], 'src/extra/a.ts lies on no floor'],
    [
      'of the size of a folder',
      Array.from({ length: 21 }, (_, index) => file(`src/checks/a${index}.ts`, '')),
      'src/checks holds 21 files: sort them into folders by what they know',
    ],
    [
      'of who may let text out',
      [file('src/cli/a.ts', "import { letOut } from '../output/escape/language.ts';\n")],
      'src/cli/a.ts may not say letOut',
    ],
    [
      'of who may let text out, by a cast',
      [file('src/output/check/a.ts', 'const a = text as Written;\n')],
      'src/output/check/a.ts may not say as Written',
    ],
    [
      'of who may write to a stream',
      [file('src/cli/a.ts', "process.stdout.write('a');\n")],
      'src/cli/a.ts may not say process.stdout',
    ],
    [
      'of what every start reads',
      [file('src/output/diff/formats/index.ts', "import { text } from './text.ts';\n")],
      'src/output/diff/formats/index.ts loads more than the names of formats',
    ],
    [
      'of who knows formats by their names',
      [file('src/cli/a.ts', "if (format === 'json') write(a);\n")],
      'src/cli/a.ts asks for the name of a format, which its writer alone knows',
    ],
    ['of one idea a file', [file('src/checks/a.ts', '//\n'.repeat(211))], 'src/checks/a.ts has 211 lines'],
  ];
  it.each(cases)('%s', (_, files, told) => {
    expect(breaches(files)).toContain(told);
  });

  it('and what only looks like one is not', () => {
    const text = [
      "// import { a } from '../checks/a.ts';",
      '/**',
      " * import { a } from 'yaml';",
      ' */',
      "import { VERSION } from '../version.ts';",
      "export const text = 'import it from';",
      "export const imported = ['node:fs'];",
    ].join('\n');
    expect(breaches([file('src/quantity/a.ts', text)])).toEqual([]);
  });
});
