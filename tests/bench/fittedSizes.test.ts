import { describe, expect, it } from 'vitest';
import { bandsText } from '../../src/bench/bandsText.ts';
import { nominalSize } from '../../src/bench/instruments.ts';
import type { Characteristic } from '../../src/characteristics/characteristic.ts';
import type { Engine } from '../../src/documents/assemble.ts';
import { findPosition } from '../../src/layout/readKey.ts';
import { engineIn, limitsOf, sessionOf, shopOf } from '../shopOf.ts';

const { engine, registry } = shopOf({
  'e/engine.yaml': engineIn('in', 'sizes: { bore: 4.0000, main_journal_diameter: 3.0000 }\n'),
  'e/limits.yaml': limitsOf(`main_journal_diameter: { new: 2.9990 to 3.0000, wear: { min: 2.9980 } }
main_shell_thickness: { new: 0.0930 to 0.0935 }
cylinder_bore: { new: 4.0000 to 4.0010 }`),
  'e/session.yaml': sessionOf(
    'trial',
    '- { measure: crankshaft_end_play, value: 0.006 }',
    'machined: [{ part: main journals, size: 0.010 under }, { part: cylinders, at: 2, size: 0.020 over }]\nfitted: { main_shells: { at: { 3: { lower: 0.011 under } } } }\n',
  ),
});

/** A characteristic at a position, of the engine as it stands. */
function asked(
  measure: string,
  name: string,
): readonly [Characteristic, ReturnType<typeof findPosition>, Engine] {
  const of = registry.find(measure);
  if (engine === undefined || of === undefined) throw new Error('the documents are not sound');
  return [of, findPosition(engine.document.layout, of.family, name), engine];
}

describe('the limits that are shown at the bench', () => {
  it.each([
    ['main_journal_diameter', '2', 'new 2.9890 to 2.9900, wear min 2.9880'],
    ['main_shell_thickness', '2', 'new 0.0980 to 0.0985'],
    ['main_shell_thickness', '3', 'upper new 0.0980 to 0.0985; lower new 0.0985 to 0.0990'],
    ['cylinder_bore', '1', 'new 4.0000 to 4.0010'],
    ['cylinder_bore', '2', 'new 4.0200 to 4.0210'],
  ])('%s %s: %s', (measure, position, text) => {
    expect(bandsText(...asked(measure, position))).toBe(text);
  });

  it('say at which temperature they hold, where that is stated', () => {
    const { engine, registry } = shopOf({
      'e/engine.yaml': engineIn('in'),
      'e/limits.yaml': limitsOf(
        'cylinder_bore: { temperature: 70 degF, new: { min: 4.0000, max: 4.0010 }, wear: { max: 4.0050 } }',
      ),
    });
    const bore = registry.find('cylinder_bore');
    if (engine === undefined || bore === undefined) throw new Error();
    expect(bandsText(bore, undefined, engine)).toBe(
      'new 4.0000 to 4.0010 at 70 degF, wear max 4.0050 at 70 degF',
    );
  });

  it('are those of the half that is asked for', () => {
    expect(bandsText(...asked('main_shell_thickness', '3'), 'lower')).toBe('new 0.0985 to 0.0990');
  });
});

describe('the nominal size that is shown at the bench', () => {
  it.each([
    ['main_journal_diameter', '1', '2.9900'],
    ['cylinder_bore', '1', '4.0000'],
    ['cylinder_bore', '2', '4.0200'],
    ['piston_diameter', '2', '4.0200'],
  ])('%s %s: %s', (measure, name, written) => {
    const [of, position, its] = asked(measure, name);
    expect(position && nominalSize(of, position, its)?.written).toBe(written);
  });
});
