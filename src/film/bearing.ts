/** A round journal in a round bearing, in metres. */
export interface Bearing {
  readonly diameter: number;
  readonly length: number;
  /** Diametral, as it is measured. */
  readonly clearance: number;
}

/** What a bearing has to do, steadily. */
export interface Duty {
  /** Revolutions a second. */
  readonly revolutions: number;
  /** Dynamic viscosity of the oil in the film, in Pa s. */
  readonly viscosity: number;
  /** In newtons. */
  readonly load: number;
}

/** The oil film of a bearing at its duty, in SI units. */
export interface Film {
  readonly sommerfeld: number;
  /** 0 where the journal runs in the middle, 1 where it touches. */
  readonly eccentricity: number;
  /** The least film thickness. */
  readonly thickness: number;
  /** From the line of the load to the thinnest place, in degrees. */
  readonly attitude: number;
  readonly torque: number;
  /** Heat by friction. */
  readonly power: number;
  /** Oil that the turning journal draws in, and how much of it leaves at the sides. */
  readonly inflow: number;
  readonly sideFlow: number;
}

export const lengthRatio = ({ diameter, length }: Bearing): number => length / diameter;

/** Load over the area that the bearing shows to it. */
export const projectedPressure = ({ diameter, length }: Bearing, { load }: Duty): number =>
  load / (diameter * length);

/** S = (r/c)² μN/P, the number on which a steady film depends. */
export const sommerfeldNumber = (bearing: Bearing, duty: Duty): number =>
  ((bearing.diameter / bearing.clearance) ** 2 * duty.viscosity * duty.revolutions) /
  projectedPressure(bearing, duty);

/** Torque of a journal that runs in the middle: Petroff, T = 4π² r³ l μ N / c. */
export const petroffTorque = ({ diameter, length, clearance }: Bearing, { viscosity, revolutions }: Duty) =>
  (Math.PI ** 2 * diameter ** 3 * length * viscosity * revolutions) / clearance;

export const frictionPower = (torque: number, { revolutions }: Duty): number =>
  2 * Math.PI * revolutions * torque;

const surfaceSpeed = ({ diameter }: Bearing, { revolutions }: Duty): number =>
  Math.PI * diameter * revolutions;

/** r c N l, in which charts count a flow. */
export const flowUnit = (bearing: Bearing, duty: Duty): number =>
  (surfaceSpeed(bearing, duty) * bearing.clearance * bearing.length) / (4 * Math.PI);
