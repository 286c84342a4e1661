import { spawnSync } from 'node:child_process';
import {
  mkdirSync,
  mkdtempSync,
  realpathSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startLine } from '../../src/bench/record/journalText.ts';
import { git } from '../shell/gitShop.ts';
import { ENGINE, limitsOf, sessionOf } from '../shopOf.ts';
import { call } from './call.ts';

const LIMITS = limitsOf('crankshaft_end_play: { new: 0.0060 in to 0.0130 in }');
const SESSION = sessionOf('rebuild', '- { measure: crankshaft_end_play, value: 0.0070 }');
const TAKEN = '{"do":"take","at":0,"text":"0.0070"}\n';
const START = startLine({
  record: 1,
  head: { stage: 'rebuild', date: '2026-03-14', by: undefined, schema: undefined },
  plan: { blocks: [] },
  points: [],
  instruments: [],
  zeros: [],
} as unknown as Parameters<typeof startLine>[0]);

/** Puts something under a name into a folder; `targets` is a folder of the shop, `outside` one that is not. */
type Make = (path: string, to: To) => void;

interface To {
  readonly targets: string;
  readonly outside: string;
}

const file =
  (text: string): Make =>
  (path) => {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  };
const link =
  (target: string): Make =>
  (path, { targets, outside }) =>
    symlinkSync(target.replace('TARGETS', targets).replace('OUTSIDE', outside), path);
const folderWith =
  (name: string): Make =>
  (path) =>
    file(SESSION)(join(path, name), { targets: '', outside: '' });
const made =
  (command: string, ...words: readonly string[]): Make =>
  (path) => {
    const { status } = spawnSync(command, [...words, path]);
    if (status !== 0) throw new Error(`${command} made nothing`);
  };
/** Who listens at a socket takes it along at the end, but for one that has another name by then. */
const socket: Make = (path) => {
  const server = createServer().listen(`${path}~`);
  renameSync(`${path}~`, path);
  server.close();
};

/**
 * What comes of it in an engine's folder, in a folder above one, and in a folder that no engine is in or below: a
 * document that verdicts stand on and that has a problem; a warning; a remark; a document that is read; nothing.
 */
type Told = 'document' | 'warning' | 'remark' | 'read' | '-';
type Row = readonly [title: string, name: string, make: Make, told: readonly [Told, Told, Told]];

/** The same everywhere. */
const all = (told: Told) => [told, told, told] as const;
/** In an engine's folder alone. */
const within = (told: Told) => [told, '-', '-'] as const;

