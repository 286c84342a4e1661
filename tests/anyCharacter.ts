import fc from 'fast-check';

const FIRST_HALF = 0xd800;
const HALVES = 0x800;

const character = (index: number): string =>
  String.fromCodePoint(index < FIRST_HALF ? index : index + HALVES);

function indexOf(text: unknown): number {
  const [first = '', ...others] = typeof text === 'string' ? text : '';
  const point = first.codePointAt(0);
  if (point === undefined || others.length > 0) throw new Error('no character');
  return point < FIRST_HALF ? point : point - HALVES;
}

/**
 * Any character of Unicode, but for halves of pairs: what fast-check draws as `binary`, and in the same order. That one
 * makes a list of all million of them first, which takes a second and room for as long as tests run.
 */
export const anyCharacter = fc.nat(0x10ffff - HALVES).map(character, indexOf);
