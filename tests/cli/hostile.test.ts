import { describe, expect, it } from 'vitest';
import { once } from '../../src/checks/once.ts';
import { runHere } from '../line.ts';
import { quoted, type Ran, runLine } from '../program.ts';
import { atTheBench } from './bench.ts';

const KIB = 1024;
const HEAD = 'kind: session\nstage: teardown\ndate: 2026-02-03\n';
const READINGS = `${HEAD}readings:\n  - measure: main_journal_diameter\n    with: mic-3-4\n    at:\n`;

/** A list that names the one before it nine times, seven deep: a few hundred bytes that would be a billion words. */
const LAUGHS = `${['a: &a [ha, ha]', ...[...'bcdefghi'].map((name, i) => `${name}: &${name} [${Array(9).fill(`*${'abcdefgh'[i]}`).join(', ')}]`)].join('\n')}\n`;

const many = (count: number, line: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => line(index)).join('');

const bytes = (...parts: readonly (string | readonly number[])[]): Uint8Array =>
  Buffer.concat(parts.map((part) => Buffer.from(part as string)));

/** What stands in a file beside sound ones, and the codes that its diagnostics may have. */
const HOSTILE: readonly (readonly [title: string, content: string | Uint8Array, codes: RegExp])[] = [
  ['nothing', '', /kind/],
  ['a line end alone', '\n', /kind/],
  ['no YAML at all', '{]}%@`\n', /yaml/],
  ['a bracket that is never closed', `${HEAD}readings: [`, /yaml/],
  ['a billion laughs', LAUGHS, /alias/],
  ['a list that holds itself', `${HEAD}note: &a [*a]\n`, /alias/],
  ['sixteen thousand anchors', many(16_000, (i) => `- &a${i} x\n- *a${i}\n`), /too-big/],
  ['anchors as many as fit', many(9_000, (i) => `- &a${i} x\n- *a${i}\n`), /too-big|alias/],
  ['forty thousand keys', many(40_000, (i) => `key${i}: 1\n`), /too-big/],
  ['keys as many as fit', many(18_000, (i) => `key${i}: 1\n`), /too-big|unknown-key|kind/],
  ['brackets that close nothing', '- ]\n'.repeat(64 * KIB - 1), /too-big|yaml/],
  ['a quarter of a million brackets', '['.repeat(256 * KIB), /too-big|depth|yaml/],
  ['a line of a quarter of a million letters', `note: ${'x'.repeat(255 * KIB)}\n`, /kind|type|missing-key/],
  ['a megabyte', `${HEAD}note: ${'x'.repeat(KIB * KIB)}\n`, /too-big/],
  ['a list of numbers as long as fits', `a:\n${many(20_000, (i) => `- 0.${i}\n`)}`, /too-big|kind/],
  ['lists nine hundred deep', `${HEAD}note: ${'['.repeat(900)}${']'.repeat(900)}\n`, /depth|yaml/],
  ['maps nine hundred deep', many(900, (i) => `${' '.repeat(i)}a:\n`), /depth|yaml|too-big/],
  ['two documents', `${HEAD}readings: []\n---\n${HEAD}`, /yaml/],
  ['text after the end of a document', `${HEAD}...\nmore: 1\n`, /yaml/],
  ['a key twice', `${HEAD}note: a\nnote: b\n`, /duplicate-key/],
  ['a key twice, escaped', `${HEAD}note: a\n"\\u006eote": b\n`, /duplicate-key/],
  [
    'a position twice, as number and as text',
    `${READINGS}      1: 3.2478\n      "1": 3.2479\n`,
    /duplicate-key/,
  ],
  [
    'a key twice, composed in two ways',
    `kind: engine\nname: a\nlayout: { mains: ["\u00e9"] }\nlabels: { main: { "\u00e9": a, "e\u0301": b } }\n`,
    /duplicate-key/,
  ],
  ['__proto__ as a key', `${HEAD}__proto__: { judged: true }\n`, /key|unknown-key/],
  ['constructor as a key', `${HEAD}constructor: { prototype: { judged: true } }\n`, /key|unknown-key/],
  ['__proto__ as a position', `${READINGS}      __proto__: 3.2478\n`, /key|unknown-position/],
  [
    'toString as a measure',
    `${HEAD}readings:\n  - measure: toString\n    value: 1\n`,
    /unknown-measure|value/,
  ],
  [
    'constructor as a measure',
    `${HEAD}readings:\n  - measure: constructor\n    value: 1\n`,
    /unknown-measure/,
  ],
  ['toString as a kind', 'kind: toString\n', /kind/],
  ['a merge key', `${HEAD}<<: { note: a }\n`, /key|unknown-key/],
  ['YAML 1.1', `%YAML 1.1\n---\n${HEAD}`, /directive/],
  ['a tag of a program', `${HEAD}note: !!js/function "function () {}"\n`, /tag/],
  ['a tag that makes bytes', `${HEAD}note: !!binary aGVsbG8=\n`, /tag/],
  ['a tag that makes a set', `${HEAD}note: !!set { a, b }\n`, /tag/],
  ['a list as a key', `${HEAD}? [a, b]\n: 1\n`, /key/],
  ['a byte order mark inside', `${HEAD}\ufeffnote: a\n`, /control-character|key|yaml/],
  ['UTF-16', bytes([0xff, 0xfe], [...Buffer.from(HEAD, 'utf16le')]), /encoding/],
  ['UTF-16 without a mark', Buffer.from(HEAD, 'utf16le'), /encoding/],
  ['Latin-1', bytes(`${HEAD}note: 10 `, [0xb5], 'm\n'), /encoding/],
  ['half a character of UTF-8', bytes(`${HEAD}note: `, [0xe2, 0x82], '\n'), /encoding/],
  ['a zero byte', bytes(`${HEAD}note: a`, [0], 'b\n'), /control-character/],
  ['nothing but zero bytes', new Uint8Array(4096), /control-character|encoding/],
  ['an escape', `${HEAD}note: "\u001b[31mred"\n`, /control-character/],
  ['an escape, escaped', `${HEAD}note: "\\e[31mred"\n`, /control-character/],
  ['an escape in a key', `${HEAD}"\u001b]52;c;aGk=\u0007": a\n`, /control-character/],
  ['a bell in a measure', `${HEAD}readings:\n  - measure: "\\a"\n    value: 1\n`, /control-character/],
  ['a carriage return alone', `${HEAD}note: "a\rb"\n`, /control-character|yaml/],
  ['half a pair of surrogates', `${HEAD}note: "\\ud800"\n`, /control-character/],
  ['a line separator', `${HEAD}note: a\u2028b\n`, /control-character/],
  [
    'writing from right to left, in a key',
    `${HEAD}"\u202etnemtsevni": a\n`,
    /control-character|unknown-key|key/,
  ],
  ['an unknown key that commands a log', `${HEAD}"::error file=a::b": a\n`, /unknown-key|key/],
  ...['012', '0o14', '0x1F', '1e400', '12345678901234567890', '.inf', '.nan', '1_000', '0b1', '1e-9'].map(
    (number) =>
      [
        `${number} as a reading`,
        `${READINGS}      1: ${number}\n`,
        /scalar|value|number-as-text|type/,
      ] as const,
  ),
  [
    'a reading with three hundred digits',
    `${READINGS}      1: 3.${'3'.repeat(300)}\n`,
    /scalar|too-fine|value/,
  ],
];

