import { spawn } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { builtProgram, keepingCompiled } from '../../program.ts';
import { some } from '../../propertyRuns.ts';
import { keyedIn, typed } from '../attack/keyboard.ts';
import { benchFolder } from '../calling.ts';
import { ENGINE, INSTRUMENTS, LIMITS, SHOP } from '../fourCylinder.ts';
import { hasTerminal, pause, Terminal } from '../terminal.ts';

const bench = benchFolder();
const SESSIONS = 'engines/pump/sessions';
const SESSION = `${SESSIONS}/2026-02-03-teardown.yaml`;
const read = (path: string): string => readFileSync(join(bench.folder(), path), 'utf8');
const lines = (...all: readonly string[]): string => all.map((line) => `${line}\n`).join('');

const shopWith = (files: Readonly<Record<string, string>> = {}): void =>
  bench.put({
    'shop.yaml': SHOP,
    'instruments.yaml': INSTRUMENTS,
    'engines/pump/engine.yaml': ENGINE,
    'engines/pump/limits.yaml': LIMITS,
    ...files,
  });

const record = async (input: string, ...words: readonly string[]) => {
  const { exitCode, out, err } = await bench.pipe(input, 'record', '--date', '2026-02-03', ...words);
  return { status: exitCode, stdout: out, stderr: err };
};

/** What stands in a session, as the program itself reads it. */
async function writtenIn(path: string): Promise<Record<string, readonly string[]>> {
  const checked = await bench.call('check', path, '--format', 'json', '--judge-by', 'new');
  const { engines, diagnostics } = JSON.parse(checked.out);
  expect(diagnostics).toEqual([]);
  const rows: { measure: string; position: string; written: string[] }[] = engines[0].sessions[0].rows;
  return Object.fromEntries(
    rows
      .filter((row) => row.written.length > 0)
      .map((row) => [`${row.measure} ${row.position}`, row.written]),
  );
}

/** Four-decimal readings that differ from one another, some of them ending in 0. */
const readings = (count: number): readonly string[] =>
  Array.from({ length: count }, (_, index) => (3.2 + index * 0.0001).toFixed(4));

const MAINS = ['--stage', 'teardown', '--measure', 'main_journal_diameter'];

const manyPoints = (mains: number, stations: number): Readonly<Record<string, string>> => ({
  'shop.yaml': `${SHOP}grids: { main_journal: { stations: [${Array.from({ length: stations }, (_, i) => `s${i}`)}], directions: [throw, square] } }\n`,
  'engines/pump/engine.yaml': ENGINE.replace('mains: 5', `mains: ${mains}`).replace(/labels.*\n/, ''),
});

const digitsIn = (path: string): readonly string[] => read(path).match(/\d\.\d{4}/g) ?? [];

