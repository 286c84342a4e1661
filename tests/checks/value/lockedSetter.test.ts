import { expect, it } from 'vitest';
import { standardUncertainty, subtractValues, type Value } from '../../../src/measurement/value.ts';
import { REGISTER, rowsOf, shopFiles } from '../../shopOf.ts';

const REPEATS = `${REGISTER.replace('max_error: 0.0001 in }', 'max_error: 0.0001 in, repeatability: 0.00004 in }')}`;

function clearances(setTo: string, register = REPEATS): readonly Value[] {
  const rows = rowsOf(
    shopFiles(
      'main_bearing_clearance: { new: 0.0020 to 0.0038 }',
      `- { measure: main_bearing_clearance, with: bore, set_with: mic, ${setTo}, at: { 1: { front: 0.0030, rear: 0.0031 }, 2: 0.0030 } }`,
      'rebuild',
      { 'instruments.yaml': register },
    ),
  );
  return rows.flatMap(({ routes: [judged] }) =>
    judged === undefined ? [] : [judged.route.measured.least, judged.route.measured.greatest],
  );
}

const inTenths = (value: Value | undefined): number =>
  value === undefined ? Number.NaN : standardUncertainty(value) / 25_400;

it('a gauge zeroed in a micrometer locked at the journal carries how well that closes on it, once a journal', () => {
  const [least, greatest, , other] = clearances('set_to: journal');
  const [alone] = clearances('set_to: journal', REGISTER);
  expect(inTenths(least)).toBeCloseTo(Math.hypot(inTenths(alone), 0.4), 9);
  if (least === undefined || greatest === undefined || other === undefined) throw new Error('no clearance');
  const ownSteps = Math.SQRT2 / Math.sqrt(12);
  expect(inTenths(subtractValues(greatest, least))).toBeCloseTo(ownSteps, 9);
  expect(inTenths(subtractValues(greatest, other))).toBeCloseTo(Math.hypot(ownSteps, 0.4 * Math.SQRT2), 9);
});

it('one that was set to a size carries how well the setter was read on it, the same at every journal', () => {
  const [least, greatest, , other] = clearances('set_to: 3.0000');
  if (least === undefined || greatest === undefined || other === undefined) throw new Error('no clearance');
  const ownSteps = Math.SQRT2 / Math.sqrt(12);
  expect(inTenths(subtractValues(greatest, least))).toBeCloseTo(ownSteps, 9);
  expect(inTenths(subtractValues(greatest, other))).toBeCloseTo(ownSteps, 9);
});
