import { describe, expect, it } from 'vitest';
import { type Files, limitsOf, refusalsOf, reportOf, shopOf } from '../../shopOf.ts';

const VEE =
  '{ cylinders: 4, mains: 3, crankpins: { 1: [1, 3], 2: [2, 4] }, banks: { L: [1, 2], R: [3, 4] }, valves: [I, E] }';
const IN_LINE = '{ cylinders: 4, mains: 5, crankpins: 4, valves: [I, E] }';

const valves = (value: string): string =>
  `{ ${[1, 2, 3, 4].map((cylinder) => `${cylinder}: { I: ${value}, E: ${value} }`).join(', ')} }`;

/** A teardown that measures heads and valves, and what a later session says was done. */
const engine = (says: string, { layout = VEE, found = '' } = {}): Files => {
  const heads = (value: string): string =>
    layout === VEE ? `at: { L: ${value}, R: ${value} }` : `value: ${value}`;
  return {
    'e/engine.yaml': `kind: engine\nname: Bench engine\nunits: { length: mm, torque: N m }\nlayout: ${layout}\n`,
    'e/limits.yaml': limitsOf(`head_flatness: { new: { max: 0.05 } }
head_thickness: { new: 131.95 to 132.05 }
valve_guide_bore: { new: 6.000 to 6.015 }
valve_seat_width: { new: 1.2 to 1.6 }
valve_spring_installed_height: { new: 36.0 to 36.4 }
valve_guide_height: { new: 12.0 to 12.4 }
valve_recession: { new: 0.6 to 0.9 }`),
    'e/1.yaml': `kind: session
stage: teardown
date: 2026-03-01
${found}readings:
  - { measure: head_flatness, ${heads('0.03')} }
  - { measure: head_thickness, ${heads('132.00')} }
  - { measure: valve_guide_bore, at: ${valves('6.010')} }
  - { measure: valve_seat_width, at: ${valves('1.4')} }
  - { measure: valve_spring_installed_height, at: ${valves('36.2')} }
  - { measure: valve_guide_height, at: ${valves('12.2')} }
  - { measure: valve_recession, at: ${valves('0.7')} }
`,
    'e/2.yaml': `kind: session\nstage: machined\ndate: 2026-03-02\n${says}\n`,
  };
};

/** What is to be measured again, by characteristic: the places that have no value any more. */
function endedIn(files: Files): Readonly<Record<string, string>> {
  const ended = new Map<string, string[]>();
  for (const { characteristic, position, routes } of reportOf(files).state?.rows ?? [])
    if (routes.length === 0)
      ended.set(characteristic.id, [...(ended.get(characteristic.id) ?? []), position.name]);
  const unmeasured = (reportOf(files).state?.findings ?? []).flatMap(({ code, measure }) =>
    code === 'session/unmeasured' && measure !== undefined ? [[measure, 'all'] as const] : [],
  );
  return Object.fromEntries([
    ...unmeasured,
    ...[...ended].map(([measure, places]) => [measure, places.join(', ')] as const),
  ]);
}

const OF_RIGHT = '3 I, 3 E, 4 I, 4 E';
const NEW_RIGHT = {
  head_flatness: 'R',
  head_thickness: 'R',
  valve_guide_bore: OF_RIGHT,
  valve_seat_width: OF_RIGHT,
  valve_spring_installed_height: OF_RIGHT,
  valve_guide_height: OF_RIGHT,
  valve_recession: OF_RIGHT,
};
const ALL_NEW = Object.fromEntries(Object.keys(NEW_RIGHT).map((measure) => [measure, 'all']));

