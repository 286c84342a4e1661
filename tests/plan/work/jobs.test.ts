import { describe, expect, it } from 'vitest';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../src/plan/work/jobTitle.ts';
import { ENGINE, type Files, limitsOf, REGISTER, sessionOf } from '../../shopOf.ts';
import { contextOf, jobCalled, jobsIn } from '../planOf.ts';

const MAINS = 'main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 }, last_size: 2.9680 }';

const shop = (
  limits: string,
  blocks: string,
  more: { readonly session?: string; readonly files?: Files; readonly plan?: string } = {},
): Files => ({
  'shop.yaml': `kind: shop\nunits: { length: in }\n${more.plan ?? ''}`,
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(limits),
  'e/session.yaml': sessionOf('teardown', blocks, more.session),
  ...more.files,
});

/** Read twice: one that is far from the others might be a slip. */
const journals = (third: string): string =>
  [1, 2]
    .map(() => `- { measure: main_journal_diameter, with: mic, at: { 1: 2.9985, 2: 2.9983, 3: ${third} } }`)
    .join('\n');

const stepOf = (files: Files): unknown => {
  const choice = jobCalled('grind main journals', files).cut?.groups[0]?.deciding.choice;
  return choice?.kind === 'step' ? choice.step.name : choice?.kind;
};

describe('a crankshaft whose journal is out', () => {
  it('is ground at every main to the step that the worst one needs', () => {
    const job = jobCalled('grind main journals', shop(MAINS, journals('2.9880')));
    expect(job.cut?.groups.map(({ places }) => places.map(({ position }) => position.name))).toEqual([
      ['1', '2', '3'],
    ]);
    expect(job.follows).toContain('bearings of that undersize');
    expect(stepOf(shop(MAINS, journals('2.9880')))).toBe('0.020 under');
  });

  it('is ground at that main alone where the shop says so', () => {
    const left = journals('2.9880').replaceAll('1: 2.9985', '1: ~');
    const files = shop(MAINS, left, { plan: 'plan: { separate: [main journals] }\n' });
    const job = jobCalled('grind main journals', files);
    expect(job.cut?.groups.map(({ deciding }) => deciding.position.name)).toEqual(['3']);
    expect(job.cut?.unmeasured).toEqual([]);
  });

  it.each([
    ['needs the farther step', '2.9880', '2.9895', ''],
    ['has less left over at the same step', '2.9892', '2.9895', ''],
    [
      'is scored, nobody knows how deep',
      '2.9960',
      '2.9880',
      'found: [{ on: main N, is: scored, do: machine }]\n',
    ],
  ])('goes by the journal that %s, wherever it is', (_, worse, other, found) => {
    for (const [at, first, third] of [['1', worse, other] as const, ['3', other, worse] as const]) {
      const blocks = `- { measure: main_journal_diameter, with: mic, at: { 1: ${first}, 2: 2.9983, 3: ${third} } }`;
      const files = shop(MAINS, blocks, { session: found.replace('N', at) });
      const job = jobCalled('grind main journals', files);
      expect(job.cut?.groups.map(({ deciding }) => deciding.position.name)).toEqual([at]);
    }
  });

  it('goes by the sizes that its shells are sold in, where limits print those', () => {
    const sizes =
      'main_shell_thickness: { new: 0.1245 to 0.1250, sizes: { 0.030 under: { new: 0.1395 to 0.1400 } } }';
    expect(stepOf(shop(`${MAINS}\n${sizes}`, journals('2.9960')))).toBe('0.030 under');
  });

  it('needs more where it runs out', () => {
    const bent = (tir: string): string =>
      `${journals('2.9892')}\n- { measure: crankshaft_runout, with: dial, supported_on: [1], at: { 2: 0.001, 3: ${tir} } }`;
    expect(stepOf(shop(MAINS, bent('0.0000')))).toBe('0.010 under');
    expect(stepOf(shop(MAINS, bent('0.0010')))).toBe('0.020 under');
  });

  it('needs more where it is scored, and proves no step where nobody knows how deep', () => {
    const scored = (depth: string): string => `found: [{ on: main 3, is: scored, do: machine${depth} }]\n`;
    const files = (depth: string): Files => shop(MAINS, journals('2.9960'), { session: scored(depth) });
    expect(stepOf(files(', depth: 0.0020'))).toBe('0.010 under');
    expect(stepOf(files(', depth: 0.0040'))).toBe('0.020 under');
    expect(stepOf(files(''))).toBe('not provable');
  });

  it('is renewed beyond its last size, whatever steps there are', () => {
    expect(stepOf(shop(MAINS, journals('2.9700')))).toBe('0.030 under');
    expect(jobsIn(shop(MAINS, journals('2.9680'))).map(({ name }) => name)).toEqual(['renew crankshaft']);
  });
});

