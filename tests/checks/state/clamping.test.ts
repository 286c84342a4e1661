import { describe, expect, it } from 'vitest';
import { ENGINE, type Files, limitsOf, reportOf } from '../../shopOf.ts';

const CAPS = (torque: string): string =>
  `kind: torque\njoint: main caps\nfasteners: { names: [1, 2, 3, 4] }\nsource: Invented.\npasses: [{ to: 30 lbf ft }, { to: ${torque} lbf ft }]\n`;

const BORES = 'readings: [{ measure: main_bearing_bore, at: { 1: 3.0013, 2: 3.0013 } }]';
const JOURNALS = 'readings: [{ measure: main_journal_diameter, at: { 1: 2.9985, 2: 2.9984 } }]';

/** Bores read at the trial with what it says, then another session. */
const engine = (trial: string, later: string, more: Files = {}): Files => ({
  'e/engine.yaml': ENGINE,
  'e/caps.yaml': CAPS('90'),
  'e/1.yaml': `kind: session\nstage: trial\ndate: 2026-03-01\n${BORES}\n${trial}\n`,
  'e/2.yaml': `kind: session\nstage: rebuild\ndate: 2026-03-02\n${JOURNALS}\n${later}\n`,
  ...more,
});

const tightened = (says: string, sequence = 'caps'): string =>
  `tightened: [{ sequence: ${sequence}, ${says} }]`;

const logs = (...says: readonly string[]): string =>
  `tightened: [${says.map((each) => `{ sequence: caps, ${each} }`).join(', ')}]`;

/** How many of the bores and journals stand. */
const standing = (files: Files): Readonly<Record<string, number>> => {
  const counts = { main_bearing_bore: 0, main_bearing_clearance: 0, main_journal_diameter: 0 };
  for (const { characteristic, routes } of reportOf(files).state?.rows ?? [])
    if (characteristic.id in counts && routes.length > 0)
      counts[characteristic.id as keyof typeof counts] += 1;
  return counts;
};

const ALL = { main_bearing_bore: 2, main_bearing_clearance: 2, main_journal_diameter: 2 };
const JOURNALS_ALONE = { main_bearing_bore: 0, main_bearing_clearance: 0, main_journal_diameter: 2 };

describe('a bore with its cap on holds', () => {
  it.each([
    ['while nothing is tightened', '', ''],
    ['though it is tightened with the same fasteners', '', tightened('fasteners: reused')],
    ['with the same lubricant', tightened('lubricant: oil'), tightened('lubricant: oil')],
    [
      'with the same lubricant in other words',
      tightened('lubricant: engine oil'),
      tightened('lubricant: oil on threads and under heads'),
    ],
    ['though no lubricant was stated when it was read', '', tightened('lubricant: oil')],
    ['though no lubricant is stated now', tightened('lubricant: oil'), tightened('fasteners: reused')],
    [
      'with fasteners that were new when it was read',
      'replaced: [{ part: main bolts }]',
      tightened('fasteners: new'),
    ],
    [
      'with fasteners that were said to be new when it was read',
      'fitted: { main_bolts: { condition: new } }',
      tightened('fasteners: new'),
    ],
    [
      'with fasteners that were new when it was read, as those of another joint were',
      'replaced: [{ part: main bolts and rod bolts }]',
      tightened('fasteners: new'),
    ],
    [
      'with the lubricant that was used last before it was read',
      logs('lubricant: molybdenum paste', 'lubricant: oil', 'fasteners: reused'),
      tightened('lubricant: oil'),
    ],
  ])('%s', (_, trial, later) => {
    expect(standing(engine(trial, later))).toEqual(ALL);
  });
});

