import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type JournalWear,
  reboreStep,
  regrindStep,
  type ServiceStep,
} from '../../../src/plan/cut/cleanUp.ts';
import {
  add,
  compare,
  type Fraction,
  fraction,
  parseDecimal,
  toDecimal,
} from '../../../src/quantity/fraction.ts';
import { runs } from '../../propertyRuns.ts';

const length = parseDecimal;
const NONE = fraction(0);

const middle = (low: string, high: string): Fraction => ({
  n: length(low).n + length(high).n,
  d: 2n * length(low).d,
});

const stepsOf = (
  rows: readonly (readonly [name: string, low: string, high: string])[],
): readonly ServiceStep[] => rows.map(([name, low, high]) => ({ name, aim: middle(low, high) }));

// TM 5-3805-262-34, p. 4-23: main journals, inches.
const MAINS = stepsOf([
  ['std', '2.9980', '2.9990'],
  ['0.010 under', '2.9880', '2.9890'],
  ['0.020 under', '2.9780', '2.9790'],
  ['0.030 under', '2.9680', '2.9690'],
]);

const journal = (smallest: string, more: Partial<JournalWear> = {}): JournalWear => ({
  smallest: length(smallest),
  runout: NONE,
  damage: 'none',
  expanded: NONE,
  polish: NONE,
  ...more,
});

describe('the smallest step that cleans up a journal', () => {
  it.each<[string, JournalWear, string, string]>([
    ['stands exactly on the step', journal('2.9885'), '0.010 under', '0.0000'],
    ['is one tenth too small for it', journal('2.9884'), '0.020 under', '0.0099'],
    ['runs out by two thou', journal('2.9900', { runout: length('0.0020') }), '0.020 under', '0.0095'],
    ['is scored half a thou deep', journal('2.9890', { damage: length('0.0005') }), '0.020 under', '0.0095'],
    [
      'is measured within two tenths',
      journal('2.9886', { expanded: length('0.0002') }),
      '0.020 under',
      '0.0099',
    ],
    ['keeps stock to polish', journal('2.9890', { polish: length('0.0005') }), '0.010 under', '0.0000'],
  ])('that %s', (_title, wear, name, spare) => {
    const choice = regrindStep(wear, MAINS);
    if (choice.kind !== 'step') throw new Error(choice.kind);
    expect([choice.step.name, toDecimal(choice.spare, 4)]).toEqual([name, spare]);
  });

  it('names the next one and what that leaves over', () => {
    const choice = regrindStep(journal('2.9900'), MAINS);
    if (choice.kind !== 'step') throw new Error(choice.kind);
    expect([choice.next?.step.name, toDecimal(choice.next?.spare ?? NONE, 4)]).toEqual([
      '0.020 under',
      '0.0115',
    ]);
  });

  it('says where it lies beyond the last step, and where scores were not measured', () => {
    expect(regrindStep(journal('2.9600'), MAINS)).toMatchObject({
      kind: 'beyond the last step',
      last: { name: '0.030 under' },
    });
    expect(regrindStep(journal('2.9990', { damage: 'not measured' }), MAINS)).toEqual({
      kind: 'not provable',
    });
  });

  it('never grows as runout, damage, uncertainty or stock shrink', () => {
    const tenths = fc.integer({ min: 0, max: 100 }).map((count) => fraction(count, 10_000));
    fc.assert(
      fc.property(
        fc.integer({ min: 29_600, max: 30_000 }),
        fc.tuple(tenths, tenths, tenths, tenths),
        fc.integer({ min: 0, max: 3 }),
        tenths,
        (smallest, [runout, damage, expanded, polish], which, more) => {
          const less = { smallest: fraction(smallest, 10_000), runout, damage, expanded, polish };
          const key = (['runout', 'damage', 'expanded', 'polish'] as const)[which] ?? 'runout';
          const worse = { ...less, [key]: add(less[key], more) };
          expect(depth(regrindStep(less, MAINS))).toBeLessThanOrEqual(depth(regrindStep(worse, MAINS)));
        },
      ),
      { seed: 20_261_128, ...runs(1_000) },
    );
  });
});

const depth = (choice: ReturnType<typeof regrindStep>): number =>
  choice.kind === 'step' ? MAINS.indexOf(choice.step) : MAINS.length;

describe('the smallest step that cleans up a cylinder', () => {
  // Bores of the Honda NSX service manual, rebore table: millimetres.
  const BORES = stepsOf([
    ['0.25 over', '90.25', '90.26'],
    ['0.50 over', '90.50', '90.51'],
  ]);
  const bore = (largest: string, centre: { offset: Fraction } | { unworn: Fraction }) => ({
    largest: length(largest),
    centre,
    damage: 'none' as const,
    expanded: NONE,
    honeStock: length('0.02'),
  });

  it('is not known where nobody measured how deep it is scored', () => {
    const scored = { ...bore('90.120', { unworn: length('90.005') }), damage: 'not measured' as const };
    expect(reboreStep(scored, BORES)).toEqual({ kind: 'not provable' });
  });

  it.each<[string, ReturnType<typeof bore>, string]>([
    ['on its old centre', bore('90.235', { offset: NONE }), '0.25 over'],
    ['a hundredth too large for it', bore('90.245', { offset: NONE }), '0.50 over'],
    ['worn to one side by a known amount', bore('90.200', { offset: length('0.02') }), '0.50 over'],
    ['worn to one side, nobody knows how far', bore('90.125', { unworn: length('90.01') }), '0.50 over'],
    ['little worn, nobody knows to which side', bore('90.120', { unworn: length('90.005') }), '0.25 over'],
  ])('%s', (_title, wear, name) => {
    const choice = reboreStep(wear, BORES);
    if (choice.kind !== 'step') throw new Error(choice.kind);
    expect(choice.step.name).toBe(name);
    expect(compare(choice.spare, NONE)).toBeGreaterThanOrEqual(0);
  });

  it('never takes a farther step as wear, damage, uncertainty or stock shrink', () => {
    const hundredths = fc.integer({ min: 0, max: 30 }).map((count) => fraction(count, 100));
    fc.assert(
      fc.property(
        fc.integer({ min: 90_000, max: 90_500 }),
        fc.tuple(hundredths, hundredths, hundredths, hundredths),
        fc.integer({ min: 0, max: 3 }),
        hundredths,
        (largest, [offset, damage, expanded, honeStock], which, more) => {
          const less = { largest: fraction(largest, 1000), centre: { offset }, damage, expanded, honeStock };
          const worse = [
            { ...less, centre: { offset: add(offset, more) } },
            { ...less, damage: add(damage, more) },
            { ...less, expanded: add(expanded, more) },
            { ...less, honeStock: add(honeStock, more) },
          ][which];
          const farther = (wear: typeof less): number => {
            const choice = reboreStep(wear, BORES);
            return choice.kind === 'step' ? BORES.indexOf(choice.step) : BORES.length;
          };
          expect(farther(less)).toBeLessThanOrEqual(farther(worse ?? less));
        },
      ),
      { seed: 20_261_128, ...runs(1_000) },
    );
  });
});