describe('the order of work', () => {
  it('cleans and tests before it cuts, and washes last', () => {
    const names = jobsIn(shop(MAINS, journals('2.9880'))).map(({ name }) => name);
    expect(names).toEqual([
      'clean crankshaft',
      'crack test crankshaft',
      'grind main journals',
      'wash crankshaft',
    ]);
  });

  it('asks for nothing where all is inside', () => {
    expect(jobsIn(shop(MAINS, journals('2.9984')))).toEqual([]);
  });
});

describe('what was seen', () => {
  const cracked = 'found: [{ on: crankshaft, is: cracked at pin 2, do: renew }]\n';

  it('and is to be renewed is in the plan until the part is another one', () => {
    expect(jobsIn(shop(MAINS, journals('2.9984'), { session: cracked })).map(({ name }) => name)).toEqual([
      'renew crankshaft',
    ]);
    const later = 'kind: session\nstage: machined\ndate: 2026-03-01\nreplaced: [{ part: crankshaft }]\n';
    const files = shop(MAINS, journals('2.9984'), { session: cracked, files: { 'e/later.yaml': later } });
    expect(jobsIn(files).map(({ name }) => name)).toEqual(['measure']);
  });
});

describe('what was seen asks for', () => {
  it.each([
    ['decide about head', '{ on: head, is: cracked }'],
    ['decide about head', '{ on: head, is: cracked, do: hold }'],
    ['machine cylinder head', '{ on: head, is: warped, do: machine }'],
    ['renew cylinder head', '{ on: head, is: cracked, do: renew }'],
    ['renew oil pump', '{ on: oil pump, is: gears scored, do: renew }'],
  ])('%s where it says %s', (name, seen) => {
    const names = jobsIn(shop(MAINS, journals('2.9984'), { session: `found: [${seen}]\n` })).map(
      (job) => job.name,
    );
    expect(names).toEqual([name]);
  });

  it('nothing where it is to be used again', () => {
    const seen = 'found: [{ on: head, is: stained, do: reuse }]\n';
    expect(jobsIn(shop(MAINS, journals('2.9984'), { session: seen }))).toEqual([]);
  });
});

describe('what is undecided', () => {
  const clearance = 'main_bearing_clearance: { new: 0.0010 to 0.0020, wear: { max: 0.0030 } }';
  const guarded = (more: string, register: string): Files => ({
    ...shop(clearance, more),
    'shop.yaml': 'kind: shop\nunits: { length: in }\ndecision_rule: guarded\n',
    'register.yaml': register,
  });
  const strip =
    '- { measure: main_bearing_clearance, with: strip, at: { 1: 0.0026, 2: 0.0015, 3: 0.0015 } }\n';
  const sizes = '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9985 } }\n';

  it('is measured again with what the register has and decides it', () => {
    const bore = 'main_bearing_bore: { new: 3.0000 to 3.0020 }';
    const files = { ...guarded(strip + sizes, REGISTER), 'e/limits.yaml': limitsOf(`${clearance}\n${bore}`) };
    const job = jobCalled('measure again', files);
    expect(job.deciders[0]?.instruments).toContain('fine');
  });

  it('names nothing where nothing registered does', () => {
    const job = jobCalled(
      'measure again',
      guarded(strip, REGISTER.replace(/^ {2}(?:mic|bore|fine).*\n/gm, '')),
    );
    expect(job.deciders[0]).toBeUndefined();
  });
});

describe('a fit', () => {
  const clearance = 'main_bearing_clearance: { new: 0.0010 to 0.0020, wear: { max: 0.0030 } }';
  const loose =
    '- { measure: main_bearing_clearance, with: fine, at: { 1: 0.0025, 2: 0.0015, 3: 0.0041 } }\n';

  it('that is loose asks for other shells', () => {
    expect(
      jobCalled('choose main shells', shop(clearance, loose)).rows.map(({ position }) => position.name),
    ).toEqual(['1', '3']);
  });

  it('over a journal that is ground anyway comes with that', () => {
    const names = jobsIn(shop(`${MAINS}\n${clearance}`, `${loose}${journals('2.9880')}`)).map(
      ({ name }) => name,
    );
    expect(names).not.toContain('choose main shells');
  });
});

