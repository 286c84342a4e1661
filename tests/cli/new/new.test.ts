import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { benchFolder } from '../calling.ts';
import { ENGINE, LIMITS, SHOP } from '../fourCylinder.ts';
import { hasTerminal, Terminal } from '../terminal.ts';

const bench = benchFolder();
const read = (path: string): string => readFileSync(join(bench.folder(), path), 'utf8');
const SESSION = 'engines/pump/sessions/2026-02-03-teardown.yaml';

const shopWith = (files: Readonly<Record<string, string>>): void =>
  bench.put({
    'shop.yaml': SHOP,
    'engines/pump/engine.yaml': ENGINE,
    'engines/pump/limits.yaml': LIMITS,
    ...files,
  });

describe('a new engine', () => {
  it.each([
    [['Pump'], 'layout: { cylinders: 4, mains: 5, crankpins: 4 }'],
    [
      ['Ridge 8', '--cylinders', '8', '--mains', '5', '--crankpins', '4', '--rods', '1 5, 2 6, 3 7, 4 8'],
      'layout: { cylinders: 8, mains: 5, crankpins: { 1: [1, 5], 2: [2, 6], 3: [3, 7], 4: [4, 8] } }',
    ],
    [
      ['Ridge 4', '--mains', '3', '--rods', '1L 1R, 2L 2R'],
      'layout: { mains: 3, crankpins: { 1: [1L, 1R], 2: [2L, 2R] } }',
    ],
    [
      ['Ridge 6', '--mains', '4', '--rods', '1 2 3,4 5 6'],
      'layout: { cylinders: 6, mains: 4, crankpins: { 1: [1, 2, 3], 2: [4, 5, 6] } }',
    ],
    [['Single', '--cylinders', '1', '--mains', '2'], 'layout: { cylinders: 1, mains: 2, crankpins: 1 }'],
    [['Überholung: 3 # x'], 'name: "Überholung: 3 # x"'],
  ])('%j is sound as it is', async (words, expected) => {
    bench.put({ 'shop.yaml': SHOP });
    expect(await bench.call('new', 'engine', ...words)).toMatchObject({ exitCode: 0, err: '' });
    const checked = await bench.call('check', '--format', 'json');
    expect(checked.exitCode).toBe(0);
    const { engines } = JSON.parse(checked.out);
    expect(engines).toHaveLength(1);
    expect(read(`${engines[0].path}/engine.yaml`)).toContain(expected);
  });

  it('offers what nearly every overhaul measures as limits that can be filled in', async () => {
    bench.put({ 'shop.yaml': SHOP });
    await bench.call('new', 'engine', 'Pump');
    const filled = read('engines/pump/limits.yaml')
      .replace('limits: {}', 'limits:')
      .replace(/^# {3}([a-z_]+: \{.*)$/gm, '  $1')
      .replaceAll('… to …', '1 to 2')
      .replaceAll('max: …', 'max: 1');
    expect(filled.match(/^ {2}[a-z_]+: \{/gm)?.length).toBeGreaterThan(30);
    bench.put({ 'engines/pump/limits.yaml': filled });
    expect(await bench.call('check')).toMatchObject({ exitCode: 0 });
  });

  it.each([
    [
      ['--cylinders', '8', '--mains', '5', '--crankpins', '4'],
      '8 cylinders on 4 crankpins, and which rods run on each is not stated',
      'add them pin by pin as the maker numbers them, such as --rods "1 5, 2 6, 3 7, 4 8"',
    ],
    [
      ['--cylinders', '8', '--rods', '1 5, 2 6, 3 7, 4'],
      '7 rods are on the pins, and there are 8 cylinders',
      undefined,
    ],
    [['--crankpins', '3', '--rods', '1 3, 2 4'], 'rods are given for 2 pins, and there are 3', undefined],
    [['--rods', '1 3, 2 1'], 'rod 1 is on two pins', undefined],
    [['--rods', '1 3,, 2 4'], 'no rod is on pin 2', undefined],
    [['--cylinders', '2', '--crankpins', '4'], '4 crankpins for 2 cylinders', undefined],
  ])('with %j is refused', async (words, message, help) => {
    bench.put({ 'shop.yaml': SHOP });
    const called = await bench.call('new', 'engine', 'Ridge 8', ...words);
    expect(called).toMatchObject({ exitCode: 2, out: '' });
    expect(called.err).toContain(message);
    if (help !== undefined) expect(called.err).toContain(help);
  });

  it('of a metric shop has metric examples, as its sequences and mappings have', async () => {
    bench.put({ 'shop.yaml': SHOP.replace('length: in', 'length: mm'), 'x.csv': 'Cyl;Top\n1;100,02\n' });
    await bench.call('new', 'engine', 'Pump', '--mains', '3');
    await bench.call('new', 'torque', 'main-caps', '--passes', '40');
    await bench.call('import', 'x.csv', '--new-map', 'x');
    expect(read('engines/pump/engine.yaml')).toContain('bore: 103.00');
    expect(read('engines/pump/limits.yaml')).toContain('at: { 3: { new: 0.058 to 0.087 } }');
    expect(read('engines/pump/torque/main-caps.yaml')).toMatch(/M14 x 2[\s\S]+min: 0\.31/);
    expect(read('imports/x.yaml')).toMatch(/delimiter: semicolon[\s\S]+decimal: comma[\s\S]+unit: mm/);
  });

  it('is made as each example of its help says', async () => {
    const { out } = await bench.call('new', 'engine', '--help');
    const examples = out.match(/tenths new engine "[^"]*"(?: --\S+ (?:"[^"]*"|\S+))*/g) ?? [];
    expect(examples.length).toBeGreaterThan(1);
    for (const example of examples) {
      bench.put({ 'shop.yaml': SHOP });
      const words = (example.match(/"[^"]*"|\S+/g) ?? []).slice(1).map((word) => word.replaceAll('"', ''));
      expect(await bench.call(...words), example).toMatchObject({ exitCode: 0, err: '' });
    }
    expect(await bench.call('check')).toMatchObject({ exitCode: 0 });
  });

  it('outside a shop says where it was made and what is missing there, and in a shop does not', async () => {
    const made = await bench.call('new', 'engine', 'Pump');
    expect(made.out).toContain(
      `\n\nNo shop.yaml is here or above: the engine was made below ${bench.folder()}, and plain numbers need a unit each.\nNext:\n  tenths init . `,
    );
    await bench.call('init', '--no-git');
    expect((await bench.call('new', 'engine', 'Mill')).out).toMatch(/limits\.yaml\n\nNext:\n {2}edit /);
  });

  it('is not made where one stands', async () => {
    shopWith({});
    const called = await bench.call('new', 'engine', 'Pump');
    expect(called.exitCode).toBe(2);
    expect(called.err).toContain('engines/pump/engine.yaml is there already');
    expect(read('engines/pump/engine.yaml')).toBe(ENGINE);
  });
});

describe.skipIf(!hasTerminal)('a new engine with fewer pins than cylinders, at a terminal', () => {
  it('asks for the rods on each pin until they are all there', async () => {
    bench.put({ 'shop.yaml': SHOP });
    const terminal = new Terminal(bench.folder(), [
      'new',
      'engine',
      'Ridge',
      '--mains',
      '3',
      '--crankpins',
      '2',
    ]);
    await terminal.see('crankpin 1 > ');
    terminal.send('1 3\r');
    await terminal.see('crankpin 2 > ');
    terminal.send('3\r');
    await terminal.see('rod 3 is on a pin already');
    terminal.send('2\r');
    await terminal.see('3 rods, and there are 4 cylinders: once more from crankpin 1');
    terminal.send('1 2\r');
    await terminal.seeTimes('crankpin 2 > ', 3);
    terminal.send('3 4\r');
    expect(await terminal.ended()).toBe(0);
    expect(read('engines/ridge/engine.yaml')).toContain(
      'layout: { cylinders: 4, mains: 3, crankpins: { 1: [1, 2], 2: [3, 4] } }',
    );
  });
});

describe('a new session', () => {
  it('lists every position that the limits name, in the order of the bench, and is sound as it is', async () => {
    shopWith({});
    const made = await bench.call(
      'new',
      'session',
      '--stage',
      'teardown',
      '--date',
      '2026-02-03',
      '--by',
      'RK',
    );
    expect(made).toMatchObject({ exitCode: 0, err: '' });
    const text = read(SESSION);
    const measures = [...text.matchAll(/measure: (\w+)/g)].map(([, id]) => id);
    expect(measures).toEqual([
      'crankshaft_end_play',
      'turning_torque',
      'rod_side_clearance',
      'main_bearing_clearance',
      'cylinder_bore',
      'crankpin_diameter',
      'main_journal_diameter',
    ]);
    expect(text).toContain('by: RK');
    expect(text).toContain(
      '    stations: [front, rear]\n    directions: [throw, square]\n    at:\n      1: [[~, ~], [~, ~]]',
    );
    expect(text).toContain('# main bearing clearance: new 0.0020 to 0.0038, wear max 0.0050');
    expect(await bench.call('check')).toMatchObject({ exitCode: 0 });
  });

  it.each([
    ['one cylinder', '{ cylinders: 1, mains: 2, crankpins: 1 }', 2],
    [
      'named positions',
      '{ cylinders: [1L, 1R, 2L, 2R], mains: [a, b, c], crankpins: { 1: [1L, 1R], 2: [2L, 2R] } }',
      3,
    ],
    [
      'names that look like something else',
      '{ cylinders: ["01", "0x1"], mains: ["no", "1E5", "~"], crankpins: 2 }',
      3,
    ],
  ])('is sound for an engine with %s', async (_, layout, mains) => {
    shopWith({ 'engines/pump/engine.yaml': ENGINE.replace(/layout: .*\nlabels: .*/, `layout: ${layout}`) });
    await bench.call('new', 'session', '--stage', 'rebuild', '--date', '2026-02-03');
    const checked = await bench.call('check', '--format', 'json');
    const { diagnostics, engines } = JSON.parse(checked.out);
    expect(diagnostics).toEqual([]);
    expect(engines[0].state.run).toHaveLength(1);
    const text = read('engines/pump/sessions/2026-02-03-rebuild.yaml');
    const [block = ''] = text
      .split(/^ *- measure: /m)
      .filter((each) => each.startsWith('main_bearing_clearance'));
    expect(block.match(/: ~$/gm)).toHaveLength(mains);
  });

  it('names only position 3 where the limits name no other', async () => {
    const limits =
      'kind: limits\nsource: x\nlimits: { crankshaft_runout: { at: { 3: { wear: { max: 0.003 } } } } }\n';
    shopWith({ 'engines/pump/limits.yaml': limits });
    await bench.call('new', 'session', '--stage', 'teardown', '--date', '2026-02-03');
    expect(read(SESSION)).toContain('at:\n      3: ~\n');
    expect(read(SESSION)).not.toContain('      1: ~');
  });

  it('goes over a part as the shop says, and does not repeat it', async () => {
    const grids = 'grids: { main_journal: { stations: [a, b, c], directions: [throw, square] } }\n';
    shopWith({ 'shop.yaml': SHOP + grids });
    await bench.call('new', 'session', '--stage', 'teardown', '--date', '2026-02-03');
    expect(read(SESSION)).toContain(
      'measure: main_journal_diameter\n    at:\n      1: [[~, ~], [~, ~], [~, ~]]',
    );
    expect(await bench.call('check')).toMatchObject({ exitCode: 0 });
  });

  it('turns the engine as received at teardown, and after each piston at a rebuild', async () => {
    shopWith({});
    await bench.call('new', 'session', '--stage', 'teardown', '--date', '2026-02-03');
    await bench.call('new', 'session', '--stage', 'rebuild', '--date', '2026-02-03');
    expect(read(SESSION)).toContain('- { step: as received, value: ~ }');
    expect(read('engines/pump/sessions/2026-02-03-rebuild.yaml')).toMatch(
      /step: crankshaft, .*\n.*step: piston 1, .*\n.*step: piston 2, .*\n.*step: piston 3, .*\n.*step: piston 4, /,
    );
  });

  it('takes the characteristics that are asked for', async () => {
    shopWith({});
    const ids = 'piston_diameter,cylinder_bore';
    await bench.call('new', 'session', '--stage', 'machined', '--date', '2026-02-03', '--measure', ids);
    const text = read('engines/pump/sessions/2026-02-03-machined.yaml');
    expect([...text.matchAll(/measure: (\w+)/g)].map(([, id]) => id)).toEqual([
      'cylinder_bore',
      'piston_diameter',
    ]);
  });

  it('prints as a blank sheet no wider than paper, and writes nothing', async () => {
    shopWith({});
    const sheet = await bench.call(
      'new',
      'session',
      '--stage',
      'teardown',
      '--date',
      '2026-02-03',
      '--sheet',
    );
    expect(sheet.exitCode).toBe(0);
    expect(sheet.out).toContain('crankshaft end play, in   new 0.006 to 0.013, wear max 0.018');
    expect(sheet.out).toMatch(/ {2}5 flywheel end +_{9}/);
    expect(Math.max(...sheet.out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(96);
    expect(() => read(SESSION)).toThrow();
  });

  it.each([
    [['--stage', 'sometime'], 'Allowed choices'],
    [[], 'add --stage and one of teardown, machined'],
    [['--sheet'], 'the stage of the job is not stated'],
    [['--stage', 'teardown', '--date', '2026-02-30'], '2026-02-30 is not a date'],
    [['other', '--stage', 'teardown'], 'unknown engine other'],
    [['--stage', 'teardown', '--measure', 'main_journal'], 'unknown characteristic main_journal'],
    [['--stage', 'teardown', '--measure', 'main_journal_taper'], 'is worked out and not read'],
  ])('refuses %j with exit code 2 and a way on', async (words, message) => {
    shopWith({});
    const called = await bench.call('new', 'session', ...words);
    expect(called.exitCode).toBe(2);
    expect(called.out).toBe('');
    expect(called.err).toContain(message);
  });

  it('is refused while a document that it stands on is not sound', async () => {
    shopWith({
      'engines/pump/limits.yaml': LIMITS.replace('main_bearing_clearance', 'main_bearing_clearence'),
    });
    const called = await bench.call('new', 'session', '--stage', 'teardown');
    expect(called.exitCode).toBe(2);
    expect(called.err).toContain('did you mean main_bearing_clearance');
  });

  it('asks which engine where there are several', async () => {
    shopWith({ 'engines/crane/engine.yaml': ENGINE });
    const called = await bench.call('new', 'session', '--stage', 'teardown');
    expect(called.err).toContain('this folder may be any of several engines: engines/crane, engines/pump');
    expect(await bench.call('new', 'session', 'cra', '--stage', 'teardown')).toMatchObject({ exitCode: 0 });
  });
});

describe('a new tightening sequence', () => {
  it('names two fasteners a main cap and is sound as it is', async () => {
    shopWith({});
    expect(await bench.call('new', 'torque', 'main-caps', '--passes', '40,80,110')).toMatchObject({
      exitCode: 0,
    });
    const text = read('engines/pump/torque/main-caps.yaml');
    expect(text).toContain('names: [1L, 1R, 2L, 2R, 3L, 3R, 4L, 4R, 5L, 5R]');
    expect(text).toContain('passes: [{ to: 40 }, { to: 80 }, { to: 110 }]');
    expect(await bench.call('check')).toMatchObject({ exitCode: 0 });
  });

  it('leaves it to whoever knows the head how its fasteners are called, of a vee as well', async () => {
    const vee = ENGINE.replace('cylinders: 4', 'cylinders: 4, banks: { L: [1, 2], R: [3, 4] }');
    expect(vee).not.toBe(ENGINE);
    shopWith({ 'engines/pump/engine.yaml': vee });
    for (const joint of ['cylinder-head', 'head-l']) {
      expect(await bench.call('new', 'torque', joint, '--passes', '40,80')).toMatchObject({ exitCode: 0 });
      const text = read(`engines/pump/torque/${joint}.yaml`);
      expect(text).toContain('names: [1, 2, 3, 4]');
      expect(text).toContain('gasket the right way up');
    }
  });

  it("is refused without torques, which are the maker's to state", async () => {
    shopWith({});
    expect(await bench.call('new', 'torque', 'main-caps')).toMatchObject({ exitCode: 2 });
    const called = await bench.call('new', 'torque', 'main-caps', '--passes', '40,hand tight');
    expect(called.err).toContain('hand tight is not a torque');
  });
});