describe('a bore with its cap on ends, and the journal in it stays, where the cap is tightened', () => {
  it.each([
    ['with new fasteners', '', tightened('fasteners: new')],
    ['with another lubricant', tightened('lubricant: oil'), tightened('lubricant: molybdenum paste')],
    [
      'with another lubricant than the last',
      logs('lubricant: oil', 'lubricant: molybdenum paste'),
      tightened('lubricant: oil'),
    ],
    [
      'with new fasteners, though others were new',
      'replaced: [{ part: rod bolts }]',
      tightened('fasteners: new'),
    ],
    [
      'with new fasteners, though a part was new that only the shop knows',
      'replaced: [{ part: oil hose }]',
      tightened('fasteners: new'),
    ],
    [
      'with new fasteners, though used ones were put in before',
      'fitted: { main_bolts: { condition: used } }',
      tightened('fasteners: new'),
    ],
    ['in one of two tightenings', '', logs('fasteners: reused', 'fasteners: new')],
  ])('%s', (_, trial, later) => {
    expect(standing(engine(trial, later))).toEqual(JOURNALS_ALONE);
  });

  it.each([
    ['to another torque', '100', JOURNALS_ALONE],
    ['and not by a second document of the same torque', '90', ALL],
  ])('%s', (_, torque, expected) => {
    const files = engine(tightened('fasteners: reused'), tightened('fasteners: reused', 'caps-2'), {
      'e/caps-2.yaml': CAPS(torque),
    });
    expect(standing(files)).toEqual(expected);
  });

  it('of another joint changes nothing', () => {
    const files = engine('', tightened('fasteners: new', 'rods'), {
      'e/rods.yaml': CAPS('40').replace('main caps', 'rod bolts'),
    });
    expect(standing(files)).toEqual(ALL);
  });

  describe('with fasteners that are said to be new', () => {
    const K1 = 'fitted: { main_bolts: { mark: K1, condition: new } }';
    /** The same bolts before the bores are read and in one of the sessions after, and new fasteners in another. */
    const sessions = (...later: readonly string[]): Files =>
      engine('', later[0] ?? '', {
        'e/0.yaml': `kind: session\nstage: trial\ndate: 2026-02-28\nreadings: []\n${K1}\n`,
        'e/3.yaml': `kind: session\nstage: rebuild\ndate: 2026-03-03\nreadings: []\n${later[1] ?? ''}\n`,
      });

    it.each([
      [
        'by a session between the reading and the tightening: it holds',
        [K1, tightened('fasteners: new')],
        ALL,
      ],
      ['by the session of the tightening: it holds', [`${K1}\n${tightened('fasteners: new')}`, ''], ALL],
      ['by a session before the reading: it holds', [tightened('fasteners: new'), ''], ALL],
      ['and nothing is tightened: it holds', [K1, K1], ALL],
    ])('%s', (_, later, expected) => expect(standing(sessions(...later))).toEqual(expected));
  });

  it('by angle alone is compared with no torque', () => {
    const files = engine(tightened('fasteners: reused'), tightened('fasteners: reused', 'by-angle'), {
      'e/by-angle.yaml': CAPS('90').replace(/passes: .*/, 'passes: [{ turn: 90 deg }]'),
    });
    expect(standing(files)).toEqual(ALL);
    const back = engine(tightened('fasteners: reused', 'by-angle'), tightened('fasteners: reused'), {
      'e/by-angle.yaml': CAPS('90').replace(/passes: .*/, 'passes: [{ turn: 90 deg }]'),
    });
    expect(standing(back)).toEqual(ALL);
  });

  it('is compared with the last tightening of its own joint, in whichever session that was', () => {
    const rods = { 'e/rods.yaml': CAPS('40').replace('main caps', 'rod bolts') };
    const before = (says: string): Files => ({
      ...rods,
      'e/0.yaml': `kind: session\nstage: trial\ndate: 2026-02-28\nreadings: []\n${says}\n`,
    });
    const then = (first: string, trial: string): Readonly<Record<string, number>> =>
      standing(engine(trial, tightened('lubricant: oil'), before(first)));
    expect(then(tightened('lubricant: molybdenum paste'), '')).toEqual(JOURNALS_ALONE);
    expect(then(tightened('lubricant: oil'), '')).toEqual(ALL);
    expect(then(tightened('lubricant: molybdenum paste'), tightened('lubricant: oil'))).toEqual(ALL);
    expect(then(tightened('lubricant: oil'), tightened('lubricant: molybdenum paste', 'rods'))).toEqual(ALL);
  });
});

