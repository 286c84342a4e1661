import { describe, expect, it } from 'vitest';
import type { LimitsDocument } from '../../../src/documents/limits/limits.ts';
import { toDecimal } from '../../../src/quantity/fraction.ts';
import { fromBase, unitNamed } from '../../../src/quantity/units.ts';
import { ENGINE, limitsOf, refusalsOf, shopFiles, shopOf } from '../../shopOf.ts';

const files = (lines: string) => ({ 'e/engine.yaml': ENGINE, 'e/l.yaml': limitsOf(lines) });

function read(lines: string): LimitsDocument {
  const [limits] = shopOf(files(lines)).engine?.limits ?? [];
  if (limits === undefined) throw new Error(`not read: ${refusalsOf(files(lines)).join(', ')}`);
  return limits;
}

const clearance = (band: string) =>
  read(`main_bearing_clearance: ${band}`).limits.get('main_bearing_clearance');

const sidesOf = (band: string) => {
  const { new: found } = clearance(`{ new: ${band} }`)?.general.bands ?? {};
  return [found?.min, found?.max].map(
    (side) =>
      side && (side.kind === 'amount' ? toDecimal(fromBase(side.amount, unitNamed('in')), 4) : side.written),
  );
};

describe('a band', () => {
  it.each([
    ['{ min: 0.0020, max: 0.0038 }', ['0.0020', '0.0038']],
    ['{ max: 0.0038 }', [undefined, '0.0038']],
    ['{ min: 0.0020 }', ['0.0020', undefined]],
    ['0.0020 to 0.0038', ['0.0020', '0.0038']],
    ['0.0508 to 0.0965 mm', ['0.0020', '0.0038']],
    ['0.0508 mm to 0.0965 mm', ['0.0020', '0.0038']],
    ['2 to 3.8 thou', ['0.0020', '0.0038']],
    ['.0020 to .0038', ['0.0020', '0.0038']],
    [
      '{ min: 2 thou, max: { formula: "0.001 * main_journal_diameter" } }',
      ['0.0020', '0.001 * main_journal_diameter'],
    ],
  ])('%s', (band, expected) => expect(sidesOf(band)).toEqual(expected));

  it('of one value stands with both ends alike', () =>
    expect(sidesOf('0.0020 to 0.0020')).toEqual(['0.0020', '0.0020']));

  it('keeps the figures as printed', () => {
    const { max } = clearance('{ new: 0.0020 to 0.0038 }')?.general.bands.new ?? {};
    expect(max?.written).toBe('0.0038');
  });
});

describe('at positions', () => {
  it('stand by their key, with source and note', () => {
    const found = clearance(
      '{ new: { max: 1 }, at: { 3: { target: { max: 0.003 }, source: page 4, note: rear } } }',
    );
    expect(found?.at.map(({ path }) => path.map(({ key }) => key))).toEqual([['3']]);
    expect(found?.at[0]?.entry).toMatchObject({
      source: 'page 4',
      note: 'rear',
      bands: { target: { max: {} } },
    });
  });

  it('says how a taper is meant', () => {
    const found = read('cylinder_taper: { by: ends, per: 1 in, wear: { max: 0.001 } }').limits.get(
      'cylinder_taper',
    );
    expect(found?.general).toMatchObject({ by: 'ends', per: { n: 254_000_000n, d: 1n } });
  });
});

