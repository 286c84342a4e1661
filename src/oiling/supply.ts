import { withUnit } from '../documents/amount.ts';
import type { Engine } from '../documents/assemble.ts';
import { viscosityCurve } from '../film/viscosity.ts';
import { toNumber } from '../quantity/fraction.ts';
import { ASSUMED_DENSITY, ASSUMED_INLET, ASSUMED_ROD_RATIO } from './assumptions.ts';
import { inPascals, inRevolutionsASecond } from './inSi.ts';

/** What all films of an engine share: speed, oil and how it comes; SI units, °C. */
export interface Supply {
  /** Of the crankshaft, a second. */
  readonly revolutions: number;
  readonly viscosityAt: (temperature: number) => number;
  readonly inlet: number;
  /** Undefined where no pressure is stated: then only what the journals draw in is counted. */
  readonly pressure: number | undefined;
}

/** What has to be stated before there is a film, as a person writes it into the engine document. */
export type Lacking = readonly string[];

export function supplyOf({ document: { duty, oil } }: Engine): Supply | Lacking {
  if (duty.speed === undefined || oil === undefined) {
    return [
      ...(duty.speed === undefined ? ['running: { speed: 1500 rpm }'] : []),
      ...(oil === undefined ? ['oil: { viscosity: { 40 degC: 150 cSt, 100 degC: 14.5 cSt } }'] : []),
    ];
  }
  const [cold, warm] = oil.viscosities.map(({ at, viscosity }) => ({
    temperature: toNumber(at.amount),
    viscosity: toNumber(viscosity.amount),
  }));
  const curve = cold && warm && viscosityCurve(cold, warm);
  if (curve === undefined) throw new RangeError('an oil without two viscosities');
  return {
    revolutions: inRevolutionsASecond(duty.speed),
    viscosityAt: (temperature) => curve(temperature) * 1e-6 * ASSUMED_DENSITY,
    inlet: duty.oilTemperature === undefined ? ASSUMED_INLET : toNumber(duty.oilTemperature.amount),
    pressure: duty.oilPressure && inPascals(duty.oilPressure),
  };
}

export const isLacking = (supply: Supply | Lacking): supply is Lacking => Array.isArray(supply);

/** What was taken since nothing states it, and what counts against the engine. */
export function assumptionsOf({ document: { duty, sizes } }: Engine): readonly string[] {
  const isByMass = duty.reciprocatingMass !== undefined && sizes.get('rod_centre_distance') === undefined;
  return [
    ...(duty.oilTemperature === undefined ? [`oil that comes in at ${ASSUMED_INLET} degC`] : []),
    `oil of ${ASSUMED_DENSITY} kg/m3, which takes up 1.51 MJ/m3 a degree`,
    ...(isByMass ? [`a rod ${(1 / ASSUMED_ROD_RATIO).toFixed(1)} times as long as the throw`] : []),
    ...(duty.oilPressure === undefined
      ? ['no oil pressure, so that only what the journals draw in is counted']
      : [`a groove all round the middle of each bearing, fed at ${withUnit(duty.oilPressure)}`]),
    ...(duty.loads.camshaft === undefined ? [] : ['a camshaft at half the speed of the crankshaft']),
    'all heat of friction leaves with the oil that the journal draws in',
  ];
}
