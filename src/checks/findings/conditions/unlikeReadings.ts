import { type Characteristic, placesOf } from '../../../characteristics/characteristic.ts';
import { comparePlaces } from '../../../diagnostic/place.ts';
import { nameAt } from '../../../documents/measure.ts';
import type { Position } from '../../../layout/position.ts';
import { inOneSentence } from '../../../quantity/words.ts';
import { likewiseAt, type SaidOnce, saidOnce } from '../../alike.ts';
import { type Finding, finding } from '../../finding.ts';
import { limitsOfFitted } from '../../grades/madeSize.ts';
import { isWanted } from '../../judge/found.ts';
import type { SessionView } from '../../judge/row.ts';
import { type UnlikeReadings, unlikeReadings } from '../../value/statedConditions.ts';
import { CONDITIONS } from './conditions.ts';

/** A figure that is not worked out, since its readings were taken under a condition that they do not share. */
export interface FigureNotWorkedOut extends Pick<Finding, 'measure'> {
  readonly characteristic: Characteristic;
  readonly position: Position;
  readonly unlike: UnlikeReadings;
}

export const figuresOfUnlikeReadings = (view: SessionView): readonly FigureNotWorkedOut[] =>
  view.registry.all
    .filter(({ under, derivations }) => under !== undefined && derivations.length > 0)
    .filter((each) => view.routes.mayHave(each))
    .flatMap((characteristic) =>
      view.engine.document.layout.positionsOf(characteristic.family).flatMap((position) => {
        const unlike = unlikeReadingsOf(characteristic, position, view);
        return unlike === undefined ? [] : [{ measure: characteristic.id, characteristic, position, unlike }];
      }),
    );

function unlikeReadingsOf(
  characteristic: Characteristic,
  position: Position,
  { engine, session, registry, routes }: SessionView,
): UnlikeReadings | undefined {
  if (!isWanted(characteristic, limitsOfFitted(engine, session, characteristic, position), session)) return;
  if (routes.at(characteristic, position, {}).length > 0) return undefined;
  for (const derivation of characteristic.derivations) {
    const places = placesOf(derivation, registry, engine.document.layout, position) ?? [];
    const read = places.flatMap((place) => routes.inputsAt(place)[0] ?? []);
    const unlike = read.length < places.length ? undefined : unlikeReadings(characteristic, read);
    if (unlike !== undefined) return unlike;
  }
  return undefined;
}

/** Said once for two blocks that differ, of all that is not worked out from them. */
export const unlikeReadingFindings = (figures: readonly FigureNotWorkedOut[]): readonly Finding[] =>
  saidOnce(figures, differenceOf).map(about);

const differenceOf = ({ unlike }: FigureNotWorkedOut): string =>
  [
    unlike.condition,
    ...inWrittenOrder(unlike).map(({ route, stated }) => `${route.characteristic.id} ${stated}`),
  ].join();

const inWrittenOrder = ({ readings: [a, b] }: UnlikeReadings): UnlikeReadings['readings'] =>
  comparePlaces(a.route.place, b.route.place) <= 0 ? [a, b] : [b, a];

function about({ figures: [first, ...more], likewise }: SaidOnce<FigureNotWorkedOut>): Finding {
  const { characteristic, position, unlike } = first;
  const readings = inWrittenOrder(unlike);
  const condition = unlike.condition.replaceAll('_', ' ');
  const figures = inOneSentence([first, ...more].map((each) => nameAt(each.characteristic, each.position)));
  const areNot = more.length === 0 ? 'is not worked out, since its' : 'are not worked out, since their';
  const stated = readings.map(
    ({ route, stated: at }) => `${nameAt(route.characteristic, route.position)} at ${at}`,
  );
  const message = `${figures} ${areNot} readings differ in their ${condition}: ${stated.join(' and ')}; read all of them at one ${condition}${likewiseAt(likewise)}`;
  return finding(CONDITIONS, readings[1].route.place, message, { measure: characteristic.id, position });
}