describe('a new head of a vee ends the readings of that head, its guides and its seats', () => {
  it.each([
    'replaced: [{ part: cylinder head, at: R }]',
    'replaced: [{ part: head R }]',
    'replaced: [{ part: cylinder head R }]',
    'replaced: [{ part: right head }]',
    'replaced: [{ part: heads, at: [R] }]',
    'fitted: { head: { condition: used, at: { R: { condition: new } } } }',
  ])('%s', (says) => expect(endedIn(engine(says))).toEqual(NEW_RIGHT));

  it.each([
    ['replaced: [{ part: cylinder head }]', VEE],
    ['replaced: [{ part: heads }]', VEE],
    ['replaced: [{ part: heads L and R }]', VEE],
    ['replaced: [{ part: cylinder head }]', IN_LINE],
  ])('%s: all of them', (says, layout) => {
    expect(endedIn(engine(says, { layout }))).toEqual(ALL_NEW);
  });

  it('one that the engine has not is refused', () => {
    expect(refusalsOf(engine('replaced: [{ part: head M }]'))).toEqual(['e/2.yaml:4:20 unknown-position']);
    expect(refusalsOf(engine('replaced: [{ part: head, at: 9 }]'))).toEqual([
      'e/2.yaml:4:30 unknown-position',
    ]);
  });
});

it('one of several camshafts is refused, as a layout has no camshafts', () => {
  const { diagnostics } = shopOf(engine('found: [{ on: right camshaft, is: pitted, do: renew }]'));
  expect(diagnostics.map(({ message, help }) => `${message}: ${help}`)).toEqual([
    'the engine has no camshaft right: write camshaft alone, and say under `is:` or in a note which one it is',
  ]);
});

it('a new head says nothing of the size of what is in the other one', () => {
  const says =
    'fitted: { valve_guides: { size: 0.2 over }, valve_seats: { size: 0.4 over } }\nreplaced: [{ part: head R }]';
  const sizes = shopOf(engine(says)).engine?.sessions.at(-1)?.sizes ?? [];
  const reset = sizes.filter(({ grade, isWhole }) => isWhole && grade.upper === undefined);
  const places = new Set(
    reset.map(({ at: { positions } }) => positions.map(({ name }) => name).join(', ') || 'all'),
  );
  expect(reset.map(({ at: { part } }) => part.id)).toContain('valve_guide');
  expect([...places]).toEqual([OF_RIGHT]);
});

describe('a head that was surfaced has another face, and the guides and seats that it had', () => {
  const open = (files: Files): readonly string[] =>
    (reportOf(files).state?.findings ?? [])
      .filter(({ code }) => code === 'found/open')
      .map(({ message }) => message.split(':')[0] ?? '');

  it.each([
    'machined: [{ part: cylinder head, at: L }]',
    'machined: [{ part: head L }]',
    'readings: [{ work: surfaced, on: cylinder head L }]',
    'readings: [{ work: skimmed by 0.15, on: left head }]',
  ])('%s', (says) => {
    expect(endedIn(engine(says))).toEqual({
      head_flatness: 'L',
      head_thickness: 'L',
      valve_recession: '1 I, 1 E, 2 I, 2 E',
    });
  });

  it.each(['machined: [{ part: cylinder head }]', 'readings: [{ work: resurfaced, on: cylinder head }]'])(
    'in line: %s',
    (says) => {
      expect(endedIn(engine(says, { layout: IN_LINE }))).toEqual({
        head_flatness: 'all',
        head_thickness: 'all',
        valve_recession: 'all',
      });
    },
  );

  it('and other work on it may have changed anything in it', () => {
    const says = 'readings: [{ work: reconditioned, on: cylinder head R }]';
    expect(endedIn(engine(says))).toEqual(NEW_RIGHT);
  });

  it('so that a guide that was to be renewed still is', () => {
    const found =
      'found: [{ on: valve guide 1 E, is: loose, do: renew }, { on: head L, is: warped, do: machine }]\n';
    expect(open(engine('machined: [{ part: head L }]', { found }))).toEqual(['valve guide 1 E']);
    expect(open(engine('replaced: [{ part: head L }]', { found }))).toEqual([]);
    expect(open(engine('replaced: [{ part: head R }]', { found }))).toEqual(['valve guide 1 E', 'head L']);
  });
});
