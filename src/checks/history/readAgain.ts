import { valuesOf } from '../../characteristics/grid.ts';
import { absolute, greatest, subtract, toNumber } from '../../quantity/fraction.ts';
import type { Finding, Reading } from '../finding.ts';
import type { SessionView } from '../judge/row.ts';
import type { Route } from '../value/route.ts';
import { routesOf } from '../value/routes.ts';
import { sessionsBefore } from './earlier.ts';
import { isSamePartAfter } from './partHistory.ts';

/** Whether all that a finding takes for slips was read a second time and is so, in another block or an earlier session: nobody slips twice alike. */
export const isReadAgain = ({ covers = [] }: Finding, view: SessionView): boolean =>
  covers.length > 0 &&
  covers.every((reading) => {
    const [read, ...beside] = readIn(reading, view);
    return (
      read !== undefined && [...beside, ...earlierOf(reading, view)].some((other) => isAlike(read, other))
    );
  });

/** What a session read at a position, itself. */
const readIn = ({ measure, at }: Reading, { registry, routes }: SessionView): readonly Route[] => {
  const characteristic = registry.find(measure);
  return characteristic === undefined
    ? []
    : routes.at(characteristic, at, {}).filter(({ block }) => block !== undefined);
};

/** What earlier sessions read of the same part, the latest last. */
export const earlierOf = (reading: Reading, view: SessionView): readonly Route[] => {
  const { engine, registry, session } = view;
  const characteristic = registry.find(reading.measure);
  if (characteristic === undefined) return [];
  const earlier = sessionsBefore(engine, session);
  return earlier
    .filter((_, index) =>
      isSamePartAfter([...earlier.slice(index + 1), session], characteristic, reading.at, engine, registry),
    )
    .flatMap((each) => readIn(reading, { ...view, routes: routesOf(engine, registry, each) }));
};

/** Both ends of one lie where the other has a reading, within what both are known to: a step of the coarser at least. */
function isAlike(one: Route, other: Route): boolean {
  const known = Math.hypot(one.expanded, other.expanded);
  const step = toNumber(greatest([one.lastDigit, other.lastDigit]));
  const read = valuesOf(other.grid);
  return [one.measured.least, one.measured.greatest].every((end) =>
    read.some(({ amount }) => toNumber(absolute(subtract(amount, end.amount))) <= Math.max(known, step)),
  );
}
