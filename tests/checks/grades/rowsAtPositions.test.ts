import { describe, expect, it } from 'vitest';
import {
  ENGINE,
  type Files,
  findingsOf,
  limitsOf,
  refusalsOf,
  rowsOf,
  sessionOf,
  shopOf,
} from '../../shopOf.ts';

const UNDER = 'machined: [{ part: main journals, size: 0.010 under }]\n';

const files = (limits: string, readings = '1: 2.9892, 2: 2.9882, 3: 2.9892', more = UNDER): Files => ({
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(limits),
  'e/session.yaml': sessionOf('machined', `- { measure: main_journal_diameter, at: { ${readings} } }`, more),
});

const judged = (limits: string) =>
  rowsOf(files(limits)).map(({ position, limits: { bands, inForce }, judgement }) =>
    [position.name, bands.new?.min?.written, inForce.rules.new, judgement.verdict].join(' '),
  );

describe('a row for a size that stands at a position', () => {
  it('holds there, and the general rule elsewhere', () => {
    expect(
      judged(
        'main_journal_diameter: { new: 2.9990 to 3.0000, at: { 2: { sizes: { 0.010 under: { new: 2.9880 to 2.9885 } } } } }',
      ),
    ).toEqual(['1 2.9890 moved ok', '2 2.9880 stated ok', '3 2.9890 moved ok']);
  });

  it('comes before a row that holds in general', () => {
    const row = (least: string) => `sizes: { 0.010 under: { new: ${least} to 2.9896 } }`;
    expect(
      judged(
        `main_journal_diameter: { new: 2.9990 to 3.0000, ${row('2.9891')}, at: { 2: { ${row('2.9881')} } } }`,
      ),
    ).toEqual(['1 2.9891 stated ok', '2 2.9881 stated ok', '3 2.9891 stated ok']);
  });

  it('of another size leaves the standard of its position moved', () => {
    expect(
      judged(
        'main_journal_diameter: { new: 2.9990 to 3.0000, at: { 2: { new: 2.9980 to 2.9990, sizes: { 0.020 under: { new: 2.9780 to 2.9785 } } } } }',
      ),
    ).toEqual(['1 2.9890 moved ok', '2 2.9880 moved ok', '3 2.9890 moved ok']);
  });

  it('names the size that an odd reading fits', () => {
    const odd = files(
      'main_journal_diameter: { new: 2.9990 to 3.0000, at: { 2: { sizes: { 0.013 under: { new: 2.9850 to 2.9855 } } } } }',
      '1: 2.9992, 2: 2.9852, 3: 2.9993',
      '',
    );
    const told = findingsOf(odd).filter(({ code }) => code === 'reading/grade');
    expect(told.map(({ message }) => message)).toEqual([expect.stringContaining('fits 0.013 under')]);
  });

  it.each([
    ['{ 0.010 undr: { new: 2.9880 to 2.9885 } }', 'unknown key `0.010 undr`'],
    ['{ 0.010 under: { nwe: 2.9880 to 2.9885 } }', 'unknown key `nwe`'],
    ['{ 0.010 under: { new: 2.9885 to 2.9880 } }', 'the least, 2.9885, is more than the greatest, 2.9880'],
    [
      '{ 0.010 under: { new: 1 to 2 }, 0.0100 under: { new: 1 to 2 } }',
      '0.0100 under and 0.010 under are one size',
    ],
  ])('is refused as %s', (sizes, message) => {
    const { diagnostics } = shopOf(files(`main_journal_diameter: { at: { 2: { sizes: ${sizes} } } }`));
    expect(diagnostics.map((each) => each.message)).toEqual([expect.stringContaining(message)]);
  });

  it('leaves no other figure of its position unread', () => {
    expect(refusalsOf(files('main_journal_diameter: { at: { 2: { last_size: heavy } } }'))).toEqual([
      'e/limits.yaml:4:50 type',
    ]);
    expect(refusalsOf(files('main_journal_diameter: { at: { 2: { by: ends } } }'))).toEqual([
      'e/limits.yaml:4:39 value',
    ]);
  });
});
