import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Change } from '../../src/compare/change.ts';
import { type Diff, diffStates, isSame, newsOf } from '../../src/compare/diff.ts';
import { type EngineState, stateOfEngine, stateOfSession } from '../../src/compare/state.ts';
import { compare, negate, toNumber } from '../../src/quantity/fraction.ts';
import { oncePerTexts } from '../oncePerTexts.ts';
import { runs } from '../propertyRuns.ts';
import { type Files, INSTRUMENTS, judgeableOf, LIMITS, session, shop, stateOfFiles } from './shop.ts';

const TEARDOWN = 'stage: teardown; date: 2026-02-03';

const stateWith = (at: string, about = TEARDOWN, measure = 'main_bearing_clearance'): EngineState =>
  stateOfFiles(shop({ 'engine/a.yaml': session(about, [[measure, 'bore', at]]) }));

const only = ({ changes }: Diff): Change => {
  const [first, ...others] = changes;
  if (first === undefined || others.length > 0) throw new Error(`${changes.length} changes instead of one`);
  return first;
};

const between = (before: string, after: string): Change =>
  only(diffStates(stateWith(`{ 1: ${before} }`), stateWith(`{ 1: ${after} }`)));

describe('a part that was made to another size in between', () => {
  const journal = (said: string, read: string): EngineState =>
    stateOfFiles({
      ...shop({
        'engine/a.yaml': session(TEARDOWN, [['main_journal_diameter', 'mic', `{ 1: ${read} }`]]) + said,
      }),
      'engine/limits.yaml':
        'kind: limits\nsource: invented\nlimits: { main_journal_diameter: { new: 3.2470 to 3.2485 } }\n',
    });
  const UNDER = 'machined: [{ part: main journals, size: 0.010 under }]\n';

  it('is not like for like, and its limits are not said to have changed', () => {
    const diff = diffStates(journal('', '3.2480'), journal(UNDER, '3.2380'));
    expect(only(diff).unlike).toEqual(['size']);
    expect(diff.limits).toEqual([]);
  });

  it('is like what was made to that size before', () => {
    expect(only(diffStates(journal(UNDER, '3.2378'), journal(UNDER, '3.2380'))).unlike).toEqual([]);
  });
});

describe('the news about a verdict', () => {
  // One change: worn 0.0045, out 0.0052, ok 0.0030 at a teardown (wear max 0.0050).
  it.each([
    ['0.0045', '0.0052', 'newly out', 'out'],
    ['0.0052', '0.0030', 'newly in', 'in'],
    ['0.0030', '0.0045', null, null],
    ['0.0052', '0.0054', null, null],
  ])('from %s to %s it is %s', (before, after, news, crossed) => {
    const change = between(before, after);
    expect(newsOf(change)).toBe(news);
    expect(change.crossed).toBe(crossed);
  });

  it('out that becomes undecided is not in, and undecided that becomes out is news', () => {
    const guarded = (at: string): EngineState =>
      stateOfFiles({
        ...shop({ 'engine/a.yaml': session(TEARDOWN, [['main_bearing_clearance', 'bore', at]]) }),
        'shop.yaml': 'kind: shop\ndecision_rule: guarded\n',
      });
    const [out, undecided, ok] = [
      guarded('{ 1: 0.0056 }'),
      guarded('{ 1: 0.0050 }'),
      guarded('{ 1: 0.0030 }'),
    ];
    const told = (a: EngineState, b: EngineState) => {
      const change = only(diffStates(a, b));
      return [change.crossed, newsOf(change)];
    };
    expect(told(out, undecided)).toEqual([null, 'newly undecided']);
    expect(told(undecided, out)).toEqual([null, 'newly out']);
    expect(told(undecided, ok)).toEqual([null, 'newly in']);
    expect(told(out, ok)).toEqual(['in', 'newly in']);
  });

  it('an accepted deviation is out all the same', () => {
    const concession =
      'concessions:\n  - { measure: main_bearing_clearance, at: 1, up_to: 0.0060, reason: agreed }\n';
    const readings = session(TEARDOWN, [['main_bearing_clearance', 'bore', '{ 1: 0.0055 }']]);
    const accepted = stateOfFiles(shop({ 'engine/a.yaml': readings + concession }));
    expect(only(diffStates(stateWith('{ 1: 0.0045 }'), accepted)).crossed).toBe('out');
    expect(only(diffStates(accepted, stateWith('{ 1: 0.0045 }'))).crossed).toBe('in');
    expect(only(diffStates(accepted, stateWith('{ 1: 0.0055 }'))).crossed).toBe(null);
  });
});

