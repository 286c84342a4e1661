import { namedAt } from '../../layout/naming.ts';
import { toNumber } from '../../quantity/fraction.ts';
import { type Finding, finding } from '../finding.ts';
import { andMore, placeOfPoint } from '../value/readingPoints.ts';
import { IMPLAUSIBLE } from './implausible.ts';
import { type DoubtedPoint, openPoints, type SlipContext } from './slipContext.ts';

/** One number with fewer decimals than all others of its block: once for each block. */
export function shortFindings(
  { view, points: all }: SlipContext,
  said: readonly Finding[],
): readonly Finding[] {
  const blocks = openPoints(all, said, ({ block }) => block);
  return [...blocks.values()].flatMap((points) => {
    const [short, ...more] = shortOf(points);
    if (short === undefined) return [];
    const { characteristic, reading, point } = short;
    const named = namedAt(characteristic.label, reading.position);
    const message = `${named}: written ${point.written}: the last figure not read, or a nought left out${andMore(more.length)}; write what the instrument showed`;
    const about = { measure: characteristic.id, position: reading.position };
    return [finding(IMPLAUSIBLE, placeOfPoint(view.session, short), message, about)];
  });
}

/** None where a fifth of the others are short as well: then that is how this shop writes. */
function shortOf(points: readonly DoubtedPoint[]): readonly DoubtedPoint[] {
  const steps = points.map(({ point }) => toNumber(point.lastDigit));
  const finest = Math.min(...steps);
  const short = points.filter((_, index) => steps[index] === 10 * finest);
  const others = steps.filter((step) => step === finest).length;
  const hasDecimals = points.every(({ point }) => point.written.includes('.'));
  return hasDecimals && others >= FEWEST_USUAL * short.length ? short : [];
}

const FEWEST_USUAL = 4;