describe('readings through a pipe', () => {
  it('are written as a person would write them, and judged', async () => {
    shopWith();
    const result = await record(
      lines('0.009', '2.1', '0.008', '0.010', 's', '0.0090', '0.0030', '0.0045', 'n read at the wide end'),
      '--stage',
      'teardown',
      '--by',
      'RK',
    );
    expect(read(SESSION)).toBe(
      lines(
        '# yaml-language-server: $schema=../../../.tenths/schemas/session.json',
        'kind: session',
        'stage: teardown',
        'date: 2026-02-03',
        'by: RK',
        'readings:',
        '  - measure: crankshaft_end_play',
        '    with: dial',
        '    value: 0.009',
        '  - measure: turning_torque',
        '    with: beam-60',
        '    after:',
        '      - { step: as received, value: 2.1 }',
        '  - measure: rod_side_clearance',
        '    at:',
        '      1: 0.008',
        '      2: 0.010',
        '      4: 0.0090',
        '  - measure: main_bearing_clearance',
        '    with: strip-mid',
        '    at:',
        '      1: 0.0030',
        '      2: { value: 0.0045, note: read at the wide end }',
      ),
    );
    expect(result.stdout).toContain('teardown 2026-02-03:');
    expect(result.stderr).toContain(
      'line 8:    WORN  main bearing clearance 2: 0.0045 in, loose by 7 tenths',
    );
    expect(result.status).toBe(0);
    expect(readdirSync(join(bench.folder(), SESSIONS))).toEqual(['2026-02-03-teardown.yaml']);
  });

  it('a great many of them are stored as typed', async () => {
    const typed = readings(some(1000, 30));
    shopWith(manyPoints(typed.length / 10, 5));
    const { status } = await record(lines(...typed), ...MAINS);
    expect(status).toBe(1);
    expect(digitsIn(SESSION)).toEqual(typed);
  });

  it('end at a line that is neither reading nor command, so that none lands one place off', async () => {
    shopWith();
    const result = await record(lines('3.2478', '3.2477', 'E-02', '3.2476'), ...MAINS);
    expect(result.status).toBe(2);
    expect(result.stderr).toContain('line 3: E-02 is neither a reading nor a command');
    expect(result.stderr).toContain('2 readings are kept');
    expect(existsSync(join(bench.folder(), SESSION))).toBe(false);
    expect((await record(lines('3.2476', 'finish'), '--session', '2026-02-03-teardown')).stderr).toContain(
      'there is no session',
    );
    const again = await record(lines('3.2476', 'finish'), ...MAINS);
    expect(again.stderr).toContain('was cut off: 2 readings are here');
    expect(digitsIn(SESSION)).toEqual(['3.2478', '3.2477', '3.2476']);
  });

  it('of a day alone go on where an entry of that day was cut off, and of no other', async () => {
    shopWith();
    const cut = await record(lines('3.2478', 'E-02'), ...MAINS);
    expect(cut.stderr).toContain('To go on:\n  tenths record pump');
    const otherDay = await record('', '--date', '2026-02-04', 'pump');
    expect(otherDay.stderr).toContain('there is no session of 2026-02-04 yet');
    const again = await record(lines('3.2476', 'finish'), 'pump');
    expect(again.stderr).toContain('was cut off: 1 reading is here');
    expect(digitsIn(SESSION)).toEqual(['3.2478', '3.2476']);
  });

  it('come into the sessions of an engine that is the root of its shop', async () => {
    bench.put({ 'engine.yaml': ENGINE + SHOP.replace(/kind.*\n/, ''), 'limits.yaml': LIMITS });
    expect((await record(lines('3.2478', 'finish'), ...MAINS)).status).toBe(0);
    expect(digitsIn('sessions/2026-02-03-teardown.yaml')).toEqual(['3.2478']);
  });

  it.each([
    ['back replaces the reading before', ['3.2478', 'back', '3.2479'], ['3.2479']],
    [
      'a note stays where a reading is put right',
      ['3.2478', 'n at 0.0010 depth', 'back', '3.2479'],
      ['3.2479', '0.0010'],
    ],
    ['a second try of one place keeps both', ['3.2478', 'r', '3.2479'], ['3.2478', '3.2479']],
    ['the last three digits stand for the whole', ['478', '481'], ['3.2478', '3.2481']],
    ['zeros and signs of a gauge go', ['+003.2478', ' 3.2480 '], ['3.2478', '3.2480']],
    ['a decimal comma is a point', ['3,2478'], ['3.2478']],
    ['position 3 may come first', ['at 3', '3.2478'], ['3.2478']],
  ])('%s', async (_, typed, stored) => {
    shopWith();
    await record(lines(...typed), ...MAINS);
    expect(digitsIn(SESSION)).toEqual(stored);
  });

  it('in deviations from a master are kept as deviations', async () => {
    shopWith();
    await record(
      lines('z 3.2500 tenths', '+7', '05', '-3'),
      '--stage',
      'teardown',
      '--measure',
      'main_bearing_bore',
    );
    expect(read(SESSION)).toContain(
      '    set_to: 3.2500\n    in: tenths\n    at:\n      1: +7\n      2: 05\n      3: -3\n',
    );
    const checked = JSON.parse((await bench.call('check', '--format', 'json')).out);
    const [first] = checked.engines[0].state.rows;
    expect(first).toMatchObject({ measure: 'main_bearing_bore', position: '1', mean: 3.2507 });
  });

  it.each([
    ['32478', 'SLIP?  main journal diameter 1 (front): 3.2478? written 32478: the decimal point left out'],
    ['82.499', 'SLIP?  main journal diameter 1 (front): 82.499 mm? written 82.499'],
    ['4.2478', 'SLIP?  main journal diameter 1 (front): 3.2478? written 4.2478'],
    ['3.2460', 'WORN'],
    ['3.24781', ''],
  ])('that say %s are kept, with a word', async (typed, word) => {
    shopWith({
      'engines/pump/limits.yaml': LIMITS.replace(
        '{ new: 3.2475 to 3.2485 }',
        '{ new: 3.2475 to 3.2485, wear: { min: 3.2455 } }',
      ),
    });
    const result = await record(lines(typed), ...MAINS);
    expect(result.stderr).toContain(word);
    expect(read(SESSION)).toContain(`[[${typed}, ~]`);
  });

  it.each([
    ['78', 'could be several numbers'],
    ['3.2478 lbf ft', 'lbf ft is a unit of torque, and this is a length'],
    ['3.2478 furlong', 'furlong is not a unit known here'],
    ['0.004 to 0.003', 'the second number is not greater than the first'],
    ['w mic-9', 'mic-9 is not in the register'],
    ['n lost', 'no reading was typed before this place'],
    ['at 9', 'there is no 9 here: 1, 2, 3, 4, 5'],
  ])('cannot be %j, and it is said why', async (typed, why) => {
    shopWith();
    const result = await record(lines(typed), ...MAINS);
    expect(result.stderr).toContain(`line 1: `);
    expect(result.stderr).toContain(why);
    expect(result.status).toBe(2);
  });

  it('that a session has already are not asked for, and it is said where they are put right', async () => {
    shopWith();
    await record(
      lines('0.008', '0.009', 's', '0.010'),
      '--stage',
      'teardown',
      '--measure',
      'rod_side_clearance',
    );
    const { stderr } = await record(lines('at 1'), '--measure', 'rod_side_clearance');
    expect(stderr).toContain('1 is not asked for here, only 3: correct what is in the session in its file');
  });

  it('are spoken of once: what one brought about is not said again of those beside it', async () => {
    shopWith({
      'engines/pump/limits.yaml': LIMITS.replace(
        '3.2475 to 3.2485 }',
        '3.2475 to 3.2485, wear: { min: 3.2465 } }',
      ),
    });
    const { stderr } = await record(lines('3.2460', '3.2461', '3.2468', '3.2468', '2.3478'), ...MAINS);
    expect(stderr.match(/^line \d+: +\S+/gm)).toEqual([
      'line 1:    OUT',
      'line 2:    OUT',
      'line 5:    SLIP?',
    ]);
  });

  it('fill the open places of an existing session, and change nothing else of it', async () => {
    shopWith();
    await bench.call('new', 'session', '--stage', 'teardown', '--date', '2026-02-03');
    const before = read(SESSION).replace('value: ~', 'value: 0.009   # by hand');
    bench.put({ [SESSION]: before });
    await record(
      lines('2.1', 'n stiff at first', '0.008', 's', '0.010', 'n a note: with # and ,', '0.009', '0.0030'),
    );
    const after = read(SESSION);
    expect(after).toContain('- { step: as received, value: 2.1, note: stiff at first }');
    expect(after).toContain(
      '      1: 0.008\n      2: ~\n      3: { value: 0.010, note: "a note: with # and ," }\n      4: 0.009\n',
    );
    const comments = (text: string) => text.match(/#.*/g);
    expect(comments(after.replace('"a note: with # and ,"', ''))).toEqual(comments(before));
    expect(after.split('\n')).toHaveLength(before.split('\n').length);
    expect((await writtenIn(SESSION))['rod_side_clearance 4']).toEqual(['0.009']);
  });

  it('state the setting of a block that waits empty', async () => {
    shopWith();
    await bench.call(
      'new',
      'session',
      '--stage',
      'machined',
      '--date',
      '2026-02-03',
      '--measure',
      'main_bearing_bore',
    );
    await record(lines('z 3.2500 tenths', '+7', '+9'), '--measure', 'main_bearing_bore');
    const text = read(`${SESSIONS}/2026-02-03-machined.yaml`);
    expect(text).toContain('      1: +7\n      2: +9\n      3: ~\n');
    expect(text).toContain('    set_to: 3.2500\n    in: tenths\n');
    expect(await bench.call('check')).toMatchObject({ exitCode: 0 });
  });

  it.each([
    ['    base: 3.24\n    in: tenths\n', ['78', '81'], '3.2478'],
    ['    base: 3.24\n', ['0.0078', '.0081'], '3.2478'],
    ['    in: thou\n', ['3247.8', '3248.1'], '3.2478'],
    ['    set_to: 3.2500\n    in: tenths\n', ['-22', '-19'], '3.2478'],
  ])('fill a block whose numbers count otherwise: %j', async (setting, typed, means) => {
    const block = `readings:\n  - measure: main_bearing_bore\n${setting}    at:\n`;
    const head = 'kind: session\nstage: machined\ndate: 2026-02-03\n';
    const session = `${SESSIONS}/2026-02-03-machined.yaml`;
    shopWith({ [session]: `${head}${block}      1: ~   # tight\n      2: ~\n` });
    const result = await record(lines(...typed), '--measure', 'main_bearing_bore');
    expect(result.stderr).not.toContain('SLIP');
    expect(read(session)).toContain(`${head}${block}      1: ${typed[0]}   # tight\n      2: ${typed[1]}\n`);
    const checked = JSON.parse((await bench.call('check', '--format', 'json')).out);
    expect(checked.engines[0].state.rows[0]).toMatchObject({ position: '1', mean: Number(means) });
  });

  it('show what was read last time and say nothing of it to a pipe', async () => {
    shopWith();
    expect(await record('', ...MAINS)).toMatchObject({
      status: 0,
      stdout: '',
      stderr: '\nNo reading was taken.\n',
    });
    expect(readdirSync(join(bench.folder(), SESSIONS))).toEqual([]);
  });

  it.each([
    [['--stage', 'sometime'], 'Allowed choices'],
    [[], 'there is no session of 2026-02-03 yet'],
    [['crane', '--stage', 'teardown'], 'unknown engine crane'],
    [['--session', 'nothing'], 'there is no session nothing'],
  ])('are not asked for by %j', async (words, why) => {
    shopWith();
    const result = await record('1\n', ...words);
    expect(result).toMatchObject({ status: 2, stdout: '' });
    expect(result.stderr).toContain(why);
    expect(result.stderr).not.toContain('    at ');
  });

  it('are not asked for where their session could not be written', async () => {
    shopWith({ [SESSIONS]: 'a file\n' });
    const result = await record('1\n', '--stage', 'teardown');
    expect(result).toMatchObject({ status: 2, stdout: '' });
    expect(result.stderr).toContain('engines/pump/sessions is a file, and a folder is wanted there');
  });

  it('need a unit before the first is asked for', async () => {
    shopWith({
      'shop.yaml': 'kind: shop\nunits: { torque: lbf ft }\n',
      'engines/pump/limits.yaml': LIMITS.replace(/0\.0/g, '0.0').replace(
        /limits:[\s\S]*/,
        'limits: { turning_torque: { new: { max: 9 } } }\n',
      ),
      'engines/pump/engine.yaml': ENGINE.replace(/sizes.*\n/, ''),
    });
    const result = await record('1\n', '--stage', 'teardown', '--measure', 'crankshaft_end_play');
    expect(result.stderr).toContain('no document states the unit in which a length is typed');
  });
});

describe('an entry that is killed', () => {
  /** Kills once so many were answered; what was answered with a further prompt must be there. */
  async function killed(
    signal: NodeJS.Signals,
    answers: number,
  ): Promise<{ acknowledged: number; kept: number }> {
    const child = spawn(process.execPath, [builtProgram(), 'record', '--date', '2026-02-03', ...MAINS], {
      cwd: bench.folder(),
      env: { ...process.env, ...keepingCompiled() },
    });
    let err = '';
    const answered = () => new Set(err.match(/^line \d+:/gm)).size;
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      err += text;
      if (answered() >= answers) child.kill(signal);
    });
    const ended = new Promise((resolve) => child.on('close', resolve));
    // Each of these readings is spoken of once it is on the disk, so what was said is what was acknowledged.
    const typed = readings(some(100, 30)).map((_, index) => (3.3 + index * 0.0001).toFixed(4));
    const feeding = (async () => {
      for (const reading of typed) {
        if (child.exitCode !== null || child.signalCode !== null) return;
        child.stdin.write(`${reading}\n`);
        await pause(2);
      }
    })();
    child.stdin.on('error', () => {});
    await Promise.all([ended, feeding]);
    const part = join(bench.folder(), SESSIONS, '.2026-02-03-teardown.part');
    const kept = existsSync(part)
      ? readFileSync(part, 'utf8')
          .split('\n')
          .filter((line) => line.includes('"take"')).length
      : 0;
    return { acknowledged: answered(), kept };
  }

  it.each<[NodeJS.Signals, number]>([
    ['SIGKILL', 1],
    ['SIGINT', 5],
    ['SIGTERM', some(40, 12)],
  ])('by %s loses no reading that was acknowledged, and goes on', async (signal, answers) => {
    shopWith({
      ...manyPoints(some(20, 6), 5),
      'engines/pump/limits.yaml': LIMITS.replace(
        '{ new: 3.2475 to 3.2485 }',
        '{ new: 3.2475 to 3.2485, wear: { max: 3.29 } }',
      ),
    });
    const { acknowledged, kept } = await killed(signal, answers);
    expect(acknowledged).toBeGreaterThanOrEqual(answers);
    expect(kept).toBeGreaterThanOrEqual(acknowledged);
    const again = await record(lines('3.2999', 'finish'), ...MAINS);
    expect(again.stderr).not.toContain('tenths:');
    expect(again.status).not.toBe(2);
    expect(digitsIn(SESSION)).toHaveLength(kept + 1);
    expect(readdirSync(join(bench.folder(), SESSIONS))).toEqual(['2026-02-03-teardown.yaml']);
  });

  it('drops the line that a power cut tore, and says so', async () => {
    shopWith();
    await record(lines('3.2478', '3.2477', '!'), ...MAINS);
    const part = `${SESSIONS}/.2026-02-03-teardown.part`;
    bench.put({ [part]: `${read(part)}{"do":"take","at":2,"te` });
    const again = await record(lines('3.2476', '3.2475'), ...MAINS);
    expect(again.stderr).toContain('2 readings are here; 1 line cut short by that');
    expect(digitsIn(SESSION)).toEqual(['3.2478', '3.2477', '3.2476', '3.2475']);
  });
});

