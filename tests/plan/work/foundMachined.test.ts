import { describe, expect, it } from 'vitest';
import { reportOf, sessionOf } from '../../shopOf.ts';
import { jobsIn } from '../planOf.ts';
import { veeEngine } from '../veeEngine.ts';

const LIMITS = `main_journal_diameter: { new: 69.980 to 70.000, wear: { min: 69.955 }, sizes: { 0.25 under: { new: 69.730 to 69.750 }, 0.50 under: { new: 69.480 to 69.500 } } }
crankpin_diameter: { new: 55.980 to 56.000, wear: { min: 55.955 } }`;
const JOURNALS = '- { measure: main_journal_diameter, at: { 1: 69.984, 2: 69.984, 3: 69.950, 4: 69.984 } }';
const GROUND = '- { measure: main_journal_diameter, at: { 1: 69.740, 2: 69.740, 3: 69.740, 4: 69.740 } }';
const TESTED = '- { measure: crankshaft_crack_test, value: pass }';

const shop = (found: string, machined: string, more = GROUND) =>
  veeEngine(LIMITS, {
    'e/a.yaml': sessionOf('teardown', JOURNALS, `found: [${found}]\n`),
    'e/b.yaml': sessionOf('machined', `${more}\n${TESTED}`, `machined: [${machined}]\n`).replace(
      '02-03',
      '02-20',
    ),
  });

const scored = (on: string, remedy = 'do: machine, '): string =>
  `{ on: ${on}, is: scored all round, ${remedy}depth: 0.06 }`;

const namesOf = (found: string, machined: string, more?: string): readonly string[] =>
  jobsIn(shop(found, machined, more)).flatMap(({ name, serves }) => (serves === undefined ? [name] : []));

const MAINS = '{ part: main journals, size: 0.25 under }';

describe('what was to be machined is settled by the grinding that it asked for', () => {
  it.each(['main 3', 'mains', 'main journal 3', '[main 1, main 3]'])('%s', (on) => {
    expect(namesOf(scored(on), MAINS)).toEqual([]);
    expect(
      reportOf(shop(scored(on), MAINS)).state?.findings.filter(({ code }) => code === 'found/open'),
    ).toEqual([]);
  });

  it.each([
    ['another journal', '{ part: main journal 2, size: 0.25 under }'],
    ['other journals', '{ part: crankpins, size: 0.25 under }'],
  ])('and by no work on %s', (_, machined) => {
    const again = '- { measure: crankpin_diameter, at: { 1: 55.740, 2: 55.740, 3: 55.740 } }';
    expect(namesOf(scored('main 3'), machined, again)).toContain('grind main journals');
  });

  it('and what was to be renewed by no grinding', () => {
    expect(namesOf('{ on: main 3, is: wiped, do: renew }', MAINS)).not.toEqual([]);
  });
});

it.each(['crankshaft', 'main 3'])('damage of a %s that was ground away is cut out no second time', (on) => {
  const worn = GROUND.replace('3: 69.740', '3: 69.600');
  const jobs = jobsIn(shop(scored(on, ''), MAINS, `${worn}\n${worn}`));
  const [group] = jobs.flatMap(({ cut }) => cut?.groups ?? []);
  expect(group?.deciding.choice).toMatchObject({ kind: 'step' });
  expect(group?.deciding.terms.map(({ words }) => words)).not.toContain('depth of damage');
});

describe('what a line says is to be machined', () => {
  const titles = (readings: string, found: string): readonly string[] =>
    jobsIn(veeEngine(LIMITS, { 'e/a.yaml': sessionOf('teardown', readings, `found: [${found}]\n`) })).flatMap(
      ({ name, serves }) => (serves === undefined ? [name] : []),
    );

  it('at one place leaves open what is done at others', () => {
    const seats = '- { measure: valve_seat_leak_test, at: { 1: { E: fail }, 2: { E: fail } } }';
    const found = '{ on: valve seat 1 E, is: pitted, do: machine }';
    const open = 'machine or renew valve seats';
    expect(titles(seats, '{ on: hose, is: split, do: renew }')).toEqual(['measure', open, 'renew hose']);
    expect(titles(seats, found)).toEqual(['measure', 'machine valve seats', open]);
  });

  it('is machined, also where a figure leaves open what is done', () => {
    const out = '- { measure: head_pressure_test, at: { L: fail, R: pass } }';
    const found = '{ on: head L, is: porous, do: machine }';
    expect(titles(out, '{ on: hose, is: split, do: renew }')).toContain('machine or renew cylinder head L');
    expect(titles(out, found)).toEqual(['machine cylinder head L']);
  });
});
