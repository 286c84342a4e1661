import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oncePerTexts } from '../oncePerTexts.ts';
import { runs } from '../propertyRuns.ts';
import { type Files, reportOf } from '../shopOf.ts';
import { filesOf, type RandomShop, randomShop } from './randomShop.ts';

const RUNS = runs(150, 20);

const reportOnce = oncePerTexts((files) => reportOf(files));

const verdictsOf = (files: Files): Readonly<Record<string, string | null>> =>
  Object.fromEntries(
    (reportOnce(files).sessions[0]?.rows ?? []).map(({ characteristic, position, judgement }) => [
      `${characteristic.id} ${position.name}`,
      judgement.verdict,
    ]),
  );

/** Every row's verdict, and how often each finding was made. */
function said(files: Files): ReadonlyMap<string, string | number | null> {
  const [session] = reportOnce(files).sessions;
  const found = new Map<string, number>();
  for (const { code } of session?.findings ?? []) found.set(code, (found.get(code) ?? 0) + 1);
  return new Map<string, string | number | null>([
    ...Object.entries(verdictsOf(files)),
    ...[...found].sort(),
  ]);
}

describe('the same session in inches and in millimetres', () => {
  it('gets the same verdicts and the same findings', () => {
    const seen = new Set<string | number | null>();
    fc.assert(
      fc.property(randomShop, (shop) => {
        const [inches, millimetres] = [filesOf(shop, 'in'), filesOf(shop, 'mm')];
        const verdicts = said(inches);
        for (const verdict of verdicts.values()) seen.add(verdict);
        expect(said(millimetres)).toEqual(verdicts);
      }),
      RUNS,
    );
    // The sessions must not all be alike, or nothing is shown.
    for (const verdict of ['ok', 'out', 'undecided']) expect(seen).toContain(verdict);
  });

  it('may mix the units of its documents', () => {
    fc.assert(
      fc.property(randomShop, (shop) => {
        const [inches, millimetres] = [filesOf(shop, 'in'), filesOf(shop, 'mm')];
        const mixed = {
          ...inches,
          'e/limits.yaml': `units: { length: mm }\n${millimetres['e/limits.yaml']}`,
        };
        expect(verdictsOf(mixed)).toEqual(verdictsOf(inches));
      }),
      runs(50, 15),
    );
  });
});

describe('a reading more', () => {
  it('never takes another’s row away', () => {
    fc.assert(
      fc.property(randomShop, fc.integer({ min: 0, max: 4 }), (shop, which) => {
        const without: RandomShop = {
          ...shop,
          blocks: shop.blocks.filter((_, index) => index !== which % shop.blocks.length),
        };
        const after = Object.keys(verdictsOf(filesOf(shop, 'in')));
        if (without.blocks.length === 0) return;
        expect(after).toEqual(expect.arrayContaining(Object.keys(verdictsOf(filesOf(without, 'in')))));
      }),
      runs(50, 15),
    );
  });
});