// Node opens no terminal by itself; `script` comes with util-linux and is on nearly every Linux.
const COUNT = some(40, 12);

describe.skipIf(!hasTerminal)('readings typed at a terminal', () => {
  it.each(Array.from({ length: some(4, 1) }, (_, index) => index + 1))(
    'at one character a millisecond without a gap are all stored as typed, run %i',
    async (run) => {
      shopWith(manyPoints(COUNT / 4, 2));
      const typed = readings(COUNT);
      const terminal = new Terminal(bench.folder(), ['record', '--date', `2026-02-0${run}`, ...MAINS]);
      await terminal.see('> ');
      await terminal.type(typed.map((reading) => `${reading}\r`).join(''));
      await terminal.see(`${COUNT} of ${COUNT} taken`);
      terminal.send('finish\r');
      expect(await terminal.ended()).not.toBe(2);
      expect(digitsIn(`${SESSIONS}/2026-02-0${run}-teardown.yaml`)).toEqual(typed);
    },
  );

  it('that were pasted before the first prompt are stored as well', async () => {
    shopWith(manyPoints(COUNT / 4, 2));
    const typed = readings(COUNT);
    const terminal = new Terminal(bench.folder(), ['record', '--date', '2026-02-03', ...MAINS]);
    terminal.send(typed.map((reading) => `${reading}\r`).join(''));
    await terminal.see(`${COUNT} of ${COUNT} taken`);
    terminal.send('finish\r');
    await terminal.ended();
    expect(digitsIn(SESSION)).toEqual(typed);
  });

  it('may follow the answer to where the job stands at once', async () => {
    shopWith(manyPoints(COUNT / 4, 2));
    const typed = readings(COUNT);
    const words = ['record', '--date', '2026-02-03', '--measure', MAINS.at(-1) ?? ''];
    const terminal = new Terminal(bench.folder(), words);
    await terminal.see('1  teardown');
    terminal.send(`9\r1\r${typed.map((reading) => `${reading}\r`).join('')}`);
    await terminal.see(`${COUNT} of ${COUNT} taken`);
    expect(terminal.shown).toContain('one of the five, or Ctrl-C to leave');
    terminal.send('finish\r');
    await terminal.ended();
    expect(digitsIn(SESSION)).toEqual(typed);
  });

  it.each([
    ['new session', 'rebuild\r', 0, ['2026-02-03-rebuild.yaml']],
    ['new session', '\u0003', 130, undefined],
    ['record', '\u0003', 130, undefined],
  ])('begin with a question where the job stands: %s %j', async (command, keys, exitCode, files) => {
    shopWith();
    const words = [...command.split(' '), '--date', '2026-02-03'];
    const { exitCode: ended, text } = await keyedIn(keys, words, bench.folder(), 80);
    expect(text).toContain('number or name > ');
    expect(ended).toBe(exitCode);
    const folder = join(bench.folder(), SESSIONS);
    expect(existsSync(folder) ? readdirSync(folder) : undefined).toEqual(files);
  });

  it('are asked for with band and last reading, commented with a bell, and kept at Ctrl-C', async () => {
    shopWith();
    await record(lines('0.009'), '--stage', 'service', '--measure', 'crankshaft_end_play');
    const terminal = new Terminal(bench.folder(), ['record', '--date', '2026-02-04', '--stage', 'teardown']);
    await terminal.see('  [new 0.006 to 0.013, wear max 0.018; last 0.009] > ');
    terminal.send('0.019\r');
    await terminal.see('\u0007    OUT  crankshaft end play: 0.019 in, loose by 1 thou');
    terminal.send('\u0003');
    expect(await terminal.ended()).toBe(130);
    expect(terminal.shown).toContain('1 reading is kept');
  });

  it.each([0, 20])('fit a window of %i columns without a stack trace', async (columns) => {
    shopWith();
    const words = ['record', '--date', '2026-02-03', '--stage', 'teardown'];
    const { text } = await typed(['0.009', 'finish'], words, bench.folder(), columns);
    expect(text).not.toContain('    at ');
    expect(read(SESSION)).toContain('value: 0.009');
  });
});

