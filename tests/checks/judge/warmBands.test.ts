import { describe, expect, it } from 'vitest';
import type { PositionLimits } from '../../../src/checks/judge/limits.ts';
import type { SideLimit } from '../../../src/checks/judge/sideLimit.ts';
import {
  atStandard,
  bandsElsewhere,
  temperatureOf,
  warmLimits,
} from '../../../src/checks/judge/warmBands.ts';
import type { Route } from '../../../src/checks/value/route.ts';
import { startOfFile } from '../../../src/diagnostic/place.ts';
import type { BandName } from '../../../src/documents/limits/bands.ts';
import type { LimitsInForce } from '../../../src/documents/limits/precedence.ts';
import { STANDARD_TEMPERATURE, type StatedTemperature } from '../../../src/measurement/temperature.ts';
import { fraction, toNumber } from '../../../src/quantity/fraction.ts';
import { measuredAs, routeOf } from '../value/routeOf.ts';

const WARM: StatedTemperature = { amount: fraction(90), text: '90 degC' };
const HERE = { key: '1' } as Route['position'];
const THERE = { key: '2' } as Route['position'];

const side = (amount: number, band: BandName): SideLimit => ({
  amount: fraction(amount),
  written: `${amount}`,
  band,
  place: startOfFile('l.yaml'),
});

const inForce = (temperatures: LimitsInForce['temperatures'], ...names: readonly BandName[]): LimitsInForce =>
  ({ temperatures, bands: Object.fromEntries(names.map((name) => [name, {}])) }) as unknown as LimitsInForce;

const limitsOf = (temperatures: LimitsInForce['temperatures']): PositionLimits => ({
  inForce: inForce(temperatures, 'new', 'wear'),
  bands: {
    new: { min: side(20, 'new'), max: side(38, 'new') },
    wear: { min: undefined, max: side(50, 'wear') },
  },
  lacking: [],
  failed: [],
  open: new Set(),
});

describe('bands that hold at another temperature than the one at which a place is judged', () => {
  it.each([
    ['none where no band states one', inForce({}, 'new', 'wear'), []],
    ['none where all state the same', inForce({ new: WARM, wear: WARM }, 'new', 'wear'), []],
    ['not a band that is not there', inForce({ new: WARM, wear: STANDARD_TEMPERATURE }, 'new'), []],
  ])('are %s', (_, stated, expected) => {
    expect(bandsElsewhere(stated)).toEqual(expected);
  });

  it('are those that state none beside one that does', () => {
    const mixed = inForce({ wear: WARM }, 'new', 'wear');
    expect(temperatureOf(mixed)).toBe(WARM);
    expect(bandsElsewhere(mixed)).toEqual([['new', STANDARD_TEMPERATURE]]);
  });
});

describe('a limit at another temperature', () => {
  const route = routeOf({ position: HERE, measured: measuredAs(100, 200) });
  const warmer = (more: Partial<Route> = {}) =>
    routeOf({ ...route, measured: measuredAs(107, 211), ...more });
  const stated = limitsOf({ wear: WARM });
  const moved = (there: readonly Route[]) => {
    const { bands } = warmLimits(stated, route, () => there, 'length');
    const shown = (limit: SideLimit | undefined) =>
      limit && [toNumber(limit.amount), limit.stated && toNumber(limit.stated)];
    return [shown(bands.new?.min), shown(bands.new?.max), shown(bands.wear?.min), shown(bands.wear?.max)];
  };

  it('moves as far as the value itself between the two, each side with its end', () => {
    expect(moved([warmer()])).toEqual([[13, 20], [27, 38], undefined, [50, undefined]]);
  });

  it.each([
    ['by another name', { name: 'a − b' }],
    ['of another block', { block: undefined }],
    ['at another place', { position: THERE }],
    ['with other inputs', { inputs: [routeOf()] }],
  ])('does not go by a value %s', (_, more) => {
    expect(moved([warmer(more), warmer()])).toEqual(moved([warmer()]));
    const still = moved([warmer(more)]).map((each) => each?.[0]);
    expect(still).toEqual([20, 38, undefined, 50]);
  });

  it('stays as it is where all hold here', () => {
    for (const limits of [limitsOf({}), limitsOf({ new: WARM, wear: WARM })])
      expect(warmLimits(limits, route, () => [warmer()], 'length')).toBe(limits);
  });
});

describe('a value at 20 °C', () => {
  const route = routeOf({ position: HERE, inputs: [routeOf({ name: 'a' }), routeOf({ name: 'b' })] });
  const alike = routeOf({ ...route, measured: measuredAs(5) });

  it('is the value itself where it was judged there', () => {
    expect(atStandard(route, STANDARD_TEMPERATURE, () => [alike])).toBe(route);
  });

  it('is else that of the same readings, worked out in the same way', () => {
    const others = [
      routeOf({ ...alike, inputs: [routeOf({ name: 'a' }), routeOf({ name: 'c' })] }),
      routeOf({ ...alike, inputs: [routeOf({ name: 'a' })] }),
    ];
    const asked: string[] = [];
    const routesAt = (warm: StatedTemperature) => {
      asked.push(warm.text);
      return [...others, alike];
    };
    expect(atStandard(route, WARM, routesAt)).toBe(alike);
    expect(asked).toEqual(['20 degC']);
    expect(atStandard(route, WARM, () => others)).toBe(route);
  });
});
