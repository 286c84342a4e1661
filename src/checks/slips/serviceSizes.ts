import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Position } from '../../layout/position.ts';
import { toNumber } from '../../quantity/fraction.ts';
import { unitNamed } from '../../quantity/units.ts';
import { sessionsBefore } from '../history/earlier.ts';
import type { SessionView } from '../judge/row.ts';

const inUnit = (name: string, amounts: readonly number[]): readonly number[] =>
  amounts.map((amount) => amount * toNumber(unitNamed(name).factor));

/** Steps in which journals are ground and cylinders bored (TM 9-2815-225-34&P, p. 183, and common practice). */
const STEPS: readonly number[] = [
  ...inUnit('in', [0.01, 0.02, 0.03, 0.04, 0.05, 0.06]),
  ...inUnit('mm', [0.25, 0.5, 0.75, 1, 1.25, 1.5]),
];

const FACTOR = { smaller: -1, larger: 1, 'thicker by half': 0.5 } as const;

/** How far a part's size may lie from standard: nought, and each service size. In the base unit. */
export const serviceShifts = ({ service }: Characteristic): readonly number[] =>
  service === undefined ? [0] : [0, ...STEPS.map((step) => FACTOR[service.way] * step)];

/** The shift that the session, or an earlier one, says is fitted at a position. */
export function statedShift(
  { service }: Characteristic,
  position: Position,
  { engine, session }: SessionView,
): number | undefined {
  if (service === undefined) return undefined;
  const sessions = [session, ...sessionsBefore(engine, session).toReversed()];
  const [part = ''] = service.part.split(' ');
  for (const { grades } of sessions) {
    const grade = grades.get(`${part} ${position.key}`) ?? grades.get(service.part) ?? grades.get(part);
    if (grade === undefined) continue;
    // `0.010 under` on shells is the shaft's size: they are thicker by half of it.
    return service.way === 'thicker by half' ? -0.5 * toNumber(grade) : toNumber(grade);
  }
  return undefined;
}