describe('places that are left out on purpose', () => {
  const OF = ['--stage', 'teardown', '--measure', 'rod_side_clearance,crankpin_diameter'];

  it('have their reason in the session, are not missing there, and are not asked for again', async () => {
    shopWith();
    await record(lines('0.008', 's rod seized', '0.010', 's', 'ss pins are at the grinder'), ...OF);
    expect(read(SESSION)).toContain('2: { value: ~, note: rod seized }');
    expect(read(SESSION).match(/value: ~, note: pins are at the grinder/g)).not.toBeNull();
    const { out } = await bench.call('check', SESSION, '--judge-by', 'new');
    expect(out).toContain('(rod seized)');
    expect(out).toContain('(pins are at the grinder)');
    const again = await record(lines('at 2'), '--measure', 'rod_side_clearance');
    expect(again.stderr).toContain('2 is not asked for here, only 4');
  });

  it('survive an entry that was cut off, and give way to a reading that is taken after all', async () => {
    shopWith();
    const cut = await record(lines('0.008', 's rod seized', '0.0x'), ...OF);
    expect(cut.status).toBe(2);
    await record(lines('back', '0.009', '0.010'), '--date', '2026-02-03', ...OF);
    expect(await writtenIn(SESSION)).toEqual({
      'rod_side_clearance 1': ['0.008'],
      'rod_side_clearance 2': ['0.009'],
      'rod_side_clearance 3': ['0.010'],
    });
    expect(read(SESSION)).not.toContain('rod seized');
  });

  it.each([
    [['0.008', 'back', 's rod seized'], '1 has a reading: n REASON notes something of it'],
    [['s \u0007'], 'it holds a control character'],
  ])('cannot be %j', async (typed, why) => {
    shopWith();
    const { stderr, status } = await record(lines(...typed), ...OF);
    expect(stderr).toContain(why);
    expect(status).toBe(2);
  });
});

describe('a characteristic that is left out as a whole', () => {
  it('stands nowhere in the session, and no place of it is missing', async () => {
    shopWith();
    const of = ['--stage', 'teardown', '--measure', 'crankpin_diameter,main_journal_diameter'];
    await record(lines('ss', '3.2478'), ...of);
    expect(await writtenIn(SESSION)).toEqual({ 'main_journal_diameter 1': ['3.2478'] });
    expect(read(SESSION)).not.toContain('crankpin_diameter');
    const { out } = await bench.call('check', SESSION, '--format', 'json', '--judge-by', 'new');
    const findings: readonly { code: string; measure: string }[] =
      JSON.parse(out).engines[0].sessions[0].findings;
    const missing = findings.filter(({ code }) => code === 'reading/missing').map(({ measure }) => measure);
    expect(new Set(missing)).toEqual(new Set(['main_journal_diameter']));
  });
});
