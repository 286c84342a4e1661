import { describe, expect, it } from 'vitest';
import { statedCondition } from '../../../src/checks/judge/condition.ts';
import { type Files, limitsOf, reportOf, sessionOf, shopFiles, verdictsOf } from '../../shopOf.ts';
import { characteristicIn, positionIn, viewIn } from '../viewIn.ts';

const LIMITS = `main_journal_diameter: { new: { min: 2.9995 }, wear: { min: 2.9980 } }
main_bearing_clearance: { new: { max: 0.0038 }, wear: { max: 0.0050 } }`;

const BLOCKS = `- { measure: main_journal_diameter, at: { 1: 2.9990, 2: 2.9990, 3: 2.9990 } }
- { measure: main_bearing_clearance, at: { 1: 0.0045, 2: 0.0045, 3: 0.0045 } }`;

const fitted = (stage: string, parts: string): Files => ({
  ...shopFiles(LIMITS, ''),
  'e/limits.yaml': limitsOf(LIMITS),
  'e/session.yaml': sessionOf(stage, BLOCKS, parts === '' ? '' : `fitted: ${parts}\n`),
});

const judged = (files: Files, options = {}): readonly (string | null | undefined)[] => {
  const verdicts = verdictsOf(files, options);
  return [verdicts['main_journal_diameter 2'], verdicts['main_bearing_clearance 2']];
};

describe('the condition of a part chooses the band that decides for it', () => {
  it.each([
    ['nothing stated at a rebuild', 'rebuild', '', ['out', 'out']],
    ['nothing stated at teardown', 'teardown', '', ['worn', 'worn']],
    ['a used shaft at a rebuild', 'rebuild', '{ crankshaft: { condition: used } }', ['worn', 'out']],
    [
      'a reground shaft at a service, whose fit is then judged as new',
      'service',
      '{ crankshaft: { condition: reground } }',
      ['out', 'out'],
    ],
    ['used shells at a rebuild', 'rebuild', '{ main_shells: { condition: used } }', ['out', 'worn']],
    ['new shells at a service', 'service', '{ main_shells: { condition: new } }', ['worn', 'out']],
    [
      'one position that differs',
      'rebuild',
      '{ main_shells: { condition: new, at: { 2: { condition: used } } } }',
      ['out', 'worn'],
    ],
    [
      'another position that differs',
      'rebuild',
      '{ main_shells: { condition: new, at: { 1: { condition: used } } } }',
      ['out', 'out'],
    ],
    [
      'one new part makes a fit a new one',
      'rebuild',
      '{ main_shells: { condition: used }, block: { condition: new } }',
      ['out', 'out'],
    ],
  ])('%s', (_, stage, parts, expected) => {
    expect(judged(fitted(stage, parts))).toEqual(expected);
  });

  it('a position that differs may be named by its label', () => {
    const files = fitted(
      'rebuild',
      '{ main_shells: { condition: new, at: { centre: { condition: used } } } }',
    );
    const engine = `${files['e/engine.yaml']}labels: { main: { 2: centre } }\n`;
    expect(judged({ ...files, 'e/engine.yaml': engine })).toEqual(['out', 'worn']);
  });

  it('unless the run asks for another', () => {
    const files = fitted('rebuild', '{ crankshaft: { condition: used } }');
    expect(judged(files, { judgeBy: 'new' })).toEqual(['out', 'out']);
  });
});

