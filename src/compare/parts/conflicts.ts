import { type Finding, sortFindings } from '../../checks/finding.ts';
import { named, printingOf } from '../../checks/findings/readings.ts';
import { partConflict } from '../../checks/history/partConflict.ts';
import { unitOfRow } from '../../checks/judge/session.ts';
import type { Place } from '../../diagnostic/place.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { expandedFactor, welchSatterthwaite } from '../../measurement/conformance.ts';
import { standardUncertainty, subtractValues, type Value } from '../../measurement/value.ts';
import { formatUncertainty, withUnitName } from '../../quantity/format.ts';
import { compare, toNumber, ZERO } from '../../quantity/fraction.ts';
import type { TrendLine } from '../trend.ts';
import type { TrendPoint } from '../trendPoint.ts';
import type { MarkedPart } from './markedParts.ts';
import { markConflicts } from './marks.ts';
import { characteristicsOf, type MeasuredPart, partTrend } from './measuredPart.ts';

/** What documents say of a part that cannot all be true, with both places. */
export const conflictsOf = (part: MeasuredPart): readonly Finding[] =>
  sortFindings([...inTwoEngines(part), ...backwards(part), ...grownBack(part)]);

export const titleOf = ({ name, mark }: Pick<MarkedPart, 'name' | 'mark'>): string => `${name} ${mark}`;

const placeText = ({ path, line, column }: Place): string => `${path}:${line}:${column}`;

/** As a check of the whole shop tells it. */
const inTwoEngines = ({ stays }: MarkedPart): readonly Finding[] =>
  markConflicts(
    stays.map(({ of, name, mark, from, to, place }) => {
      const { document, folder } = of.engine;
      return { name, mark, from, to, place, engine: document.name, folder };
    }),
    [],
  );

/** Within an engine; from one to another meters are others. */
const backwards = (part: MarkedPart): readonly Finding[] =>
  part.stays.flatMap(({ sessions }) => {
    let before: SessionDocument | undefined;
    return sessions.flatMap((session) => {
      const [earlier, hours] = [before, session.hours];
      if (hours === undefined) return [];
      before = session;
      if (earlier?.hours === undefined || compare(hours.amount, earlier.hours.amount) >= 0) return [];
      const message = `${titleOf(part)}: hours ${hours.written} after ${earlier.hours.written} (${placeText(earlier.placeOf(earlier.hours.span))}): say hours_from where the meter was replaced`;
      return [partConflict(session.placeOf(hours.span), message, 'warning')];
    });
  });

/** What wears does not come back: another part, another place of it, or work that nobody wrote down. */
const grownBack = (part: MeasuredPart): readonly Finding[] =>
  characteristicsOf(part)
    .filter(({ figure }) => figure === 'size')
    .flatMap((each) => partTrend(part, each, 'date')?.lines ?? [])
    .flatMap((line) =>
      line.points.slice(1).flatMap((point, index) => {
        const before = line.points[index];
        return before === undefined ? [] : (grownBetween(part, line, before, point) ?? []);
      }),
    );

function grownBetween(
  part: MeasuredPart,
  { followed }: TrendLine,
  before: TrendPoint,
  after: TrendPoint,
): Finding | undefined {
  const grown = followed === 'least' ? after.y - before.y : followed === 'greatest' ? before.y - after.y : 0;
  const difference = subtractValues(errorsOf(after), errorsOf(before));
  const expanded =
    standardUncertainty(difference) * expandedFactor(welchSatterthwaite([...difference.terms.values()]));
  const engine = part.sittings.find(({ session }) => session === after.session)?.engine;
  if (grown <= Math.max(expanded, roundingOf(before, after)) || engine === undefined) return undefined;
  const printing = printingOf(after.row, (row) => unitOfRow(row, engine));
  const text = (y: number): string => (y / toNumber(printing.unit.factor)).toFixed(printing.decimals);
  const by = withUnitName(formatUncertainty(grown, printing.unit), printing.unit);
  const message = `${titleOf(part)}: ${named(after.row)} was ${text(before.y)} on ${before.session.date} (${placeText(before.row.place)}) and is ${text(after.y)} on ${after.session.date}: what wore came back by ${by}, more than ±${formatUncertainty(expanded, printing.unit)}, and no document tells of work`;
  return partConflict(after.row.place, message, 'warning');
}

/** Two readings may be off by half a step of their last digits each, one up and one down. */
const roundingOf = (...points: readonly TrendPoint[]): number =>
  points.reduce(
    (sum, { row: { lastDigit } }) => sum + (lastDigit === undefined ? 0 : toNumber(lastDigit) / 2),
    0,
  );

const errorsOf = ({ terms }: TrendPoint): Value => ({ amount: ZERO, terms });
