import { describe, expect, it } from 'vitest';
import { closingOf, mayClose } from '../../../src/plan/closing/closing.ts';
import { engineIn, type Files, limitsOf, refusalsOf, reportOf } from '../../shopOf.ts';

const JOINT = (joint: string): string =>
  `kind: torque\njoint: ${joint}\nfasteners: { names: [1, 2] }\norder: [1, 2]\nsource: Invented.\npasses: [{ to: 15 lbf ft }]\n`;

const SPREAD = 'at: { 1: 0.012, 2: 0.012, 3: 0.022, 4: 0.012, 5: 0.012, 6: 0.012 }';

/** Two joints tightened with a wrench that is too large for them, and one side clearance apart from its like. */
const files = (accepted: string, later = ''): Files => ({
  'e/engine.yaml': engineIn('in').replace(/layout: .*/, 'layout: { cylinders: 6, mains: 2, crankpins: 6 }'),
  'e/limits.yaml': limitsOf('rod_side_clearance: { new: 0.005 to 0.030 }'),
  'e/register.yaml': `kind: instruments
instruments:
  beam: { type: torque wrench, range: { from: 0 lbf ft, to: 150 lbf ft }, resolution: 1 lbf ft, max_error: 4 % }
  feeler: { type: feeler gauge, resolution: 0.001 in, max_error: 0.0003 in }
`,
  'e/caps.yaml': JOINT('main caps'),
  'e/rods.yaml': JOINT('rod bolts'),
  'e/1.yaml': `kind: session
stage: rebuild
date: 2026-03-01
readings: [{ measure: rod_side_clearance, with: feeler, ${SPREAD} }]
tightened:
  - { sequence: caps, with: beam, fasteners: new, passes: [{ to: 15 lbf ft }] }
  - { sequence: rods, with: beam, fasteners: new, passes: [{ to: 15 lbf ft }] }
${accepted}
`,
  'e/2.yaml': `kind: session\nstage: rebuild\ndate: 2026-03-02\nreadings: []\n${later}\n`,
});

const ENTRY = (warning: string, of: string): string =>
  `{ warning: ${warning}, of: ${of}, by: RK, reason: none turned at 20 }`;
const accepting = (...entries: readonly string[]): string => `accepted: [${entries.join(', ')}]`;

/** The warnings of the state, by code and first words. */
const warnings = (shop: Files): readonly string[] =>
  (reportOf(shop).state?.findings ?? [])
    .filter(({ severity }) => severity === 'warning')
    .map(({ code, message }) => `${code} ${message.split(':')[0]}`);

const CAPS = 'torque/wrench main caps';
const RODS = 'torque/wrench rod bolts';
const APART = 'reading/spread rod side clearance 3';
const ONE = ENTRY('torque/wrench', 'rod bolts');

describe('a warning that somebody accepts by name, with a reason', () => {
  it.each<[string, string, string, readonly string[]]>([
    ['none: all stay', '', '', [APART, CAPS, RODS]],
    ['one of two joints', accepting(ONE), '', [APART, CAPS]],
    ['in a later session', '', accepting(ONE), [APART, CAPS]],
    ['in other letters', accepting(ENTRY('torque/wrench', 'Rod  Bolts')), '', [APART, CAPS]],
    ['at its position', accepting(ENTRY('reading/spread', 'rod side clearance 3')), '', [CAPS, RODS]],
    [
      'all of them',
      accepting(ONE, ENTRY('torque/wrench', 'main caps'), ENTRY('reading/spread', 'rod side clearance 3')),
      '',
      [],
    ],
  ])('%s', (_, first, later, left) => expect(warnings(files(first, later)).toSorted()).toEqual(left));

  it('stays to be seen, with who accepted it and why', () => {
    const found = reportOf(files('', accepting(ONE))).state?.findings.find(({ isAccepted }) => isAccepted);
    expect(found?.severity).toBe('remark');
    expect(found?.message).toMatch(
      /^rod bolts: beam was used .*; accepted by RK \(rebuild 2026-03-02\): none turned at 20$/,
    );
  });

  it('is a remark of its own session too', () => {
    const [first] = reportOf(files('', accepting(ONE))).sessions;
    expect(
      first?.findings.filter(({ code }) => code === 'torque/wrench').map(({ severity }) => severity),
    ).toEqual(['warning', 'remark']);
  });

  it('does not keep the engine open', () => {
    const closing = (shop: Files) => {
      const report = reportOf(shop);
      if (report.state === undefined) throw new Error('no state');
      return closingOf(report, report.state);
    };
    const all = accepting(
      ONE,
      ENTRY('torque/wrench', 'main caps'),
      ENTRY('reading/spread', 'rod side clearance 3'),
    );
    expect(mayClose(closing(files('')))).toBe(false);
    expect(mayClose(closing(files(all)))).toBe(true);
    expect(closing(files(all)).accepted).toHaveLength(3);
  });
});

describe('what accepts nothing says so, and leaves every warning', () => {
  const unused = (entry: string): readonly string[] => {
    const { findings = [] } = reportOf(files(accepting(entry))).state ?? {};
    expect(
      findings.filter(({ code, severity }) => code === 'torque/wrench' && severity === 'warning'),
    ).toHaveLength(2);
    return findings.filter(({ code }) => code === 'concession/unused').map(({ message }) => message);
  };

  it.each([
    ['a joint that is spelt otherwise', 'torque/wrench', 'rod bolt', 'did you mean rod bolts?'],
    [
      'a joint that has no such warning',
      'torque/wrench',
      'cylinder head',
      'that warning is about main caps, rod bolts',
    ],
    ['all positions at once', 'reading/spread', 'rod side clearance', 'did you mean rod side clearance 3?'],
    ['a warning that nobody made', 'torque/lubricant', 'rod bolts', 'there is no such warning'],
    ['a code that is spelt otherwise', 'torque/wrensh', 'rod bolts', 'did you mean torque/wrench?'],
    [
      'what is out',
      'reading/out',
      'rod side clearance 3',
      'a warning with this code cannot be accepted; tenths explain says what to do about it',
    ],
  ])('%s', (_, warning, of, why) => {
    expect(unused(ENTRY(warning, of))).toEqual([`${warning} of ${of} is accepted in vain: ${why}`]);
  });

  it('unless an earlier session of the run was warned of it', () => {
    const later = `${accepting(ENTRY('reading/spread', 'rod side clearance 3'))}\nreplaced: [{ part: rods }]`;
    const { findings = [] } = reportOf(files('', later)).state ?? {};
    expect(findings.filter(({ code }) => code === 'concession/unused')).toEqual([]);
  });

  it.each(['by: RK', 'reason: none turned at 20', 'of: rod bolts'])('without %s it is refused', (key) => {
    const entry = ONE.replace(new RegExp(`, ${key}`), '');
    expect(refusalsOf(files(accepting(entry)))).toHaveLength(1);
  });
});
