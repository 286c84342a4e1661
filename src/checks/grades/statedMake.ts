import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { PartChange } from '../../documents/session/partChanges.ts';
import type { Position } from '../../layout/position.ts';
import type { PartAt } from '../../layout/readPart.ts';
import { isAt } from '../history/dependsOn.ts';
import { sessionsBefore } from '../history/earlier.ts';
import type { Row, SessionView } from '../judge/row.ts';

/** Of what size and code the parts are said to be that a figure depends on: parts of one make are like each other. */
export const statedMake = (
  { characteristic, position, size: { by } }: Pick<Row, 'characteristic' | 'position' | 'size'>,
  view: SessionView,
): string => `${by.n}/${by.d} ${codesAt(characteristic, position, view)}`;

/** As was said of each last; empty where no code is stated. */
function codesAt(
  { of, dependsOn }: Characteristic,
  position: Position,
  { engine, session, registry }: SessionView,
): string {
  const documents = [engine.document, ...sessionsBefore(engine, session), session];
  // Most shops state none, and every row asks.
  if (!documents.some(({ partChanges }) => partChanges.some(({ codesAt }) => codesAt.length > 0))) return '';
  const changes = documents.flatMap(({ partChanges }) => partChanges);
  return [of, ...dependsOn]
    .flatMap((id) => {
      if (id === undefined) return [];
      const isHere = (part: PartAt): boolean => isAt(id, position, part, registry, engine.document.layout);
      const last = changes.findLast((each) => isAnother(each) && each.parts.some(isHere));
      return last?.codesAt.findLast(({ parts }) => parts.some(isHere))?.code ?? [];
    })
    .join(' ');
}

/** What was machined is the part that it was. */
const isAnother = ({ how, codesAt }: PartChange): boolean => how === 'replaced' || codesAt.length > 0;
