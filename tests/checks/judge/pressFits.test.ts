import { describe, expect, it } from 'vitest';
import {
  ENGINE,
  type Files,
  findingsOf,
  limitsOf,
  refusalsOf,
  rowsOf,
  sessionOf,
  verdictsOf,
} from '../../shopOf.ts';

/** A guide is larger than its hole: what is left between them is below zero. */
const SHOP = `kind: shop
units: { length: in }
characteristics:
  guide_hole: { label: guide hole, quantity: length, positions: cylinder, instrument: bore gauge }
  guide_outside: { label: guide outside, quantity: length, positions: cylinder, instrument: micrometer }
  guide_fit: { label: guide fit, quantity: length, positions: cylinder, formula: guide_hole - guide_outside, too_great: loose, too_small: tight }
  seat_fit: { label: seat fit, quantity: length, positions: cylinder, instrument: caliper, too_great: loose, too_small: tight }
`;

const files = (limits: string, blocks: string): Files => ({
  'shop.yaml': SHOP,
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(limits),
  'e/session.yaml': sessionOf('machined', blocks),
});

const verdictOf = (limits: string, reading: string) =>
  verdictsOf(files(`seat_fit: ${limits}`, `- { measure: seat_fit, at: { 1: ${reading} } }`))['seat_fit 1'];

const BAND = '{ new: -0.0030 to -0.0010 }';

describe('a press fit, whose limits lie below zero', () => {
  it.each([
    [BAND, '-0.0020', 'ok'],
    [BAND, '-0.0030', 'ok'],
    [BAND, '-0.0010', 'ok'],
    [BAND, '-0.0031', 'out'],
    [BAND, '-0.0009', 'out'],
    [BAND, '0.0020', 'out'],
    [BAND, '0', 'out'],
    ['{ new: { min: -0.0030, max: -0.0010 } }', '-0.0020', 'ok'],
    ['{ new: { max: -0.0010 } }', '-0.0200', 'ok'],
    ['{ new: { min: -0.0030 } }', '-0.0031', 'out'],
    ['{ new: -0.0030 to 0.0005 }', '0.0005', 'ok'],
    ['{ new: -0.0762 mm to -0.0254 mm }', '-0.0508 mm', 'ok'],
    ['{ new: { max: { formula: 0 - 0.0010 } } }', '-0.0009', 'out'],
    ['{ new: -0.0030 to -0.0010, target: -0.0022 to -0.0018 }', '-0.0025', 'off target'],
    [BAND, '-0.0030 to -0.0010', 'ok'],
    [BAND, '-0.0020 to -0.0005', 'undecided'],
    [BAND, '{ repeat: [-0.0020, -0.0022] }', 'ok'],
  ])('of %s that reads %s is %s', (limits, reading, verdict) => {
    expect(verdictOf(limits, reading)).toBe(verdict);
  });

  it('worked out from hole and guide is judged like one that was read', () => {
    const all = files(
      `guide_fit: ${BAND}`,
      '- { measure: guide_hole, at: { 1: 0.6240, 2: 0.6240, 3: 0.6240, 4: 0.6240 } }\n- { measure: guide_outside, at: { 1: 0.6260, 2: 0.6245, 3: 0.6275, 4: 0.6250 } }',
    );
    expect(verdictsOf(all)).toMatchObject({
      'guide_fit 1': 'ok',
      'guide_fit 2': 'out',
      'guide_fit 3': 'out',
      'guide_fit 4': 'ok',
    });
    const out = findingsOf(all).filter(({ code }) => code === 'reading/out');
    expect(out.map(({ message }) => message)).toEqual([
      'guide fit 2: -0.0005 in, loose by 5 tenths (new max -0.0010)',
      'guide fit 3: -0.0035 in, tight by 5 tenths (new min -0.0030)',
    ]);
  });

  it('worn is the one that lost its hold', () => {
    const all = (reading: string) =>
      verdictsOf({
        ...files(
          'seat_fit: { new: -0.0030 to -0.0010, wear: -0.0030 to -0.0005 }',
          `- { measure: seat_fit, at: { 1: ${reading} } }`,
        ),
        'e/session.yaml': sessionOf('teardown', `- { measure: seat_fit, at: { 1: ${reading} } }`),
      })['seat_fit 1'];
    expect([all('-0.0007'), all('-0.0004'), all('-0.0010')]).toEqual(['worn', 'out', 'ok']);
  });

  it('keeps its sign in what is printed', () => {
    const [row] = rowsOf(files(`seat_fit: ${BAND}`, '- { measure: seat_fit, at: { 1: -0.0020 } }'));
    const { min, max } = row?.limits.bands.new ?? {};
    expect([min?.written, max?.written]).toEqual(['-0.0030', '-0.0010']);
  });

  it('whose ends are exchanged is refused', () => {
    expect(
      refusalsOf(files('seat_fit: { new: -0.0010 to -0.0030 }', '- { measure: seat_fit, at: { 1: 0 } }')),
    ).toEqual(['e/limits.yaml:4:20 value']);
  });
});