describe('where a value moved to', () => {
  // Deciding at a teardown: min 0.0020 of new, max 0.0050 of wear; the last quarter begins at 0.00425.
  it.each([
    ['0.0040', '0.0047', { toward: true, side: 'max', isNear: true }],
    ['0.0047', '0.0040', { toward: false, side: 'max', isNear: true }],
    ['0.0030', '0.0022', { toward: true, side: 'min', isNear: true }],
  ])('from %s to %s', (before, after, moved) => {
    expect(between(before, after).moved).toMatchObject(moved);
  });

  it.each([
    ['across the middle of its band, it nears no limit', '0.0045', '0.0030'],
    ['by no more than its uncertainty, nothing is said', '0.0047', '0.0048'],
  ])('%s', (_, before, after) => {
    expect(between(before, after).moved).toBe(null);
  });

  it('within the three quarters that are far from a limit it is not called near', () => {
    expect(between('0.0036', '0.0041').moved).toMatchObject({ toward: true, isNear: false });
  });

  it('against limits that are not the same on both sides nothing is said', () => {
    const rebuilt = stateWith('{ 1: 0.0037 }', 'stage: rebuild; date: 2026-03-01');
    expect(only(diffStates(stateWith('{ 1: 0.0045 }'), rebuilt)).moved).toBe(null);
  });
});

describe('the uncertainty of a change', () => {
  const diameters = (first: string, second: string, calibrated: string): Change => {
    const files = {
      ...shop({
        'engine/a.yaml': session(TEARDOWN, [['main_journal_diameter', 'mic', `{ 1: ${first} }`]]),
        'engine/b.yaml': session('stage: rebuild; date: 2026-03-01', [
          ['main_journal_diameter', 'mic', `{ 1: ${second} }`],
        ]),
      }),
      'instruments.yaml': INSTRUMENTS.replaceAll('2026-01-10', calibrated),
    };
    const judgeable = judgeableOf(files);
    const [a, b] = judgeable.engine.sessions;
    if (a === undefined || b === undefined) throw new Error('two sessions');
    return only(diffStates(stateOfSession(judgeable, a), stateOfSession(judgeable, b)));
  };
  const resolution = 25_400 / 2 / Math.sqrt(3);
  const largest = 25_400 / Math.sqrt(3);

  it('an instrument read twice within one calibration leaves only what each reading has for itself', () => {
    const { expanded, state } = diameters('3.2478', '3.2477', '2026-01-10');
    expect(expanded).toBeCloseTo(1.959964 * Math.hypot(resolution, resolution), 0);
    expect(state).toBe('real');
  });

  it.each(['2026-02-04', '2026-03-01'])(
    'calibrated on %s, between the two, its error no longer cancels',
    (date) => {
      const { expanded, state } = diameters('3.2478', '3.2477', date);
      expect(expanded).toBeCloseTo(1.959964 * Math.hypot(resolution, resolution, largest, largest), 0);
      expect(state).toBe('within');
    },
  );

  it.each(['2026-02-03', '2026-03-02'])('calibrated on %s, before or after both, it cancels', (date) => {
    expect(diameters('3.2478', '3.2477', date).expanded).toBeCloseTo(
      1.959964 * Math.hypot(resolution, resolution),
      0,
    );
  });

  it('a reading written over another in the same place is another reading, with an error of its own', () => {
    const { expanded } = only(
      diffStates(
        stateWith('{ 1: 3.2478 }', TEARDOWN, 'main_journal_diameter'),
        stateWith('{ 1: 3.2479 }', TEARDOWN, 'main_journal_diameter'),
      ),
    );
    expect(expanded).toBeGreaterThan(0);
  });

  it('readings whose mean stayed while they moved apart are not the same', () => {
    const change = between('0.0030', '{ front: 0.0029, rear: 0.0031 }');
    expect(change.state).toBe('within');
    expect(toNumber(change.delta ?? { n: 1n, d: 1n })).toBe(0);
  });
});

