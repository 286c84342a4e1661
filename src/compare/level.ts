import type { Ends, Row } from '../checks/judge/row.ts';
import { temperatureOf } from '../checks/judge/warmBands.ts';
import { isSameTemperature } from '../measurement/temperature.ts';
import { add, type Fraction, subtract } from '../quantity/fraction.ts';

/** What a row measured, as warm as another one is judged: their limits may hold at unlike temperatures. */
export function levelWith(row: Row, other: Row): Ends | undefined {
  const [[judged], [there]] = [row.routes, other.routes];
  if (judged === undefined || there === undefined || isSameTemperature(warmthOf(row), warmthOf(other)))
    return judged;
  const end = (name: keyof Ends): Fraction =>
    add(judged.standard[name], subtract(there[name], there.standard[name]));
  return { least: end('least'), mean: end('mean'), greatest: end('greatest') };
}

const warmthOf = ({ limits: { inForce } }: Row): ReturnType<typeof temperatureOf> => temperatureOf(inForce);
