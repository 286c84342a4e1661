import { describe, expect, it } from 'vitest';
import { fitsOf } from '../../../src/plan/fit/fits.ts';
import { type Files, limitsOf, sessionOf } from '../../shopOf.ts';
import { contextOf, lengthIn } from '../planOf.ts';

/** Service data nsxb07012a and nsxb07013b (W12): bores and pistons of both oversizes, and .006 to .034 mm between them. */
const ROWS = [
  { size: '0.25 over', bore: ['90.250', '90.260'], piston: ['90.226', '90.244'] },
  { size: '0.50 over', bore: ['90.500', '90.510'], piston: ['90.476', '90.494'] },
] as const;

const CLEARANCE = ['0.006', '0.034'] as const;

/** One bore that was made over, and one piston of that size on the shelf. */
const shop = (size: string, bore: string, piston: string): Files => ({
  'shop.yaml': 'kind: shop\nunits: { length: mm, mass: g }\n',
  'stock.yaml': `kind: stock\npistons: [{ mark: P, size: ${size}, diameter: ${piston} }]\n`,
  'e/engine.yaml': 'kind: engine\nname: One\nlayout: { cylinders: 1 }\n',
  'e/limits.yaml': limitsOf(
    `cylinder_bore: { new: 90.00 to 90.01 }\npiston_clearance: { new: ${CLEARANCE.join(' to ')} }`,
  ),
  'e/session.yaml': sessionOf(
    'machined',
    `- { measure: cylinder_bore, directions: [thrust, axial], at: { 1: [${bore}, ${bore}] } }`,
    `machined: [{ part: cylinders, size: ${size} }]\n`,
  ),
});

function fitIn(files: Files): string | undefined {
  const { pistons } = fitsOf(contextOf(files));
  const [place] = pistons?.places ?? [];
  return place === undefined ? pistons?.problem?.kind : `${place.piston.mark} ${lengthIn('mm', place.least)}`;
}

const moved = (size: string, by: number): string => (Number(size) + by).toFixed(3);

describe.each(ROWS)('a piston of $size for a bore of that size', ({ size, bore, piston }) => {
  it('fits at both ends of what is printed', () => {
    expect(fitIn(shop(size, bore[0], piston[1]))).toBe(`P ${CLEARANCE[0]}`);
    expect(fitIn(shop(size, bore[1], piston[0]))).toBe(`P ${CLEARANCE[1]}`);
  });

  it('fits no more a thousandth beyond either', () => {
    expect(fitIn(shop(size, bore[0], moved(piston[1], 0.001)))).toBe('nothing fits');
    expect(fitIn(shop(size, bore[1], moved(piston[0], -0.001)))).toBe('nothing fits');
  });

  it('of another size is none for it', () => {
    const other = size === '0.25 over' ? '0.50 over' : '0.25 over';
    const files = shop(size, bore[0], piston[0]);
    const shelf = (files['stock.yaml'] ?? '').replace(size, other);
    expect(fitIn({ ...files, 'stock.yaml': shelf })).not.toMatch(/^P/);
  });
});