describe('what is not like for like', () => {
  const unlike = (a: string, b: string): readonly string[] => {
    const state = (text: string): EngineState =>
      stateOfFiles(shop({ 'engine/a.yaml': `kind: session\n${text}\n` }));
    return only(diffStates(state(a), state(b))).unlike;
  };
  const reading = (more: string, about = ''): string =>
    `stage: teardown\ndate: 2026-02-03\n${about}readings:\n  - { measure: main_bearing_clearance, ${more}, at: { 1: 0.003 } }`;

  it.each([
    ['the same', reading('with: bore'), reading('with: bore'), []],
    ['another instrument', reading('with: bore'), reading('with: mic'), ['instrument']],
    [
      'other conditions',
      reading('with: bore, conditions: { bearings: dry }'),
      reading('with: bore, conditions: { bearings: oiled }'),
      ['conditions'],
    ],
    [
      'a degree warmer',
      reading('with: bore', 'temperature: 64 degF\n'),
      reading('with: bore', 'temperature: 66 degF\n'),
      [],
    ],
    [
      'exactly three degrees',
      reading('with: bore', 'temperature: 20 degC\n'),
      reading('with: bore', 'temperature: 23 degC\n'),
      [],
    ],
    [
      'a warm day',
      reading('with: bore', 'temperature: 64 degF\n'),
      reading('with: bore', 'temperature: 81 degF\n'),
      ['temperature'],
    ],
    [
      'a temperature that nobody wrote',
      reading('with: bore', 'temperature: 64 degF\n'),
      reading('with: bore'),
      [],
    ],
  ])('%s', (_, a, b, expected) => {
    expect(unlike(a, b)).toEqual(expected);
  });

  it('worked out on one side, read directly on the other', () => {
    const derived = stateOfFiles(
      shop({
        'engine/a.yaml': session(TEARDOWN, [
          ['main_bearing_bore', 'bore', '{ 1: 3.2510 }'],
          ['main_journal_diameter', 'mic', '{ 1: 3.2480 }'],
        ]),
      }),
    );
    const change = diffStates(stateWith('{ 1: 0.0030 }'), derived).changes.find(
      ({ characteristic }) => characteristic.id === 'main_bearing_clearance',
    );
    expect(change?.unlike).toEqual(['method', 'instrument']);
  });
});

describe('limits and concessions', () => {
  const readings = session(TEARDOWN, [['main_bearing_clearance', 'bore', '{ 1: 0.0045 }']]);

  it('a limit that changed is reported apart from the readings', () => {
    const before = stateOfFiles(shop({ 'engine/a.yaml': readings }));
    const after = stateOfFiles({
      ...shop({ 'engine/a.yaml': readings }),
      'engine/limits.yaml': LIMITS.replace('0.0050', '0.0040'),
    });
    const diff = diffStates(before, after);
    expect(diff.limits).toMatchObject([
      { band: 'wear', side: 'max', a: { written: '0.0050' }, b: { written: '0.0040' } },
    ]);
    expect(only(diff)).toMatchObject({ state: 'same', crossed: 'out' });
    expect(isSame(diff)).toBe(false);
  });

  const concession = (upTo: string, until = ''): string =>
    `concessions:\n  - { measure: main_bearing_clearance, at: 1, up_to: ${upTo}, reason: agreed${until} }\n`;

  it('a concession that is made is opened, one that is withdrawn is closed', () => {
    const without = stateOfFiles(shop({ 'engine/a.yaml': readings }));
    const withOne = stateOfFiles(shop({ 'engine/a.yaml': readings + concession('0.0060') }));
    expect(diffStates(without, withOne).concessions).toMatchObject([{ state: 'opened' }]);
    expect(diffStates(withOne, without).concessions).toMatchObject([{ state: 'closed' }]);
  });

  it('the same concession written in another unit has not changed', () => {
    const inches = stateOfFiles(shop({ 'engine/a.yaml': readings + concession('0.0060') }));
    const metric = stateOfFiles(shop({ 'engine/a.yaml': readings + concession('0.15240 mm') }));
    expect(diffStates(inches, metric).concessions).toEqual([]);
  });

  it('one that still holds at the later session is not closed', () => {
    const judgeable = judgeableOf(
      shop({
        'engine/a.yaml': readings + concession('0.0060', ', until: 2026-12-31'),
        'engine/b.yaml': session('stage: service; date: 2026-06-01', [
          ['main_bearing_clearance', 'bore', '{ 1: 0.0055 }'],
        ]),
      }),
    );
    const [a, b] = judgeable.engine.sessions.map((each) => stateOfSession(judgeable, each));
    if (a === undefined || b === undefined) throw new Error('two sessions');
    expect(diffStates(a, b).concessions).toEqual([]);
  });
});