/** In a child that may hold 256 MB and compute for thirty seconds, however busy the machine is. */
const checked = (files: Readonly<Record<string, string | Uint8Array>>): Promise<Ran> =>
  atTheBench(files, (cwd) =>
    runLine('ulimit -t 30; tenths check', { cwd, env: { NODE_OPTIONS: '--max-old-space-size=256' } }),
  );

function expectRefused({ stdout, stderr, exitCode }: Ran, path: string, codes: RegExp): void {
  expect(stderr).toBe('');
  expect(exitCode).toBe(2);
  const told = [...stdout.matchAll(/^([\w/.-]+):\d+:\d+: error document\/([a-z-]+): ./gm)];
  const own = told.filter(([, at]) => at === path).map(([, , code]) => code);
  expect(own).toEqual(expect.arrayContaining([expect.stringMatching(codes)]));
  // Alone it is reported in full, among others in a line.
  expect(stdout).toMatch(
    /^(Sound pump: 2 ok|Sound pump {2}sound\n.*\n\n2 ok\nas teardown 2026-02-03 leaves it)$/m,
  );
  expect(stdout).not.toMatch(/^ +at /m);
  expect(controlsIn(stdout)).toEqual([]);
}

/** The large ones share a child, so that one that took too much would end the others, and so do the small ones. */
const isLarge = (content: string | Uint8Array): boolean => content.length > 16 * KIB;