/** What a commit holds as well. */
const IN_GIT: readonly Row[] = [
  ['limits', 'more.yaml', file(LIMITS), all('read')],
  ['limits with the other ending', 'more.yml', file(LIMITS), all('read')],
  ['limits, in capitals', 'more.YAML', file(LIMITS), all('document')],
  ['limits, with one capital', 'more.Yml', file(LIMITS), all('document')],
  ['limits, hidden', '.more.yaml', file(LIMITS), all('document')],
  ['limits with a second ending', 'more.yaml.txt', file(LIMITS), all('document')],
  ['limits as text', 'more.txt', file(LIMITS), all('document')],
  ['limits below comments', 'more.txt', file(`# Invented.\n\n---\n${LIMITS}`), all('document')],
  ['limits behind a byte order mark', 'more.txt', file(`\ufeff${LIMITS}`), all('document')],
  ['limits, ending misspelt', 'more.yalm', file(LIMITS), all('document')],
  ['limits without an ending', 'more', file(LIMITS), all('document')],
  [
    'limits, kind misspelt, in capitals',
    'more.YAML',
    file(LIMITS.replace('limits', 'limit')),
    all('document'),
  ],
  ['a register, in capitals', 'tools.YAML', file('kind: instruments\ninstruments: {}\n'), all('document')],
  ['a shop, in capitals', 'Shop.YAML', file('kind: shop\n'), all('document')],
  ['a session, in capitals', 'x.YAML', file(SESSION), all('warning')],
  ['a session, hidden', '.x.yaml', file(SESSION), all('warning')],
  ['a session as text', 'x.txt', file(SESSION), all('warning')],
  ['a sequence as text', 'x.text', file('kind: torque\n'), all('warning')],
  ['a session that is cut off, in capitals', 'x.YAML', file('kind: [session\n'), within('warning')],
  ['a session that is cut off, hidden', '.x.yaml', file('kind: [session\n'), within('warning')],
  ['a session that is cut off, as text', 'x.txt', file('kind: [session\n'), within('warning')],
  ['what says no kind, in capitals', 'x.YAML', file('name: x\n'), within('warning')],
  ['what says no kind, by the name of limits', 'limits.YAML', file('name: x\n'), within('document')],
  ['what says no kind, hidden', '.x.yaml', file('repos: []\n'), within('remark')],
  ['nothing, in capitals', 'x.YAML', file(''), within('warning')],
  ['what says no kind, as text', 'x.txt', file('name: x\n'), all('-')],
  ['text that says its kind further down', 'x.txt', file(`How we do it:\n${SESSION}`), all('-')],
  ['limits as a picture', 'x.jpg', file(LIMITS), all('-')],
  ['limits in a hidden file of another name', '.limits', file(LIMITS), all('-')],
  ['bytes', 'x.bin', file('\0\u0001\u0002kind: limits\n'), all('-')],
  ['a backup', 'limits.yaml~', file(LIMITS), within('remark')],
  ['a backup of a merge', 'limits.yaml.orig', file(LIMITS), within('remark')],
  ['a backup of a stream editor', 'limits.yaml.bak', file(LIMITS), within('remark')],
  ['what an editor saves by itself', '#limits.yaml#', file(LIMITS), within('remark')],
  ['what an editor recovers from', '.limits.yaml.swp', file('b0VIM'), within('remark')],
  ['the lock of an editor', '.#limits.yaml', link('a.machinist@bench.1'), within('remark')],
  ['a backup of something else', 'notes.txt~', file('notes'), all('-')],
  ['an entry with a reading', '.x.part', file(START + TAKEN), all('warning')],
  ['an entry whose last line is torn', '.x.part', file(`${START}${TAKEN}{"do":"ta`), all('warning')],
  ['an entry without a reading', '.x.part', file(START), all('-')],
  ['a part of something else', '.x.part', file('half a download'), all('-')],
  ['a link to limits of the shop', 'x.yaml', link('TARGETS/more.yaml'), all('document')],
  ['a link to a session of the shop', 'x.yaml', link('TARGETS/x.txt'), all('warning')],
  ['a link to a link to limits of the shop', 'x.yaml', link('TARGETS/again.yaml'), all('document')],
  ['a link to text of the shop', 'x.yaml', link('TARGETS/notes.txt'), within('warning')],
  ['a link in capitals to limits of the shop', 'x.YAML', link('TARGETS/more.yaml'), all('document')],
  ['a link out of the shop', 'x.yaml', link('/etc/passwd'), all('warning')],
  ['a link out of the shop by the name of limits', 'limits.yaml', link('/etc/passwd'), all('document')],
  [
    'a link out of the shop, step by step',
    'x.yaml',
    link('../../../../../../../../etc/passwd'),
    all('warning'),
  ],
  ['a link to nothing', 'x.yaml', link('nowhere.yaml'), all('warning')],
  ['a link to nothing by the name of limits', 'pump-limits.yaml', link('nowhere.yaml'), all('document')],
  ['a link to itself', 'x.yaml', link('x.yaml'), all('warning')],
  ['a link by another name', 'notes', link('TARGETS/more.yaml'), all('-')],
  ['a link to a folder of documents of the shop', 'old', link('TARGETS/sessions'), within('warning')],
  ['a link to the folder above', 'old', link('..'), all('-')],
  ['a link to a folder of pictures', 'old', link('TARGETS/pictures'), all('-')],
  ['a folder by the name of a document', 'x.yaml', folderWith('x.txt'), all('warning')],
  ['a folder by the name of limits', 'limits.yaml', folderWith('x.txt'), all('document')],
  ['a hidden folder of documents', '.old', folderWith('x.yaml'), within('remark')],
  ['a hidden folder of other things', '.old', folderWith('x.json'), all('-')],
  ['a folder of packages with documents', 'node_modules', folderWith('x.yaml'), within('remark')],
  ['a folder of packages', 'node_modules', folderWith('x.js'), all('-')],
];