describe('an engine at a revision', () => {
  it('is the latest value of everything at every position, in the order of the sheet', () => {
    const state = stateOfEngine(
      judgeableOf(
        shop({
          'engine/b.yaml': session('stage: rebuild; date: 2026-03-01', [
            ['main_bearing_clearance', 'bore', '{ 2: 0.0028 }'],
          ]),
          'engine/a.yaml': session(TEARDOWN, [
            ['main_bearing_clearance', 'bore', '{ 3: 0.0040, 2: 0.0044, 1: 0.0041 }'],
            ['main_journal_diameter', 'mic', '{ 1: 3.2478 }'],
          ]),
        }),
      ),
    );
    const { changes } = diffStates(state, state);
    expect(
      changes.map(({ characteristic, position, b }) => [characteristic.id, position.name, b?.session.stage]),
    ).toEqual([
      ['main_journal_diameter', '1', 'teardown'],
      ['main_bearing_clearance', '1', 'teardown'],
      ['main_bearing_clearance', '2', 'rebuild'],
      ['main_bearing_clearance', '3', 'teardown'],
    ]);
  });
});

/** Ten-thousandths of an inch, as text and as the same length in millimetres. */
const inches = (tenths: number): string => (tenths / 10_000).toFixed(4);
const millimetres = (tenths: number): string => `${(tenths * 0.00254).toFixed(5)} mm`;

interface Generated {
  readonly clearances: ReadonlyMap<string, number>;
  readonly diameters: ReadonlyMap<string, number>;
  readonly concession: number | undefined;
  /** Of an earlier session, which the diameters above may stand in for. */
  readonly before: ReadonlyMap<string, number>;
}

const readingsOf = (from: number, to: number) =>
  fc
    .dictionary(fc.constantFrom('1', '2', '3'), fc.integer({ min: from, max: to }), { minKeys: 1 })
    .map((each) => new Map(Object.entries(each)));

const generated: fc.Arbitrary<Generated> = fc.record({
  clearances: readingsOf(15, 60),
  diameters: readingsOf(32_455, 32_490),
  concession: fc.option(fc.integer({ min: 52, max: 60 }), { nil: undefined }),
  before: readingsOf(32_455, 32_490),
});

function filesOf(
  { clearances, diameters, concession, before }: Generated,
  write = inches,
  reversed = false,
): Files {
  const at = (values: ReadonlyMap<string, number>): string => {
    const entries = [...values].map(([position, value]) => `${position}: ${write(value)}`);
    return `{ ${(reversed ? entries.toReversed() : entries).join(', ')} }`;
  };
  const blocks = [
    ['main_bearing_clearance', 'bore', at(clearances)],
    ['main_journal_diameter', 'mic', at(diameters)],
  ] as const;
  const conceded =
    concession === undefined
      ? ''
      : `concessions:\n  - { measure: main_bearing_clearance, at: 1, up_to: ${write(concession)}, reason: agreed }\n`;
  const files = Object.entries(
    shop({
      'engine/0.yaml': session('stage: service; date: 2026-01-05', [
        ['main_journal_diameter', 'mic', at(before)],
      ]),
      'engine/a.yaml': session(TEARDOWN, reversed ? blocks.toReversed() : blocks) + conceded,
    }),
  );
  return Object.fromEntries(reversed ? files.toReversed() : files);
}

const stateOnce = oncePerTexts(stateOfFiles);

const stateOf = (of: Generated, write = inches, reversed = false): EngineState =>
  stateOnce(filesOf(of, write, reversed));