describe.each([
  ['large', HOSTILE.filter(([, content]) => isLarge(content))],
  ['small', HOSTILE.filter(([, content]) => !isLarge(content))],
])('beside a sound engine, a %s file that holds', (_, files) => {
  const engine = 'kind: engine\nname: Hostile pump\nlayout: { mains: 1 }\n';
  const ran = once(() =>
    checked(
      Object.fromEntries(
        files.flatMap(([, content], index) => [
          [`hostile-${index}/engine.yaml`, engine],
          [`hostile-${index}/hostile.yaml`, content],
        ]),
      ),
    ),
  );

  it.each(files.map(([title, , codes], index) => [title, index, codes] as const))(
    '%s is refused with its place, and the sound engine is judged',
    async (_title, index, codes) => {
      expectRefused(await ran(), `hostile-${index}/hostile.yaml`, codes);
    },
  );
});

/** Characters that a terminal would obey instead of showing; line ends are the program's own. */
const controlsIn = (text: string): readonly string[] => [
  ...(text.match(/[\0-\x09\x0b-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufffe\uffff]/g) ??
    []),
];

describe('a file that is none', () => {
  it.each([
    ['a pipe that nobody writes to', 'mkfifo worn/hostile.yaml', '1 error, 2 warnings'],
    ['a link out of the shop', 'ln -s /etc/passwd worn/hostile.yaml', '1 error, 2 warnings'],
    ['a link to a folder above', 'ln -s .. worn/again', '1 error, 1 warning'],
    ['a link to itself', 'ln -s hostile.yaml worn/hostile.yaml', '1 error, 2 warnings'],
    ['a folder', 'mkdir worn/hostile.yaml', '1 error, 2 warnings'],
  ])('%s is passed by, and holds nothing up', async (_, command, told) => {
    // Whoever waited for a pipe would hold up all tests that follow.
    const run = command.startsWith('mkfifo') ? runLine : runHere;
    const ran = await atTheBench({}, (cwd) => run(`${command} && tenths check`, { cwd }));
    expect(ran.exitCode).toBe(1);
    expect(ran.stderr).toBe('');
    expect(ran.stdout).toMatch(new RegExp(`^2 engines, 2 sessions: ${told}(?:, \\d+ remarks?)?$`, 'm'));
    expect(ran.stdout).not.toContain('root:');
  });

  it('a file of twenty gigabytes, nearly all hole, is refused at once', async () => {
    const ran = await atTheBench({}, (cwd) =>
      runLine('truncate -s 20G worn/hostile.yaml && ulimit -t 10 && tenths check', { cwd }),
    );
    expect(ran.exitCode).toBe(2);
    expect(ran.stdout).toContain('worn/hostile.yaml:1:1: error document/too-big: ');
    expect(ran.stdout).toContain('Sound pump: 2 ok\n');
  });

  it.each([
    ['../../etc/passwd', /leads out of the shop/],
    ['/etc/passwd', /is absolute/],
    ['../.git/config', /\.git/],
    ['../link.yaml', /link/],
  ])('a limits document does not extend %s', async (path, words) => {
    const limits = `kind: limits\nsource: Invented.\nextends: ${path}\n`;
    const ran = await atTheBench({ 'worn/limits.yaml': limits }, (cwd) =>
      runHere('ln -s /etc/passwd link.yaml && tenths check', { cwd }),
    );
    expect(ran.exitCode).toBe(2);
    expect(ran.stdout).toMatch(/^worn\/limits\.yaml:3:10: error document\/(?:extends|value): /m);
    expect(ran.stdout).toMatch(words);
    expect(ran.stdout).not.toContain('root:');
  });
});

describe('a name that a CI log would obey', () => {
  it.each(['::error file=a::b', '  ::stop-commands::x', '##[command]x'])(
    'never begins a line: %s',
    async (name) => {
      const engine = `kind: engine\nname: ${JSON.stringify(name)}\nlayout: { mains: [${JSON.stringify(name)}] }\n`;
      const session = `${READINGS}      ${JSON.stringify(name)}: 3.2478\n`;
      const files = { 'named/engine.yaml': engine, 'named/session.yaml': session };
      const { stdout } = await atTheBench(files, (cwd) => runHere('tenths check named', { cwd }));
      expect(stdout).toContain(name.trim().slice(2));
      expect(stdout).not.toMatch(/^ *(?:::|##\[)/m);
    },
  );
});

describe('words of a call that a terminal would obey', () => {
  it.each([
    'check \u001b[31m',
    'check --session \u001b[31m',
    '\u001b[31m',
    'check --\u001b[31m',
    'explain \u001b[31m',
  ])('are shown and not obeyed: %j', async (words) => {
    const line = `tenths ${words.split(' ').map(quoted).join(' ')}`;
    const ran = await atTheBench({}, (cwd) => runHere(line, { cwd }));
    expect(ran.exitCode).toBe(2);
    expect(ran.stdout).toBe('');
    expect(ran.stderr).toContain('\\u{1b}[31m');
    expect(controlsIn(ran.stderr)).toEqual([]);
  });
});
