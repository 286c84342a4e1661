/** A kinematic viscosity in cSt at a temperature in °C. */
export interface ViscosityAt {
  readonly temperature: number;
  readonly viscosity: number;
}

/**
 * The kinematic viscosity of an oil at any temperature, by two of them: log₁₀ log₁₀ (ν + 0.7) = A − B log₁₀ T, T in kelvin
 * (ASTM D341, for 2 cSt and above; below that it is a little off). Two alike temperatures give no line.
 */
export function viscosityCurve(a: ViscosityAt, b: ViscosityAt): (temperature: number) => number {
  if (a.temperature === b.temperature) throw new RangeError('two viscosities at one temperature');
  const [ya, yb] = [doubleLog(a.viscosity), doubleLog(b.viscosity)];
  const [xa, xb] = [logKelvin(a.temperature), logKelvin(b.temperature)];
  const slope = (yb - ya) / (xb - xa);
  return (temperature) => 10 ** (10 ** (ya + slope * (logKelvin(temperature) - xa))) - SHIFT;
}

const SHIFT = 0.7;
const doubleLog = (viscosity: number): number => Math.log10(Math.log10(viscosity + SHIFT));
const logKelvin = (temperature: number): number => Math.log10(temperature + 273.15);