/** What a comparison says, without where it was written. */
const said = ({ changes, limits, concessions, rewritten }: Diff) => ({
  changes: changes.map(({ characteristic, position, state, crossed, delta, expanded, moved, a, b }) => ({
    id: `${characteristic.id} ${position.name}`,
    state,
    crossed,
    delta: delta === null ? null : toNumber(delta),
    expanded: expanded === null ? null : Number(expanded.toPrecision(9)),
    toward: moved?.toward ?? null,
    verdicts: [a?.row.judgement.verdict, b?.row.judgement.verdict],
  })),
  limits: limits.length,
  concessions: concessions.map(({ state, concession }) => [state, concession.measure.id]),
  rewritten: rewritten.flatMap(({ session, state, readings }) =>
    readings.map(({ position, a, b }) => [session.name, state, position.name, a.length, b.length]),
  ),
});

const SWAPPED = {
  appeared: 'disappeared',
  disappeared: 'appeared',
  opened: 'closed',
  closed: 'opened',
  in: 'out',
  out: 'in',
} as const;
const swapped = <T extends string>(word: T): T =>
  (word in SWAPPED ? SWAPPED[word as keyof typeof SWAPPED] : word) as T;

describe('whatever was measured', () => {
  const RUNS = runs(30, 10);

  it('a side compared with itself has no changes', () => {
    fc.assert(
      fc.property(generated, (one) => {
        const diff = diffStates(stateOf(one), stateOfFiles(filesOf(one, inches)));
        expect(isSame(diff)).toBe(true);
        expect(diff.changes.every(({ state, expanded }) => state === 'same' && expanded === 0)).toBe(true);
      }),
      RUNS,
    );
  });

  it('the other way round is the mirror', () => {
    fc.assert(
      fc.property(generated, generated, (one, other) => {
        const there = said(diffStates(stateOf(one), stateOf(other)));
        const back = said(diffStates(stateOf(other), stateOf(one)));
        const byId = (list: typeof there.changes) => [...list].sort((x, y) => (x.id < y.id ? -1 : 1));
        expect(byId(back.changes)).toEqual(
          byId(
            there.changes.map((each) => ({
              ...each,
              state: swapped(each.state),
              crossed: each.crossed && swapped(each.crossed),
              delta: each.delta && -each.delta,
              toward: each.toward === null ? null : !each.toward,
              verdicts: each.verdicts.toReversed(),
            })),
          ),
        );
        expect(back.rewritten).toEqual(
          there.rewritten.map(([name, state, position, a, b]) => [name, state, position, b, a]),
        );
        expect(back.concessions.sort()).toEqual(
          there.concessions.map(([state, id]) => [swapped(state ?? ''), id]).sort(),
        );
      }),
      RUNS,
    );
  });

  it('the order of files, blocks and positions changes nothing', () => {
    fc.assert(
      fc.property(generated, generated, (one, other) => {
        const plain = diffStates(stateOf(one), stateOf(other));
        const shuffled = diffStates(stateOf(one, inches, true), stateOf(other, inches, true));
        expect(said(shuffled)).toEqual(said(plain));
      }),
      RUNS,
    );
  });

  it('one side in millimetres says the same', () => {
    fc.assert(
      fc.property(generated, generated, (one, other) => {
        const plain = said(diffStates(stateOf(one), stateOf(other)));
        expect(said(diffStates(stateOf(one, millimetres), stateOf(other)))).toEqual(plain);
        expect(isSame(diffStates(stateOf(one, millimetres), stateOf(one)))).toBe(true);
      }),
      RUNS,
    );
  });

  it('a change smaller than its uncertainty is never called real, and a larger one always', () => {
    fc.assert(
      fc.property(generated, generated, (one, other) => {
        for (const { delta, expanded, state } of diffStates(stateOf(one), stateOf(other)).changes) {
          if (delta === null || expanded === null || state === 'same') continue;
          const size = Math.abs(toNumber(compare(delta, { n: 0n, d: 1n }) < 0 ? negate(delta) : delta));
          expect(state).toBe(size > expanded ? 'real' : 'within');
        }
      }),
      RUNS,
    );
  });
});
