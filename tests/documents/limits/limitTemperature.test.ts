import { describe, expect, it } from 'vitest';
import { commonTemperature } from '../../../src/documents/limits/limitTemperature.ts';
import { limitsInForce } from '../../../src/documents/limits/precedence.ts';
import { ENGINE, limitsOf, refusalsOf, shopOf } from '../../shopOf.ts';

const files = (lines: string, head = '') => ({
  'e/engine.yaml': ENGINE,
  'e/l.yaml': limitsOf(lines).replace('limits:', `${head}limits:`),
});

/** The temperatures of the bands that hold for a journal. */
function temperatures(lines: string, head = ''): Readonly<Record<string, string>> {
  const { engine, registry } = shopOf(files(lines, head));
  const measure = registry.find('main_journal_diameter');
  if (engine === undefined || measure === undefined) throw new Error();
  const { layout } = engine.document;
  const found = limitsInForce(engine.limits, layout, measure, layout.positionsOf(measure.family)[0]);
  return Object.fromEntries(Object.entries(found.temperatures).map(([name, { text }]) => [name, text]));
}

describe('the temperature at which limits hold', () => {
  it.each([
    ['of nothing where nothing is said', '{ new: { max: 3 } }', '', {}],
    ['of the document', '{ new: { max: 3 } }', 'temperature: 70 degF\n', { new: '70 degF' }],
    [
      'of one limit before that',
      '{ new: { max: 3 }, temperature: 22 degC }',
      'temperature: 70 degF\n',
      { new: '22 degC' },
    ],
    [
      'of a position before both, for the bands that stand there',
      '{ new: { max: 3 }, wear: { max: 4 }, temperature: 22 degC, at: { 1: { new: { max: 3 }, temperature: 23 degC } } }',
      'temperature: 70 degF\n',
      { new: '23 degC', wear: '22 degC' },
    ],
    [
      'in the unit of the document',
      '{ new: { max: 3 }, temperature: 70 }',
      'units: { temperature: degF, length: in }\n',
      { new: '70 degF' },
    ],
  ])('is that %s', (_, lines, head, expected) => {
    expect(temperatures(`main_journal_diameter: ${lines}`, head)).toEqual(expected);
  });

  it.each([
    ['in general', 'compression_pressure: { temperature: 70 degF, new: { min: 40 psi } }'],
    [
      'at a position',
      'turning_torque: { at: { crankshaft: { temperature: 70 degF, new: { max: 3 lbf ft } } } }',
    ],
  ])('is refused of what is no length, %s', (_, lines) => {
    expect(refusalsOf(files(lines)).map((each) => each.split(' ')[1])).toEqual(['value']);
  });

  it('of bands of several temperatures is the first that is stated', () => {
    const at = (text: string) => ({ amount: { n: 1n, d: 1n }, text });
    expect(commonTemperature({ wear: at('a'), new: at('b') }).text).toBe('b');
    expect(commonTemperature({}).text).toBe('20 degC');
  });
});
