import { describe, expect, it } from 'vitest';
import { diffStates, isSame } from '../../src/compare/diff.ts';
import { emptyState, stateOfSession } from '../../src/compare/state.ts';
import { ENGINE, type Files, judgeableOf, session, shop, stateOfFiles } from './shop.ts';

const TEARDOWN = 'stage: teardown; date: 2026-02-03';
const REBUILD = 'stage: rebuild; date: 2026-03-14';

type Blocks = Parameters<typeof session>[1];

/** A teardown that a rebuild measured anew, with another reading of position 2 that it did not. */
const filesWith = (teardown: Blocks, others: Files = {}): Files =>
  shop({
    'engine/1-teardown.yaml': session(TEARDOWN, teardown),
    'engine/2-rebuild.yaml': session(REBUILD, [['main_bearing_clearance', 'bore', '{ 1: 0.0030 }']]),
    ...others,
  });

/** The same along a journal, at stations. */
const along = (readings: string, stations = 'front, middle, rear'): Blocks =>
  clearances(`{ 1: [${readings}] }, stations: [${stations}]`);

const clearances = (at: string): Blocks => [['main_bearing_clearance', 'bore', at]];

const rewritten = (a: Files, b: Files) =>
  diffStates(stateOfFiles(a), stateOfFiles(b)).rewritten.map(({ session: { name }, state, readings }) => ({
    name,
    state,
    readings: readings.map((each) => [`${each.measure.id} ${each.position.name}`, each.a, each.b]),
  }));

const AT_1 = 'main_bearing_clearance 1';

describe('a reading that a later session took anew', () => {
  const before = filesWith(clearances('{ 1: 0.0045, 2: 0.0046 }'));

  it('is told when its record is changed, though every latest value is the same', () => {
    const after = filesWith(clearances('{ 1: 0.0054, 2: 0.0046 }'));
    const diff = diffStates(stateOfFiles(before), stateOfFiles(after));
    expect(diff.changes.map(({ state }) => state)).toEqual(['same', 'same']);
    expect(isSame(diff)).toBe(false);
    expect(rewritten(before, after)).toEqual([
      { name: '1-teardown', state: 'edited', readings: [[AT_1, ['0.0045'], ['0.0054']]] },
    ]);
    expect(rewritten(after, before)[0]?.readings).toEqual([[AT_1, ['0.0054'], ['0.0045']]]);
  });

  it('stands in the order of the sheet, and position 10 behind position 2', () => {
    const last: Blocks = [['main_journal_diameter', 'mic', '{ 2: 3.2480, 10: 3.2480 }']];
    const files = (journals: string, clearance: string): Files => ({
      ...filesWith([...clearances(`{ 1: ${clearance} }`), ['main_journal_diameter', 'mic', journals]], {
        'engine/3-service.yaml': session('stage: service; date: 2026-09-01', last),
      }),
      'engine/engine.yaml': ENGINE.replace('mains: 3', 'mains: 10'),
    });
    const [told] = rewritten(
      files('{ 10: 3.2475, 2: 3.2476 }', '0.0045'),
      files('{ 10: 3.2457, 2: 3.2467 }', '0.0054'),
    );
    const places = told?.readings.map(([place]) => place);
    expect(places).toEqual(['main_journal_diameter 2', 'main_journal_diameter 10', AT_1]);
  });

  it('is left to the comparison of the latest values where it is one', () => {
    expect(rewritten(before, filesWith(clearances('{ 1: 0.0045, 2: 0.0064 }')))).toEqual([]);
  });

  it('is told with those of its neighbours that differ, and taken away with all of them', () => {
    const many = filesWith(along('0.0045, 0.0046, 0.0047'));
    const other = filesWith(along('0.0045, 0.0064, 0.0047'));
    const fewer = filesWith(along('0.0045, 0.0046', 'front, rear'));
    expect(rewritten(many, other)[0]?.readings).toEqual([[AT_1, ['0.0046'], ['0.0064']]]);
    expect(rewritten(many, fewer)[0]?.readings).toEqual([
      [AT_1, ['0.0045', '0.0046', '0.0047'], ['0.0045', '0.0046']],
    ]);
    expect(rewritten(before, filesWith(clearances('{ 2: 0.0046 }')))[0]?.readings).toEqual([
      [AT_1, ['0.0045'], []],
    ]);
  });

  it('is the same in another unit, with more digits, and in another order of blocks', () => {
    const two: Blocks = [...clearances('{ 1: 0.0045 }'), ['main_bearing_clearance', 'bore', '{ 1: 0.0047 }']];
    expect(rewritten(before, filesWith(clearances('{ 1: 0.1143 mm, 2: 0.00460 }')))).toEqual([]);
    expect(rewritten(filesWith(two), filesWith(two.toReversed()))).toEqual([]);
  });

  it('and the one beside it that change places are both told', () => {
    const swapped = [along('0.0045, 0.0046', 'front, rear'), along('0.0046, 0.0045', 'front, rear')];
    const [a = [], b = []] = swapped;
    expect(rewritten(filesWith(a), filesWith(b))[0]?.readings).toEqual([
      [AT_1, ['0.0045', '0.0046'], ['0.0046', '0.0045']],
    ]);
  });
});

describe('a session of which no value is the latest', () => {
  const TRIAL = {
    'engine/1-trial.yaml': session('stage: trial; date: 2026-03-01', clearances('{ 1: 0.0040 }')),
  };
  const [without, withTrial] = [
    filesWith(clearances('{ 1: 0.0045 }')),
    filesWith(clearances('{ 1: 0.0045 }'), TRIAL),
  ];

  it('is told when it is gone or new', () => {
    expect(rewritten(withTrial, without)).toEqual([
      { name: '1-trial', state: 'gone', readings: [[AT_1, ['0.0040'], []]] },
    ]);
    expect(rewritten(without, withTrial)).toEqual([
      { name: '1-trial', state: 'new', readings: [[AT_1, [], ['0.0040']]] },
    ]);
  });

  it('is no news of an engine that is new itself, nor where two sessions are compared', () => {
    const judgeable = judgeableOf(withTrial);
    const [first, last] = [judgeable.engine.sessions[0], judgeable.engine.sessions.at(-1)];
    if (first === undefined || last === undefined) throw new Error('no sessions');
    const { rewritten: told } = diffStates(stateOfSession(judgeable, first), stateOfSession(judgeable, last));
    expect(told).toEqual([]);
    const now = stateOfFiles(withTrial);
    expect(diffStates(emptyState(now.unitFor), now).rewritten).toEqual([]);
  });
});
