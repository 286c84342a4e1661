import { describe, expect, test } from 'vitest';
import { strengthOf } from '../../../src/torque/fasteners/grades.ts';
import { strength, thread } from '../known.ts';

const KSI = 6_894_757.293168;

/** Three figures, as the standard's stress areas and loads are printed. */
const threeFigures = (value: number): number => Number(value.toPrecision(3));
const proofLoadN = (grade: string, size: string): number =>
  threeFigures(thread(size).stressAreaM2 * 1e6) * (strength(grade, size).proofPa / 1e6);

describe('proof loads in newtons, as second-hand copies of ISO 898-1 print them', () => {
  test.each([
    ['M6', '10.9', 16700],
    ['M6', '12.9', 19500],
    ['M8', '8.8', 21200],
    ['M8', '10.9', 30400],
    ['M8', '12.9', 35500],
    ['M10', '10.9', 48100],
    ['M10', '12.9', 56300],
    ['M12', '8.8', 48900],
    ['M12', '10.9', 70000],
    ['M12', '12.9', 81800],
    ['M14', '8.8', 66700],
    ['M14', '10.9', 95500],
    ['M14', '12.9', 112000],
    ['M16', '10.9', 130000],
    ['M16', '12.9', 152000],
    ['M18', '8.8', 115000],
    ['M18', '10.9', 159000],
    ['M18', '12.9', 186000],
    ['M20', '8.8', 147000],
    ['M20', '10.9', 203000],
    ['M20', '12.9', 238000],
  ])('%s of class %s: %d N', (size, grade, printed) => {
    expect(threeFigures(proofLoadN(grade, size))).toBe(printed);
  });

  test.each([
    ['M6', 11600, 11658],
    ['M10', 33700, 33640],
    ['M16', 91000, 91060],
  ])('%s of class 8.8 is printed as %d N where strength times area is %d N', (size, printed, product) => {
    expect(proofLoadN('8.8', size)).toBeCloseTo(product, 6);
    expect(Math.abs(product / printed - 1)).toBeLessThan(0.0055);
  });
});

describe('proof strength of SAE J429 grades by size (grade 8 from memory)', () => {
  test.each([
    ['2', '1/4-20', 55],
    ['2', '3/4-10', 55],
    ['2', '7/8-9', 33],
    ['2', '1-1/2-6', 33],
    ['5', '1/4-28', 85],
    ['5', '1-8', 85],
    ['5', '1-1/8-7', 74],
    ['5', '1-1/2-12', 74],
    ['8', '9/16-12', 120],
    ['8', '1-1/2-6', 120],
  ])('grade %s at %s: %d ksi', (grade, size, ksi) => {
    expect(strength(grade, size).proofPa / KSI).toBeCloseTo(ksi, 9);
  });
});

test.each([
  ['8.8', 'M16', 580, 640],
  ['8.8', 'M18', 600, 660],
  ['10.9', 'M39', 830, 940],
  ['12.9', 'M3', 970, 1100],
])('class %s at %s: proof %d, yield %d MPa', (grade, size, proof, yieldAt) => {
  const found = strength(grade, size);
  expect([found.proofPa, found.yieldPa]).toEqual([proof * 1e6, yieldAt * 1e6]);
});

// SAE J429, yield strengths from memory, in ksi.
test.each([
  ['2', '3/4-10', 57],
  ['2', '7/8-9', 36],
  ['5', '1-8', 92],
  ['5', '1-1/8-7', 81],
  ['8', '1/4-20', 130],
  ['8', '1-1/2-6', 130],
])('grade %s at %s yields at %d ksi', (grade, size, ksi) => {
  expect(strength(grade, size).yieldPa / KSI).toBeCloseTo(ksi, 9);
});

test('a grade is read as people write it', () => {
  for (const written of ['8', 'grade 8', 'Grade 8', 'Gr 8', 'gr.8', 'SAE 8', 'SAE J429 grade 8']) {
    expect(strength(written, '1/2-13').grade).toBe('SAE J429 grade 8');
  }
  for (const written of ['10.9', ' 10.9 ', 'class 10.9', 'ISO 10.9']) {
    expect(strength(written, 'M12').grade).toBe('ISO 898-1 class 10.9');
  }
});

test('an inch grade on a metric bolt, an unknown grade and a size the standard leaves out are refused', () => {
  expect(strengthOf('8', thread('M12'))).toEqual({
    problem: '8 is not a known grade for M12 x 1.75',
    help: 'known for metric threads: 8.8, 10.9, 12.9; or state the proof strength that the fastener maker gives',
  });
  expect(strengthOf('10.9', thread('1/2-13'))).toHaveProperty('problem');
  expect(strengthOf('stainless', thread('1/2-13'))).toHaveProperty('problem');
  expect(strengthOf('5', thread('10-32'))).toEqual({
    problem: 'SAE J429 grade 5 states nothing for 10-32 UNF',
    help: 'state the proof strength that the fastener maker gives',
  });
});