/** What stands on a disk alone. */
const ON_DISK: readonly Row[] = [
  ['a pipe', 'x.yaml', made('mkfifo'), all('warning')],
  ['a pipe by the name of limits', 'limits.yaml', made('mkfifo'), all('document')],
  ['a pipe in capitals', 'x.YAML', made('mkfifo'), all('warning')],
  ['a hidden pipe', '.x.yaml', made('mkfifo'), all('warning')],
  ['a pipe by another name', 'x', made('mkfifo'), all('-')],
  ['a socket', 'x.yaml', socket, all('warning')],
  ['a socket by the name of an engine', 'engine-2.yaml', socket, all('document')],
  ['an empty folder by the name of a document', 'x.yml', made('mkdir'), all('warning')],
  ['a link to a device', 'x.yaml', link('/dev/zero'), all('warning')],
  ['a link to limits out of the shop', 'x.yaml', link('OUTSIDE/limits.yaml'), all('warning')],
  ['a link to a folder of documents out of the shop', 'old', link('OUTSIDE'), all('warning')],
];

const PLACES = ['in an engine', 'above an engine', 'elsewhere'] as const;

interface Message {
  readonly code: string;
  readonly message: string;
  readonly place: { readonly path: string };
}

interface Json {
  readonly diagnostics: readonly Message[];
  readonly findings: readonly (Message & {
    readonly severity: string;
  })[];
  readonly engines: readonly { readonly path: string; readonly judged: boolean }[];
}

const parent = realpathSync(mkdtempSync(join(tmpdir(), 'unread ')));
const shop = join(parent, 'shop');
const bare: To = { targets: '', outside: '' };

afterAll(() => rmSync(parent, { recursive: true, force: true }));

/** Where each row stands: in folders of its own, so that one run tells all of them. */
const pathsOf = (index: number, name: string) =>
  [`in-${index}/sessions/${name}`, `up-${index}/${name}`, `out-${index}/${name}`] as const;

/** The engine that the row bears on there. */
const engineOf = (index: number, place: number): string | undefined =>
  [`in-${index}`, `up-${index}/e`][place];

function makeRow(row: Row, index: number): void {
  const [, name, make] = row;
  for (const folder of [`in-${index}`, `up-${index}/e`]) {
    file(ENGINE)(join(shop, folder, 'engine.yaml'), bare);
    file(SESSION)(join(shop, folder, 'sessions/rebuild.yaml'), bare);
  }
  for (const path of pathsOf(index, name)) {
    const absolute = join(shop, path);
    mkdirSync(dirname(absolute), { recursive: true });
    make(absolute, {
      targets: relative(dirname(absolute), join(shop, 'targets')),
      outside: join(parent, 'outside'),
    });
  }
}

function commitAll(repository: string, message: string): void {
  const author = ['-c', 'user.name=A. Machinist', '-c', 'user.email=machinist@example.invalid'];
  git(repository, '-c', 'core.fsync=none', 'add', '-A', '-f');
  git(repository, ...author, 'commit', '-q', '-m', message);
}

const ROWS = [...IN_GIT, ...ON_DISK];

const CASES = ROWS.flatMap((row, index) =>
  PLACES.map((where, place) => ({ title: row[0], where, index, place, name: row[1], told: row[3][place] })),
);

type Case = (typeof CASES)[number];