describe('what cannot be meant is refused, at its place', () => {
  it.each([
    ['a name that nobody knows', 'main_bearing_clearence: { new: { max: 1 } }', ['4:3 unknown-measure']],
    [
      'the least above the greatest',
      'main_bearing_clearance: { new: { min: 0.0038, max: 0.0020 } }',
      ['4:34 value'],
    ],
    ['a range that falls', 'main_bearing_clearance: { new: 0.0038 to 0.0020 }', ['4:34 value']],
    [
      'an amount of another quantity',
      'main_bearing_clearance: { new: { max: 5 psi } }',
      ['4:41 wrong-quantity'],
    ],
    [
      'a position that there is not',
      'main_bearing_clearance: { at: { 4: { new: { max: 1 } } } }',
      ['4:35 unknown-position'],
    ],
    [
      'a formula that cannot be read',
      'main_bearing_clearance: { new: { max: { formula: "0.001 *" } } }',
      ['4:52 formula'],
    ],
    [
      'a formula over nothing known',
      'main_bearing_clearance: { new: { max: { formula: "0.001 * boer" } } }',
      ['4:52 formula'],
    ],
    [
      'a limit that moves with the reading it is for',
      'main_journal_diameter: { new: { max: { formula: "main_journal_diameter + 0.001" } } }',
      ['4:51 formula'],
    ],
    [
      'a length for what is no taper',
      'main_bearing_clearance: { per: 1 in, new: { max: 1 } }',
      ['4:29 value'],
    ],
    [
      'a way to take a taper for what is not one',
      'cylinder_bore: { by: ends, new: { max: 1 } }',
      ['4:20 value'],
    ],
    ['a band with no side', 'main_bearing_clearance: { new: {} }', ['4:34 value']],
    [
      'positions below a position',
      'main_bearing_clearance: { at: { 1: { new: { max: 1 }, at: { 2: { new: { max: 1 } } } } } }',
      ['4:57 unknown-key'],
    ],
    [
      'an edition at a position',
      'main_bearing_clearance: { at: { 1: { new: { max: 1 }, from: 2026-01-01 } } }',
      ['4:57 unknown-key'],
    ],
    ['a band called otherwise', 'main_bearing_clearance: { worn: { max: 1 } }', ['4:29 unknown-key']],
  ])('%s', (_, lines, expected) =>
    expect(refusalsOf(files(lines)).map((each) => each.replace('e/l.yaml:', ''))).toEqual(expected),
  );

  it('and the engine is then not judged, never on half its limits', () => {
    expect(shopOf(files('main_bearing_clearence: { new: { max: 1 } }')).engine).toBeUndefined();
  });

  it('limits need their source', () => {
    const text = 'kind: limits\nlimits: { crankshaft_end_play: { new: { max: 1 } } }\n';
    expect(
      refusalsOf({ 'e/engine.yaml': ENGINE, 'e/l.yaml': text }).map((each) => each.replace(/.* /, '')),
    ).toEqual(['missing-key']);
  });
});

describe('a wear limit', () => {
  it.each([
    ['tighter than that of new parts above', '{ new: 0.0020 to 0.0040, wear: { max: 0.0030 } }', 1],
    ['tighter than that of new parts below', '{ new: 0.0020 to 0.0040, wear: { min: 0.0025 } }', 1],
    ['as wide as that of new parts', '{ new: 0.0020 to 0.0040, wear: { max: 0.0040 } }', 0],
  ])('%s', (_, bands, refusals) => {
    expect(
      refusalsOf(
        shopFiles(
          `main_bearing_clearance: ${bands}`,
          '- { measure: main_bearing_clearance, at: { 1: 0.003 } }',
        ),
      ),
    ).toHaveLength(refusals);
  });

  it.each([
    [
      'one position sets the limit of new parts alone',
      '{ new: { max: 0.0040 }, wear: { max: 0.0050 }, at: { 2: { new: { max: 0.0060 } } } }',
      {},
      'the wear limit 0.0050 of main_bearing_clearance 2 is tighter than the 0.0060 of new parts (e/l.yaml:4:97)',
    ],
    [
      'one position sets the wear limit alone',
      '{ new: { max: 0.0040 }, at: { 2: { wear: { max: 0.0030 } } } }',
      {},
      'the wear limit 0.0030 of main_bearing_clearance 2 is tighter than the 0.0040 of new parts (e/l.yaml:4:41)',
    ],
    [
      'one document sets the one and the one above it the other',
      '{ wear: { max: 0.0030 } }',
      {
        'limits.yaml': `units: { length: in }\n${limitsOf('main_bearing_clearance: { new: { max: 0.0040 } }')}`,
      },
      'the wear limit 0.0030 of main_bearing_clearance is tighter than the 0.0040 of new parts (limits.yaml:5:41)',
    ],
  ])('tighter than that of new parts is seen where %s', (_, bands, more, message) => {
    const { diagnostics } = shopOf({ ...files(`main_bearing_clearance: ${bands}`), ...more });
    expect(diagnostics.map((each) => [each.code, each.message])).toContainEqual(['document/value', message]);
  });
});
