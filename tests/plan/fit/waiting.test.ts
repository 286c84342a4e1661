import { describe, expect, it } from 'vitest';
import { fitPage } from '../../../src/output/plan/fit/fitPage.ts';
import { fitsOf } from '../../../src/plan/fit/fits.ts';
import { ENGINE, limitsOf, REGISTER, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

const JOURNALS = (first: string): string =>
  `- { measure: main_journal_diameter, with: mic, at: { 1: ${first}, 2: 2.9985, 3: 2.9985 } }\n`.repeat(2);
const PINS = (first: string): string =>
  `- { measure: crankpin_diameter, with: mic, at: { 1: ${first}, 2: 2.4985, 3: 2.4985, 4: 2.4985 } }\n`.repeat(
    2,
  );
const HOUSINGS = '- { measure: main_housing_bore, with: fine, at: { 1: 3.2505, 2: 3.2505, 3: 3.2505 } }\n';

function pageOf(blocks: string, more = '') {
  const context = contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: in }\n',
    'register.yaml': REGISTER,
    'stock.yaml': 'kind: stock\nshells: [{ code: M, fits: main shells, wall: 0.1250, count: 6 }]\n',
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf(`main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }
crankpin_diameter: { new: 2.4980 to 2.4990, wear: { min: 2.4970 } }
main_bearing_clearance: { new: 0.0010 to 0.0030 }`),
    'e/session.yaml': sessionOf('teardown', blocks, more),
  });
  return fitPage(fitsOf(context), context, []);
}

describe('the first line of what was chosen', () => {
  it.each<readonly [string, readonly string[], readonly string[]]>([
    [
      'is that each place has its part',
      [`${JOURNALS('2.9985')}${HOUSINGS}`],
      ['each place has its part; taken together they lie as near to the middle as stock allows'],
    ],
    [
      'says what waits for journals that are still to be ground',
      [`${JOURNALS('2.9960')}${HOUSINGS}`],
      ['nothing is chosen yet', 'main shells wait until the ground main journals are measured'],
    ],
    [
      'says what waits for a new crankshaft',
      [`${JOURNALS('2.9985')}${HOUSINGS}`, 'found: [{ on: crankshaft, is: cracked, do: renew }]\n'],
      ['nothing is chosen yet', 'main shells wait until the new crankshaft is measured'],
    ],
    [
      'names shells of ground pins of which none is in stock',
      [`${JOURNALS('2.9985')}${HOUSINGS}${PINS('2.4960')}`],
      ['what could be chosen has its part; this has not', 'rod shells: none in stock'],
    ],
    [
      'names them until they are in',
      [
        `${JOURNALS('2.9985')}${HOUSINGS}${PINS('2.4885').replaceAll('2.4985', '2.4885')}`,
        'machined: [{ part: crankpins, size: 0.010 under }]\n',
      ],
      ['what could be chosen has its part; this has not', 'rod shells: none in stock'],
    ],
  ])('%s', (_, [blocks = '', more], lines) => expect(pageOf(blocks, more).answer).toEqual(lines));
});

describe('shells that wait for ground journals', () => {
  const linesOf = (housings: string) =>
    pageOf(`${JOURNALS('2.9960')}${housings}`).sections.find(({ title }) => title === 'main shells')?.lines;

  it('name the housings that nobody has measured', () => {
    expect(linesOf(HOUSINGS.replace(', 3: 3.2505', ''))).toEqual([
      'the main journals are to be ground: chosen when they are back and measured',
      'until then measure main housing bore 3',
    ]);
  });

  it('name none where all are measured', () => {
    expect(linesOf(HOUSINGS)).toEqual([
      'the main journals are to be ground: chosen when they are back and measured',
    ]);
  });
});

describe('shells of some rods that are to be renewed', () => {
  const READ = `- { measure: crankpin_diameter, with: mic, at: { 1: 2.4985, 2: 2.4985, 3: 2.4985, 4: 2.4985 } }
- { measure: rod_housing_bore, with: fine, at: { 1: 2.7505, 2: 2.7505, 3: 2.7505, 4: 2.7505 } }
- { measure: rod_crack_test, at: { 1: pass, 2: fail, 3: pass, 4: pass } }
`;
  const context = contextOf({
    'shop.yaml': 'kind: shop\nunits: { length: in }\n',
    'register.yaml': REGISTER,
    'stock.yaml': 'kind: stock\nshells: [{ code: R, fits: rod shells, wall: 0.1250, count: 8 }]\n',
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf(`crankpin_diameter: { new: 2.4980 to 2.4990, wear: { min: 2.4970 } }
rod_bearing_clearance: { new: 0.0010 to 0.0030 }`),
    'e/session.yaml': sessionOf('machined', READ, 'found: [{ on: connecting rod 4, is: bent, do: renew }]\n'),
  });
  const page = fitPage(fitsOf(context), context, []);
  const [shells] = page.sections;

  it('wait until the new ones are measured, and the others are chosen', () => {
    expect(shells?.table?.rows.map((row) => row[1])).toEqual(
      ['R, both', 'none', 'R, both', 'none'].map((text) => expect.objectContaining({ text })),
    );
    expect(shells?.lines).toEqual([
      '2: waits until the new connecting rod is measured',
      '4: waits until the new connecting rod is measured',
    ]);
  });

  it('are named in the first line', () => {
    expect(page.answer).toEqual(['not everything has its part: what lacks one says why']);
  });
});