beforeAll(() => {
  file('kind: shop\n')(join(shop, 'shop.yaml'), bare);
  file(LIMITS)(join(shop, 'targets/more.yaml'), bare);
  file(SESSION)(join(shop, 'targets/x.txt'), bare);
  file(SESSION)(join(shop, 'targets/sessions/x.yaml'), bare);
  file('notes\n')(join(shop, 'targets/notes.txt'), bare);
  file('')(join(shop, 'targets/pictures/x.jpg'), bare);
  symlinkSync('more.yaml', join(shop, 'targets/again.yaml'));
  file(LIMITS)(join(parent, 'outside/limits.yaml'), bare);
  IN_GIT.forEach(makeRow);
  git(shop, 'init', '-q', '--template=');
  commitAll(shop, 'All of them');
  for (const [index, row] of ON_DISK.entries()) makeRow(row, IN_GIT.length + index);
});

/** How a path is reported, and whether the engine that it bears on is judged. */
function toldIn({ diagnostics, findings, engines }: Json, { index, place, name }: Case) {
  const path = pathsOf(index, name)[place];
  const codes = [
    ...diagnostics.filter((each) => each.place.path === path).map(({ code }) => code),
    ...findings.filter((each) => each.place.path === path).map(({ code, severity }) => `${code} ${severity}`),
  ];
  const engine = engines.find((each) => each.path === engineOf(index, place));
  return { codes, judged: engine?.judged };
}

const CODES: Readonly<Record<Told, readonly string[]>> = {
  document: ['document/unread'],
  warning: ['file/unread warning'],
  remark: ['file/unread remark'],
  read: [],
  '-': [],
};

const expected = ({ told, index, place }: Case) => ({
  codes: CODES[told ?? '-'],
  judged: engineOf(index, place) === undefined ? undefined : told !== 'document',
});

const checked = async (...words: readonly string[]): Promise<Json> =>
  JSON.parse((await call(shop, ['check', '--format', 'json', ...words])).out) as Json;

describe('what looks like a document is read, or told with its weight', () => {
  let here: Promise<Json> | undefined;
  it.each(CASES)('$title, $where: $told', async (row) => {
    here ??= checked();
    expect(toldIn(await here, row)).toEqual(expected(row));
  });
});

describe('the same is reported of a commit', () => {
  let then: Promise<Json> | undefined;
  it.each(CASES.filter(({ index }) => index < IN_GIT.length))('$title, $where: $told', async (row) => {
    then ??= checked('--at', 'HEAD');
    expect(toldIn(await then, row)).toEqual(expected(row));
  });
});

describe('the reason', () => {
  const reasonOf = async (title: string): Promise<string | undefined> => {
    const index = ROWS.findIndex((row) => row[0] === title);
    const path = pathsOf(index, ROWS[index]?.[1] ?? '')[0];
    const { diagnostics, findings } = await checked(`in-${index}`);
    return [...diagnostics, ...findings].find((each) => each.place.path === path)?.message;
  };
  it.each([
    ['limits, in capitals', 'more.YAML is not read, since its name does not end in .yaml'],
    ['a session as text', 'x.txt is not read, since its name does not end in .yaml: rename it to x.yaml'],
    ['a session, hidden', '.x.yaml is not read, since its name begins with a dot: rename it to x.yaml'],
    [
      'a link out of the shop',
      'x.yaml is not read, since it is a link to `/etc/passwd`, and links are not followed: put the file itself there',
    ],
    ['a pipe', 'x.yaml is not read, since it is a pipe: put a file there, or give it another name'],
    [
      'an entry with a reading',
      '.x.part is not read, since it is an entry that was not finished, with 1 reading that no session has: tenths record goes on with it',
    ],
    [
      'a backup',
      'limits.yaml~ is not read, since it looks like what an editor leaves behind: delete it, or rename it to limits.yaml',
    ],
    [
      'a hidden folder of documents',
      '.old is not read, since folders of that name are not searched: move documents out of it',
    ],
  ])('of %s is reported', async (title, message) => {
    expect(await reasonOf(title)).toBe(message);
  });
});

