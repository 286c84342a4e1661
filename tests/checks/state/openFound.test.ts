import { describe, expect, it } from 'vitest';
import { ENGINE, type Files, reportOf } from '../../shopOf.ts';

/** Sessions on days of March 2026, one after the other: the stage and what it says. */
const engine = (...sessions: readonly (readonly [stage: string, says: string])[]): Files =>
  Object.fromEntries([
    ['e/engine.yaml', ENGINE],
    ...sessions.map(([stage, says], index) => [
      `e/${index + 1}.yaml`,
      `kind: session\nstage: ${stage}\ndate: 2026-03-0${index + 1}\n${says}\n`,
    ]),
  ]);

const FOUND = 'found: [{ on: main 2 shell lower, is: wiped, do: renew }]';

const open = (files: Files): readonly string[] =>
  (reportOf(files).state?.findings ?? [])
    .filter(({ code }) => code === 'found/open')
    .map(({ severity, message }) => `${severity}: ${message}`);

describe('what was found stays open', () => {
  it.each([
    ['renew', ['error: main 2 shell lower: wiped; to be renewed, and no session says that it was']],
    ['machine', ['warning: main 2 shell lower: wiped; to be machined, and no session says that it was']],
    ['hold', ['warning: main 2 shell lower: wiped; held back, and no session says what was decided']],
    ['reuse, by: RK', []],
    [
      'reuse',
      ['warning: main 2 shell lower: wiped; to be used again, and nobody says who decided: write by:'],
    ],
  ])('where it is to %s', (remedy, expected) => {
    expect(open(engine(['teardown', FOUND.replace('renew', remedy)]))).toEqual(expected);
  });

  it.each([
    ['no later session speaks of it', 'readings: []'],
    ['another part was replaced', 'replaced: [{ part: rod shells }]'],
    ['the part was replaced at another position', 'replaced: [{ part: main shells, at: 1 }]'],
    ['a part that was used is fitted', 'fitted: { main_shells: { condition: used } }'],
    [
      'one of them is fitted new',
      'fitted: { main_shells: { condition: used, at: { 1: { condition: new } } } }',
    ],
    [
      'all but it are fitted new',
      'fitted: { main_shells: { condition: new, at: { 2: { condition: used } } } }',
    ],
    ['nobody says who found it fit', 'found: [{ on: main 2 shell, is: bedded, do: reuse }]'],
    ['it was found again', 'found: [{ on: main 2 shell lower, is: wiped, do: renew }]'],
  ])('where %s', (_, says) => {
    expect(open(engine(['teardown', FOUND], ['rebuild', says])).length).toBeGreaterThan(0);
  });

  it('where one of two things was renewed, and the other is no part that the program knows', () => {
    const both = 'found: [{ on: [main 2 shell lower, water pump], is: worn, do: renew }]';
    const shells = 'replaced: [{ part: main shells }]';
    expect(open(engine(['teardown', both], ['rebuild', shells]))).toHaveLength(1);
    const pump = 'replaced: [{ part: main shells }, { part: water pump }]';
    expect(open(engine(['teardown', both], ['rebuild', pump]))).toEqual([]);
  });

  it('though the engine has run since', () => {
    expect(open(engine(['rebuild', FOUND], ['teardown', 'readings: []']))).toHaveLength(1);
  });
});

describe('what was found is settled', () => {
  it.each([
    ['replaced', 'replaced: [{ part: main shells, at: 2 }]'],
    ['replaced with all of them', 'replaced: [{ part: main shells }]'],
    ['machined', 'machined: [{ part: main shells }]'],
    ['fitted new', 'fitted: { main_shells: { condition: new } }'],
    [
      'fitted new at its place',
      'fitted: { main_shells: { condition: used, at: { 2: { condition: new } } } }',
    ],
    ['found fit by whom the session names', 'by: RK\nfound: [{ on: main 2 shell, is: bedded, do: reuse }]'],
    ['worked on', 'readings: [{ work: scraped, on: main 2 shell }]'],
    ['found fit for use', 'found: [{ on: main 2 shell, is: bedded, do: reuse, by: RK }]'],
  ])('where a later session says that it was %s', (_, says) => {
    expect(open(engine(['teardown', FOUND], ['rebuild', says]))).toEqual([]);
  });

  it('where the session that found it replaced it', () => {
    expect(open(engine(['rebuild', `${FOUND}\nreplaced: [{ part: main shells, at: 2 }]`]))).toEqual([]);
  });

  it('of what is no part by the same name', () => {
    const hose = 'found: [{ on: oil hose, is: cracked, do: renew }]';
    expect(open(engine(['teardown', hose]))).toHaveLength(1);
    expect(open(engine(['teardown', hose], ['rebuild', 'replaced: [{ part: Oil hose }]']))).toEqual([]);
  });

  it('only where each of its positions was dealt with', () => {
    const both = 'found: [{ on: [main 1 shell, main 2 shell], is: wiped, do: renew }]';
    const only = (at: string): readonly string[] =>
      open(engine(['teardown', both], ['rebuild', `replaced: [{ part: main shells, at: ${at} }]`]));
    expect(only('2')).toHaveLength(1);
    expect(only('[1, 2]')).toEqual([]);
  });
});

describe('of several things that one line names', () => {
  const both = 'found: [{ on: [cylinder 1, head], is: cracked between, do: renew }]';

  it('each is to be dealt with', () => {
    expect(open(engine(['teardown', both]))).toEqual([
      'error: cylinder 1, head: cracked between; each to be renewed, and no session says that it was',
    ]);
  });

  it('those that are left are named', () => {
    expect(open(engine(['teardown', both], ['machined', 'replaced: [{ part: liner 1 }]']))).toEqual([
      'error: head: cracked between; to be renewed, and no session says that it was',
    ]);
    expect(open(engine(['teardown', both], ['machined', 'replaced: [{ part: head }]']))).toEqual([
      'error: cylinder 1: cracked between; to be renewed, and no session says that it was',
    ]);
    const all = 'replaced: [{ part: head }, { part: liner 1 }]';
    expect(open(engine(['teardown', both], ['machined', all]))).toEqual([]);
  });
});

describe('what is bought as shells is settled by them', () => {
  const openAfter = (on: string, says: string): readonly string[] =>
    open(engine(['teardown', `found: [{ on: ${on}, is: run dry, do: renew }]`], ['trial', says]));

  it.each([
    ['main 2', 'fitted: { main_shells: { condition: new } }'],
    ['main 2', 'replaced: [{ part: main 2 shells }]'],
    ['main 2', 'replaced: [{ part: main 2 }]'],
    [
      'shells',
      'fitted: { main_shells: { condition: new }, rod_shells: { condition: new }, thrust_washer: { condition: new } }',
    ],
  ])('%s by %s', (on, says) => expect(openAfter(on, says)).toEqual([]));

  it.each([
    ['main 2', 'replaced: [{ part: main 1 shells }]'],
    ['shells', 'fitted: { main_shells: { condition: new }, rod_shells: { condition: new } }'],
  ])('%s not by %s', (on, says) => expect(openAfter(on, says)).toHaveLength(1));

  it('but a main that is to be machined is not', () => {
    const main = 'found: [{ on: main 2, is: scored, do: machine }]';
    const shells = 'fitted: { main_shells: { condition: new } }';
    expect(open(engine(['teardown', main], ['trial', shells]))).toHaveLength(1);
  });
});
