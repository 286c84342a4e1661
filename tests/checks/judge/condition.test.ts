import { describe, expect, it } from 'vitest';
import { statedCondition } from '../../../src/checks/judge/condition.ts';
import { type Files, limitsOf, sessionOf, shopFiles, verdictsOf } from '../../shopOf.ts';
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
  /** With what an earlier session of the run says of them. */
  const stated = (parts: string, before = '', id = 'main_bearing_clearance') => {
    const said = (text: string): string => (text === '' ? '' : `fitted: ${text}\n`);
    const view = viewIn({
      ...shopFiles(LIMITS, ''),
      'e/before.yaml': sessionOf('trial', BLOCKS, said(before)).replace('2026-02-03', '2026-01-03'),
      'e/session.yaml': sessionOf('rebuild', BLOCKS, said(parts)),
    });
    const characteristic = characteristicIn(view, id);
    const earlier = view.engine.sessions.slice(0, 1);
    return statedCondition({ ...view, earlier }, characteristic, positionIn(view, characteristic, '2'));
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
    const found = stated(parts, before);
    expect(found && [found.text, found.band]).toEqual(expected);
  });

  it('of a figure of one part that part alone', () => {
    expect(stated('{ main_shells: { condition: used } }', '', 'main_journal_diameter')).toBeUndefined();
    expect(stated('{ crankshaft: { condition: used } }', '', 'main_journal_diameter')?.text).toBe(
      'used crankshaft',
    );
  });
});