describe('the exit code', () => {
  const exitOf = async (title: string, ...words: readonly string[]): Promise<number> => {
    const index = ROWS.findIndex((row) => row[0] === title);
    return (await call(shop, ['check', `in-${index}`, ...words])).exit;
  };
  it.each([
    ['limits, in capitals', 2, 2],
    ['a link to limits of the shop', 2, 2],
    ['a session, in capitals', 0, 1],
    ['an entry with a reading', 0, 1],
    ['a backup', 0, 0],
    ['text that says its kind further down', 0, 0],
  ])('of %s is %d, under --strict %d', async (title, plain, strict) => {
    expect([await exitOf(title), await exitOf(title, '--strict')]).toEqual([plain, strict]);
  });
});

describe('a file that a call names', () => {
  const indexOf = (title: string): number => ROWS.findIndex((row) => row[0] === title);
  const named = (title: string): string => {
    const index = indexOf(title);
    return pathsOf(index, ROWS[index]?.[1] ?? '')[0];
  };
  it.each([
    ['a session, in capitals', 'its name does not end in .yaml', true],
    ['a session, hidden', 'its name begins with a dot', true],
    ['a session as text', 'its name does not end in .yaml', true],
    ['what says no kind, as text', 'its name does not end in .yaml', true],
    ['limits as a picture', 'its name does not end in .yaml', false],
    ['a pipe', 'it is a pipe', false],
    ['a socket', 'it is a socket', false],
    ['an entry with a reading', 'it is an entry that was not finished', true],
    ['a backup', 'it looks like what an editor leaves behind', true],
  ])('%s is refused: %s', async (title, why, isInCommit) => {
    for (const at of isInCommit ? [[], ['--at', 'HEAD']] : [[]]) {
      const { out, err, exit } = await call(shop, ['check', named(title), ...at]);
      expect([exit, out]).toEqual([2, '']);
      expect(err).toContain(`is not read, since ${why}`);
    }
  });

  it.each([
    ['a link to a session of the shop', 'is a link, and links are not followed'],
    ['a link to nothing', 'is a link, and links are not followed'],
    ['a link to itself', 'is a link, and links are not followed'],
  ])('%s is refused', async (title, why) => {
    const { out, err, exit } = await call(shop, ['check', named(title)]);
    expect([exit, out]).toEqual([2, '']);
    expect(err).toContain(why);
  });

  it.each([
    ['a hidden folder of documents', '.old'],
    ['a folder of packages with documents', 'node_modules'],
  ])('in %s is refused, and so is the folder', async (title, folder) => {
    const path = named(title);
    for (const words of [[`${path}/x.yaml`], [path]]) {
      const { err, exit } = await call(shop, ['check', ...words]);
      expect(exit).toBe(2);
      expect(err).toContain(`it lies in ${folder}, and folders of that name are not searched`);
    }
  });

  it('and that says no kind is a problem, though it lies in no engine', async () => {
    file('name: x\n')(join(shop, 'out-0/notes.yaml'), bare);
    const { out, exit } = await call(shop, ['check', 'in-0', 'out-0/notes.yaml']);
    expect(exit).toBe(2);
    expect(out).toContain('out-0/notes.yaml:1:1: error document/kind: the file does not say what it is');
    expect((await call(shop, ['check', 'in-0', 'out-0'])).exit).toBe(0);
  });
});

describe('an engine whose document is not read', () => {
  it.each([
    ['misnamed', 'engine.YAML', file(ENGINE)],
    ['hidden', '.engine.yaml', file(ENGINE)],
    ['as text', 'engine.yaml.txt', file(ENGINE)],
    ['linked', 'engine.yaml', link('TARGETS/engine.txt')],
    ['linked from elsewhere', 'engine.yaml', link('/etc/passwd')],
    ['a folder', 'engine.yaml', made('mkdir')],
  ])('%s is an engine all the same, that is not judged: one problem', async (title, name, make) => {
    const folder = `unread ${title}`;
    file(ENGINE)(join(shop, 'targets/engine.txt'), bare);
    file(SESSION)(join(shop, folder, 'sessions/x.yaml'), bare);
    make(join(shop, folder, name), { targets: '../targets', outside: '' });
    for (const path of [folder, `${folder}/sessions`, `${folder}/sessions/x.yaml`]) {
      const { diagnostics, engines } = await checked(path);
      expect(engines).toMatchObject([{ path: folder, judged: false }]);
      expect(diagnostics.map(({ code, place }) => `${place.path} ${code}`)).toEqual([
        `${folder}/${name} document/unread`,
      ]);
    }
  });
});

