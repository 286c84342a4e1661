import { describe, expect, it } from 'vitest';
import { ENGINE, type Files, limitsOf, REGISTER, reportOf, sessionOf } from '../../shopOf.ts';

const STOCK = `kind: stock
pistons:
  - { mark: P1, diameter: 4.1212 }
  - { mark: P2, diameter: 4.1214 }
  - { mark: P3, diameter: 4.1215 }
  - { mark: P4, diameter: 4.1216 }
`;
const fitted = (...marks: readonly string[]): string =>
  `fitted: { pistons: { condition: new, at: { ${marks.map((mark, at) => `${at + 1}: { mark: ${mark} }`).join(', ')} } } }\n`;
const read = (...sizes: readonly string[]): string =>
  `- { measure: piston_diameter, with: mic, at: { ${sizes.map((size, at) => `${at + 1}: ${size}`).join(', ')} } }`;

const shop = (blocks: string, more: string, files: Files = {}): Files => ({
  'shop.yaml': 'kind: shop\nunits: { length: in }\n',
  'register.yaml': REGISTER,
  'stock.yaml': STOCK,
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf('piston_diameter: { new: 4.1100 to 4.1300, wear: { min: 4.1000 } }'),
  'e/session.yaml': sessionOf('rebuild', blocks, more),
  ...files,
});

const said = (files: Files): readonly string[] =>
  (reportOf(files).state?.findings ?? [])
    .filter(({ code }) => code === 'part/conflict')
    .map(({ severity, message, place }) => `${severity} ${place.path}:${place.line} ${message}`);

const RIGHT = ['4.1212', '4.1214', '4.1215', '4.1216'];
const ALL_RIGHT = fitted('P1', 'P2', 'P3', 'P4');
const SWAPPED = fitted('P4', 'P2', 'P3', 'P1');

describe('a piston that has a mark of the stock', () => {
  it.each<readonly [string, Files, readonly string[]]>([
    ['is as large as the stock says', shop(read(...RIGHT), ALL_RIGHT), []],
    [
      'is swapped with another',
      shop(read(...RIGHT), SWAPPED),
      [
        'warning e/session.yaml:4 piston 1 reads 4.1212 in, the size of P1, and piston 4 reads 4.1216 in, the size of P4; fitted: says P4 and P1 (stock.yaml:6:5, stock.yaml:3:5): the two marks look swapped',
      ],
    ],
    [
      'may be read otherwise by as much as both are uncertain',
      shop(read('4.1213', '4.1214', '4.1215', '4.1216'), ALL_RIGHT),
      [],
    ],
    [
      'is no piston of that mark, where the reading is farther off',
      shop(read('4.1205', '4.1214', '4.1215', '4.1216'), ALL_RIGHT),
      [
        'warning e/session.yaml:4 piston 1 reads 4.1205 in, and fitted: says P1, which is 4.1212 in (stock.yaml:3:5): they differ by 0.0007 in, more than both uncertainties',
      ],
    ],
    [
      'is not asked about where two of nearly one size are read by a digit otherwise',
      shop(read('4.1212', '4.1214', '4.1216', '4.1215'), ALL_RIGHT),
      [],
    ],
    [
      'is of unknown size where the stock has its mark twice',
      shop(read('4.1205'), fitted('P1'), {
        'more.yaml': 'kind: stock\npistons: [{ mark: P1, diameter: 4.1 }]\n',
      }),
      [],
    ],
    ['has another mark that the stock has not', shop(read('4.1205'), fitted('X9')), []],
  ])('%s', (_, files, expected) => expect(said(files)).toEqual(expected));

  const laterWith = (more: string): Files =>
    shop('- { measure: crankshaft_end_play, value: 0.006 }', SWAPPED, {
      'e/z.yaml': sessionOf('rebuild', read(...RIGHT), more).replace('2026-02-03', '2026-02-09'),
    });

  it.each([
    ['is compared with a reading of a later session of the run', '', 1],
    ['is not, once it was replaced', 'replaced: [{ part: pistons }]\n', 0],
    ['is not, once another is fitted', ALL_RIGHT, 0],
  ])('%s', (_, more, count) => expect(said(laterWith(more))).toHaveLength(count));

  it('is not compared after it ran', () => {
    const worn = read('4.1190', '4.1190', '4.1190', '4.1190');
    const run = { 'e/z.yaml': sessionOf('teardown', worn).replace('2026-02-03', '2027-02-03') };
    expect(said(shop(read(...RIGHT), ALL_RIGHT, run))).toEqual([]);
  });
});
