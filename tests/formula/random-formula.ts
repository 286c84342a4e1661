import fc from 'fast-check';

export const NAMES = ['bore', 'stroke', 'wear', 'cap_2'] as const;

const number = fc
  .tuple(fc.integer({ min: 0, max: 99 }), fc.constantFrom('', '.5', '.25', '.0005', '.10', '.333'))
  .map(([whole, decimals]) => `${whole}${decimals}`);
const leaf = fc.oneof(number, fc.constantFrom(...NAMES), fc.constantFrom('.5', '0', '1', '2'));

const space = fc.constantFrom('', ' ');

/**
 * Text of a formula that reads, up to 200 characters: every operator and function, spare brackets and all spacings.
 * Many roots are of a square or of a distance, so that some are whole and few negative.
 */
const tree = fc.letrec<{ formula: string }>((tie) => {
  const part = tie('formula');
  const pair = fc.tuple(part, part);
  return {
    formula: fc.oneof(
      { maxDepth: 4, depthSize: 'medium' },
      leaf,
      fc.tuple(part, space, fc.constantFrom('+', '-', '*', '/'), space, part).map((all) => all.join('')),
      part.map((a) => `(${a})`),
      part.map((a) => `-(${a})`),
      leaf.map((a) => `-${a}`),
      part.map((a) => `abs(${a})`),
      pair.map(([a, b]) => `max(${a}, ${b})`),
      fc.tuple(part, part, leaf).map(([a, b, c]) => `min(${a}, ${b} , ${c})`),
      fc.tuple(part, part, leaf).map(([a, b, c]) => `mean(${a} , ${b}, ${c})`),
      fc.tuple(part, leaf).map(([a, b]) => `sum(${a}, ${b})`),
      part.map((a) => `sqrt(abs(${a}))`),
      part.map((a) => `sqrt(${a})`),
      leaf.map((a) => `sqrt((${a})*(${a}))`),
      part.map((a) => `round(${a})`),
      fc.tuple(part, fc.integer({ min: 0, max: 6 })).map(([a, places]) => `round(${a}, ${places})`),
    ),
  };
});

export const formulaText = tree.formula.filter((text) => text.length <= 200);