describe('outside of a repository, and without a shop document', () => {
  const alone = join(parent, 'alone');
  it('the engine around a file is looked for above it', async () => {
    file(ENGINE)(join(alone, 'pump/engine.yaml'), bare);
    file(LIMITS)(join(alone, 'pump/limits.yaml'), bare);
    file(SESSION)(join(alone, 'pump/sessions/2026/x.yaml'), bare);
    for (const [folder, path] of [
      [alone, 'pump/sessions/2026/x.yaml'],
      [join(alone, 'pump/sessions/2026'), 'x.yaml'],
      [join(alone, 'pump/sessions/2026'), '.'],
    ] as const) {
      const { out, exit } = await call(folder, ['check', path]);
      expect([exit, out]).toEqual([
        0,
        expect.stringMatching(/rebuild 2026-02-03: 1 ok|^1 ok\nas rebuild 2026-02-03 leaves it$/m),
      ]);
    }
  });
});

describe('a shop document that is not read', () => {
  it('is where the shop begins all the same, on disk and in a commit: nothing above it serves an engine', async () => {
    const repository = join(parent, 'nested');
    file('kind: [broken\n')(join(repository, 'shop.yaml'), bare);
    file('kind: shop\n')(join(repository, 'below/Shop.YAML'), bare);
    file(ENGINE)(join(repository, 'below/pump/engine.yaml'), bare);
    const problemsOf = async (...words: readonly string[]) => {
      const { out } = await call(repository, ['check', 'below/pump', '--format', 'json', ...words]);
      const { engines, diagnostics } = JSON.parse(out) as Json;
      return [
        engines.map(({ judged }) => judged),
        diagnostics.map(({ place, code }) => `${place.path} ${code}`),
      ];
    };
    const told = [[false], ['below/Shop.YAML document/unread']];
    expect(await problemsOf()).toEqual(told);
    git(repository, 'init', '-q', '--template=');
    expect(await problemsOf()).toEqual(told);
    commitAll(repository, 'All');
    expect(await problemsOf('--at', 'HEAD')).toEqual(told);
  });
});

describe('since a revision', () => {
  it('tells what looks like a document and was not there then, of the engines that it bears on', async () => {
    const repository = join(parent, 'since');
    for (const folder of ['a', 'b']) {
      file(ENGINE)(join(repository, folder, 'engine.yaml'), bare);
      file(SESSION)(join(repository, folder, 'x.yaml'), bare);
      file(SESSION)(join(repository, folder, 'old.YAML'), bare);
    }
    git(repository, 'init', '-q', '--template=');
    commitAll(repository, 'First');
    const since = async (...words: readonly string[]) => {
      const { out } = await call(repository, ['check', '--format', 'json', ...words]);
      const { engines, diagnostics, findings } = JSON.parse(out) as Json;
      const paths = [...diagnostics, ...findings].map(({ place }) => place.path);
      return [engines.map(({ path, judged }) => `${path} ${judged}`), paths];
    };
    expect(await since('--since', 'HEAD')).toEqual([[], []]);
    file(SESSION)(join(repository, 'a/new.YAML'), bare);
    expect(await since('--since', 'HEAD')).toEqual([['a true'], ['a/new.YAML']]);
    file(LIMITS)(join(repository, 'limits.YAML'), bare);
    expect(await since('--since', 'HEAD')).toEqual([
      ['a false', 'b false'],
      ['limits.YAML', 'a/new.YAML'],
    ]);
    commitAll(repository, 'Second');
    expect(await since('--at', 'HEAD', '--since', 'HEAD~1')).toEqual([
      ['a false', 'b false'],
      ['limits.YAML', 'a/new.YAML'],
    ]);
    rmSync(join(repository, 'limits.YAML'));
    expect(await since('--since', 'HEAD')).toEqual([['a true', 'b true'], []]);
  });
});
