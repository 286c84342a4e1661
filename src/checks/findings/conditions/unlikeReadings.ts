import { type Characteristic, placesOf } from '../../../characteristics/characteristic.ts';
import { nameAt } from '../../../documents/measure.ts';
import type { Position } from '../../../layout/position.ts';
import { type Finding, finding } from '../../finding.ts';
import { limitsOfFitted } from '../../grades/madeSize.ts';
import { isWanted } from '../../judge/found.ts';
import type { SessionView } from '../../judge/row.ts';
import { type UnlikeReadings, unlikeReadings } from '../../value/statedConditions.ts';
import { CONDITIONS } from './conditions.ts';

/** Figures that are not worked out, since their readings were taken under a condition that they do not share. */
export const unlikeReadingFindings = (view: SessionView): readonly Finding[] =>
  view.registry.all
    .filter(({ under, derivations }) => under !== undefined && derivations.length > 0)
    .filter((each) => view.routes.mayHave(each))
    .flatMap((each) =>
      view.engine.document.layout
        .positionsOf(each.family)
        .flatMap((position) => notWorkedOut(each, position, view) ?? []),
    );

function notWorkedOut(
  characteristic: Characteristic,
  position: Position,
  { engine, session, registry, routes }: SessionView,
): Finding | undefined {
  if (!isWanted(characteristic, limitsOfFitted(engine, session, characteristic, position), session)) return;
  if (routes.at(characteristic, position, {}).length > 0) return undefined;
  for (const derivation of characteristic.derivations) {
    const places = placesOf(derivation, registry, engine.document.layout, position) ?? [];
    const read = places.flatMap((place) => routes.inputsAt(place)[0] ?? []);
    const unlike = read.length < places.length ? undefined : unlikeReadings(characteristic, read);
    if (unlike !== undefined) return about(characteristic, position, unlike);
  }
  return undefined;
}

function about(
  characteristic: Characteristic,
  position: Position,
  { condition, readings }: UnlikeReadings,
): Finding {
  const [, other] = readings;
  const name = condition.replaceAll('_', ' ');
  const stated = readings.map(
    (each) => `${nameAt(each.route.characteristic, each.route.position)} at ${each.stated}`,
  );
  const message = `${nameAt(characteristic, position)} is not worked out, since its readings differ in their ${name}: ${stated.join(' and ')}; read all of them at one ${name}`;
  return finding(CONDITIONS, other.route.place, message, { measure: characteristic.id, position });
}