describe('what ended with the way its joint was tightened says so, and what to do', () => {
  const LIMITS: Files = {
    'e/limits.yaml': limitsOf(
      'main_bearing_bore: { new: 3.0010 to 3.0020 }\nmain_bearing_clearance: { new: 0.0010 to 0.0040 }',
    ),
  };
  const said = (trial: string, later: string, more: Files = {}): readonly string[] =>
    (reportOf(engine(trial, later, { ...LIMITS, ...more })).state?.findings ?? [])
      .filter(({ code }) => code === 'reading/missing' || code === 'session/unmeasured')
      .filter(({ position }) => position !== '3')
      .map(({ message, place }) => `${place.path}: ${message}`);
  const HINT =
    'if it was read with the new bolts, write replaced: [{ part: main bolts }] in the session of 2026-03-01';
  const SINCE = 'on 2026-03-02, after the reading of 2026-03-01';

  it('of all positions, of the reading and of what is worked out from it', () => {
    expect(said('', tightened('fasteners: new'))).toEqual([
      `e/2.yaml: main bearing bore is to be measured again: main caps tightened with new fasteners ${SINCE}; ${HINT}; last known 3.0013 in on 2026-03-01`,
      `e/2.yaml: main bearing clearance is worked out from main bearing bore, which is to be measured again: main caps tightened with new fasteners ${SINCE}; ${HINT}`,
    ]);
  });

  it('of the positions that were not measured again', () => {
    const again = `${tightened('fasteners: new')}\n`;
    const files = engine('', again, LIMITS);
    const rebuild = files['e/2.yaml']?.replace(
      'readings: [',
      'readings: [{ measure: main_bearing_bore, at: { 1: 3.0014, 3: 3.0014 } }, ',
    );
    expect(said('', again, { 'e/2.yaml': rebuild ?? '' })).toEqual([
      `e/2.yaml: main bearing bore 2 is to be measured again: main caps tightened with new fasteners ${SINCE}; ${HINT}`,
      `e/2.yaml: main bearing clearance 2 is worked out from main bearing bore 2, which is to be measured again: main caps tightened with new fasteners ${SINCE}; ${HINT}`,
    ]);
  });

  it('with another lubricant', () => {
    expect(said(tightened('lubricant: oil'), tightened('lubricant: molybdenum paste'))[0]).toBe(
      `e/2.yaml: main bearing bore is to be measured again: main caps tightened with another lubricant ${SINCE}; last known 3.0013 in on 2026-03-01`,
    );
  });

  it('and nothing of it where the bolts were new before the bores were read', () => {
    const before = {
      'e/0.yaml':
        'kind: session\nstage: machined\ndate: 2026-02-28\nreadings: []\nreplaced: [{ part: main bolts }]\n',
    };
    expect(said('', tightened('fasteners: new'), before)).toEqual([]);
  });
});

it('new head bolts end no size of what lies in the head', () => {
  const head = `kind: torque\njoint: cylinder head\nfasteners: { names: [1, 2, 3, 4] }\nsource: Invented.\npasses: [{ to: 60 lbf ft }]\n`;
  const files = {
    'e/engine.yaml':
      'kind: engine\nname: A\nunits: { length: in }\nlayout: { mains: [1, 2, 3], cylinders: 1, valves: [I, E] }\n',
    'e/limits.yaml': limitsOf('valve_guide_bore: { new: { max: 0.3450 } }'),
    'e/head.yaml': head,
    'e/1.yaml':
      'kind: session\nstage: trial\ndate: 2026-03-01\nreadings: [{ measure: valve_guide_bore, at: { 1I: 0.3440 } }]\n',
    'e/2.yaml': `kind: session\nstage: rebuild\ndate: 2026-03-02\n${JOURNALS}\n${tightened('fasteners: new', 'head')}\n`,
  };
  const guides = reportOf(files).state?.rows.filter(
    ({ characteristic, routes }) => characteristic.id === 'valve_guide_bore' && routes.length > 0,
  );
  expect(guides).toHaveLength(1);
});