describe('what brings a figure back goes by what it is of', () => {
  it.each([
    [
      'straighten crankshaft',
      'crankshaft_runout: { wear: { max: 0.0010 } }',
      '{ measure: crankshaft_runout, supported_on: [1, 3], at: { 2: 0.0020 } }',
    ],
    [
      'choose thrust washer',
      'crankshaft_end_play: { new: 0.004 to 0.010 }',
      '{ measure: crankshaft_end_play, value: 0.020 }',
    ],
    [
      'renew rings',
      'ring_end_gap: { wear: { max: 0.030 } }',
      '{ measure: ring_end_gap, at: { 1: { top: 0.040 } } }',
    ],
    [
      'line bore main housings',
      'main_housing_bore: { new: 3.2500 to 3.2510 }',
      '{ measure: main_housing_bore, with: fine, at: { 1: 3.2530, 2: 3.2505, 3: 3.2505 } }',
    ],
    [
      'resize rod housings',
      'rod_housing_bore: { new: 3.0000 to 3.0010 }',
      '{ measure: rod_housing_bore, with: fine, at: { 1: 3.0030, 2: 3.0005, 3: 3.0005, 4: 3.0005 } }',
    ],
    [
      'find the cause of compression pressure',
      'compression_pressure: { wear: { min: 300 psi } }',
      '{ measure: compression_pressure, at: { 1: 200 psi, 2: 310 psi, 3: 310 psi, 4: 310 psi } }',
    ],
    [
      'renew pistons',
      'piston_diameter: { wear: { min: 3.8700 } }',
      '{ measure: piston_diameter, with: mic, at: { 1: 3.8690, 2: 3.8710, 3: 3.8710, 4: 3.8710 } }',
    ],
  ])('%s', (name, limits, block) => {
    expect(jobsIn(shop(limits, `- ${block}`)).map((job) => job.name)).toContain(name);
  });
});

describe('a cylinder that is worn', () => {
  const worn = (more = ''): Files =>
    shop(
      'cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }',
      `- { measure: cylinder_bore, with: bore, at: { 1: [4.1340, 4.1255] }, directions: [thrust, axial] }${more}`,
    );
  const reachOf = (files: Files) => {
    const place = jobCalled('bore cylinders', files).cut?.groups[0]?.deciding;
    return place?.terms.map(({ words, times }) => `${times} ${words}`).slice(0, 2);
  };

  it('is taken to have worn to one side alone, until somebody reads how far it lies off its old centre', () => {
    expect(reachOf(worn())).toEqual(['2 largest reading', '-1 smallest reading, as if never worn']);
    const read = worn('\n- { measure: cylinder_centre_offset, at: { 1: 0.0010 } }');
    expect(reachOf(read)).toEqual(['1 largest reading', '2 off its old centre']);
  });
});

it.each([
  ['[piston 1, piston 2, piston 3]', 'renew pistons 1 to 3'],
  ['[piston 1, piston 2]', 'renew pistons 1, 2'],
  ['[piston, piston 2]', 'renew piston 2'],
  ['[pistons, piston 2]', 'renew pistons'],
  ['[piston 1, crankshaft]', 'renew piston 1'],
  ['piston', 'renew pistons'],
])('a job on %s is titled %s', (on, title) => {
  const files = shop(MAINS, journals('2.9985'), {
    session: `found: [{ on: ${on}, is: cracked, do: renew }]\n`,
  });
  const context = contextOf(files);
  const job = jobsOf(context).find(({ name }) => name === 'renew pistons');
  expect(job && titleOf(job, context.engine.document)).toBe(title);
});

it('nothing is line bored of a block that is renewed, and what was out is said there', () => {
  const blocks = '- { measure: main_bore_alignment, at: { 1: 0.0010, 2: 0.0030, 3: 0.0010 } }';
  const files = shop('main_bore_alignment: { wear: { max: 0.0020 } }', blocks, {
    session: 'found: [{ on: block, is: cracked, do: renew }]\n',
  });
  expect(jobsIn(files).map(({ name, rows }) => [name, rows.length])).toEqual([['renew block', 1]]);
});
