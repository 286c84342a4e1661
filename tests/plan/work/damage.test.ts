import { expect, it } from 'vitest';
import { ENGINE, type Files, limitsOf, REGISTER, sessionOf } from '../../shopOf.ts';
import { jobsIn } from '../planOf.ts';

const LIMITS = `valve_guide_hole_bore: { new: 0.5010 to 0.5020, wear: { max: 0.5025 } }
cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }
main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }`;
const HOLES = '- { measure: valve_guide_hole_bore, with: bore, at: { 1I: 0.5040, 2I: 0.5015 } }\n';
const BORES = '- { measure: cylinder_bore, with: bore, at: { 1: 4.1320, 2: 4.1255 } }\n';
const JOURNALS = '- { measure: main_journal_diameter, with: mic, at: { 1: 2.9960, 2: 2.9985, 3: 2.9985 } }\n';

const scored = (on: string, remedy: string): Files => ({
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE.replace('mains: 3', 'valves: [I, E], mains: 3'),
  'e/limits.yaml': limitsOf(LIMITS),
  'e/session.yaml': sessionOf(
    'teardown',
    (HOLES + BORES + JOURNALS).repeat(2),
    `found: [{ on: ${on}, is: scored, do: ${remedy} }]\n`,
  ),
});

/** How each kind of place is cut, by the name of its job. */
const cutsOf = (on: string, remedy: string): Readonly<Record<string, string | undefined>> =>
  Object.fromEntries(
    jobsIn(scored(on, remedy)).flatMap(({ name, cut }) =>
      cut === undefined ? [] : [[name, cut.groups[0]?.deciding.choice.kind]],
    ),
  );

const WORN = { 'bore valve guide holes': 'step', 'bore cylinders': 'step', 'grind main journals': 'step' };

it.each(['machine', 'hold'])(
  'a scored head or block, to %s, leaves the steps of its holes and bores',
  (remedy) => {
    expect(cutsOf('head', remedy)).toEqual(WORN);
    expect(cutsOf('block', remedy)).toEqual(WORN);
  },
);

it.each(['machine', 'hold'])(
  'scored holes, journals and a crankshaft, to %s, have no step proven',
  (remedy) => {
    const unproven = (name: string) => expect.objectContaining({ [name]: 'not provable' });
    expect(cutsOf('valve guide holes', remedy)).toEqual(unproven('bore valve guide holes'));
    expect(cutsOf('cylinder 1', remedy)).toEqual(unproven('bore cylinders'));
    expect(cutsOf('main 1', remedy)).toEqual(unproven('grind main journals'));
    expect(cutsOf('crankshaft', remedy)).toEqual(unproven('grind main journals'));
  },
);

it('a head to be machined is a job of its own', () => {
  expect(jobsIn(scored('head', 'machine')).map(({ name }) => name)).toContain('machine cylinder head');
});