describe('what is stated of the parts of a fit', () => {
  const told = (text: string): string =>
    text === '' || /^[a-z]+:/.test(text) ? `${text}\n` : `fitted: ${text}\n`;

  /** With what earlier sessions of the run say of them, the first one first. */
  const stated = (parts: string, before: string | readonly string[] = '', id = 'main_bearing_clearance') => {
    const saidBefore = [before].flat();
    const view = viewIn({
      ...shopFiles(LIMITS, ''),
      ...Object.fromEntries(
        saidBefore.map((text, index) => [
          `e/before${index}.yaml`,
          sessionOf('trial', BLOCKS, told(text)).replace('2026-02-03', `2026-01-0${index + 1}`),
        ]),
      ),
      'e/session.yaml': sessionOf('rebuild', BLOCKS, told(parts)),
    });
    const characteristic = characteristicIn(view, id);
    const earlier = view.engine.sessions.slice(0, saidBefore.length).reverse();
    const found = statedCondition(
      { ...view, earlier },
      characteristic,
      positionIn(view, characteristic, '2'),
    );
    return found && [found.text, found.band];
  };

  it.each([
    ['nothing', '', '', undefined],
    ['a part without a condition', '{ main_shells: { mark: A1 } }', '', undefined],
    ['a part of another fit', '{ pistons: { condition: new } }', '', undefined],
    [
      'the part that the figure is of',
      '{ main_shells: { condition: used } }',
      '',
      ['used main shells', 'wear'],
    ],
    ['a part beside it, used', '{ crankshaft: { condition: used } }', '', undefined],
    [
      'a part beside it, reground',
      '{ crankshaft: { condition: reground } }',
      '',
      ['reground crankshaft', 'new'],
    ],
    [
      'a new one beside a used one',
      '{ main_shells: { condition: used }, crankshaft: { condition: reground } }',
      '',
      ['reground crankshaft', 'new'],
    ],
    [
      'the condition of the place before that of the rest',
      '{ main_shells: { condition: new, at: { 2: { condition: used } } } }',
      '',
      ['used main shells', 'wear'],
    ],
    [
      'what an earlier session says',
      '',
      '{ main_shells: { condition: used } }',
      ['used main shells', 'wear'],
    ],
    [
      'what is said last of a part',
      '{ main_shells: { condition: used } }',
      '{ main_shells: { condition: new } }',
      ['used main shells', 'wear'],
    ],
    [
      'of each part what is said of it',
      '{ main_shells: { condition: used } }',
      '{ crankshaft: { condition: reground } }',
      ['reground crankshaft', 'new'],
    ],
  ])('%s', (_, parts, before, expected) => {
    expect(stated(parts, before)).toEqual(expected);
  });

  it('of a figure of one part that part alone', () => {
    expect(stated('{ main_shells: { condition: used } }', '', 'main_journal_diameter')).toBeUndefined();
    expect(stated('{ crankshaft: { condition: used } }', '', 'main_journal_diameter')).toEqual([
      'used crankshaft',
      'wear',
    ]);
  });

  const USED = '{ crankshaft: { mark: K1, condition: used } }';
  const GROUND = 'machined: [{ part: crankshaft }]';
  it.each([
    ['in its own session', `${GROUND}\nfitted: ${USED}`, '', ['machined crankshaft', 'new']],
    ['after it was said to be used', '', [USED, GROUND], ['machined crankshaft', 'new']],
    ['and it is said to be used again', USED, [USED, GROUND], ['machined crankshaft', 'new']],
    [
      'one journal of it',
      '',
      [USED, 'machined: [{ part: main journal 2 }]'],
      ['machined main journal 2', 'new'],
    ],
    [
      'another journal of it',
      '',
      [USED, 'machined: [{ part: main journal 1 }]'],
      ['used crankshaft', 'wear'],
    ],
    [
      'and one of another mark was fitted since',
      '{ crankshaft: { mark: K2, condition: used } }',
      [USED, GROUND],
      ['used crankshaft', 'wear'],
    ],
    [
      'and one was put in since that is used',
      `replaced: [{ part: crankshaft }]\nfitted: { crankshaft: { condition: used } }`,
      [GROUND],
      ['used crankshaft', 'wear'],
    ],
    [
      'to another size than before',
      '{ crankshaft: { mark: K1, main: 0.010 under, condition: used } }',
      ['{ crankshaft: { mark: K1, main: std, condition: used } }', GROUND],
      ['machined crankshaft', 'new'],
    ],
  ])('a part that was machined is new: %s', (_, parts, before, expected) => {
    expect(stated(parts, before, 'main_journal_diameter')).toEqual(expected);
  });

  const RENEWED = 'replaced: [{ part: main shells }]';
  it.each([
    ['in its own session', RENEWED, '', ['replaced main shells', 'new']],
    [
      'after used ones',
      '',
      ['{ main_shells: { condition: used } }', RENEWED],
      ['replaced main shells', 'new'],
    ],
    [
      'at another place',
      '',
      ['{ main_shells: { condition: used } }', 'replaced: [{ part: main shells, at: 1 }]'],
      ['used main shells', 'wear'],
    ],
    [
      'but by one that is said to be used',
      '{ main_shells: { condition: used } }',
      [RENEWED],
      ['used main shells', 'wear'],
    ],
  ])('a part that was renewed is new: %s', (_, parts, before, expected) => {
    expect(stated(parts, before)).toEqual(expected);
  });
});

describe('the limits of what a head carries, read on a day of service after work on that head', () => {
  const STEM = 'valve_stem_diameter: { new: 8.960 to 8.975, wear: { min: 8.920 } }';
  const after = (says: string): string | null | undefined => {
    const stems = '- { measure: valve_stem_diameter, at: { 1: { E: 8.951 } } }';
    const work = says.startsWith('- ') ? says : '- { measure: head_flatness, value: 0.02 }';
    const { state } = reportOf({
      'e/engine.yaml':
        'kind: engine\nname: Bench engine\nunits: { length: mm, torque: N m }\nlayout: { cylinders: 4, mains: 5, crankpins: 4, valves: [I, E] }\n',
      'e/limits.yaml': limitsOf(STEM),
      'e/1.yaml': sessionOf('teardown', stems).replace('02-03', '02-01'),
      'e/2.yaml': sessionOf('machined', work, says === work ? '' : `${says}\n`).replace('02-03', '02-02'),
      'e/3.yaml': sessionOf('service', stems),
    });
    return state?.rows.find(({ position }) => position.name === '1 E')?.judgement.verdict;
  };

  it.each([
    ['machined: [{ part: cylinder head }]', 'worn'],
    ['- { work: surfaced, on: cylinder head }', 'worn'],
    ['replaced: [{ part: cylinder head }]', 'out'],
    ['replaced: [{ part: cylinder head }]\nfitted: { valves: { condition: used } }', 'worn'],
    ['machined: [{ part: valves }]', 'out'],
  ])('%s', (says, verdict) => expect(after(says)).toBe(verdict));
});
