import { isAt } from '../../checks/history/dependsOn.ts';
import type { MeasuredPart, MeasuredSitting } from '../../compare/parts/measuredPart.ts';
import type { Place } from '../../diagnostic/place.ts';
import { withUnit } from '../../documents/amount.ts';
import { gradeText } from '../../documents/grades/grade.ts';
import type { PartChange } from '../../documents/session/partChanges.ts';
import { shortName } from '../../layout/naming.ts';
import type { PartAt } from '../../layout/readPart.ts';
import type { Section } from '../plan/page.ts';

/** What was machined of it, done to it, found on it and conceded, by day and with the place. */
export function doneSection({ sittings }: MeasuredPart): readonly Section[] {
  const lines = sittings.flatMap((sitting) => {
    const { session, engine, isBench } = sitting;
    const where = isBench ? 'outside' : `in ${engine.document.name}`;
    return doneIn(sitting).map(
      ({ text, place }) => `${session.date} ${where}: ${text} (${place.path}:${place.line})`,
    );
  });
  return lines.length === 0 ? [] : [{ title: 'What was done and found', lines }];
}

interface Done {
  readonly text: string;
  readonly place: Place;
}

function doneIn(sitting: MeasuredSitting): readonly Done[] {
  const { session } = sitting;
  const isOfIt = (parts: readonly PartAt[]): boolean => parts.some((each) => isPartOf(each, sitting));
  return [
    ...session.partChanges
      .filter(({ how, parts }) => how === 'machined' && isOfIt(parts))
      .map((change) => ({ text: machinedText(change), place: change.place })),
    ...session.work
      .filter(({ parts }) => isOfIt(parts))
      .map(({ work, on }) => ({ text: `${on.name}: ${work}`, place: session.placeOf(on.span) })),
    ...session.observations
      .filter(({ parts }) => isOfIt(parts))
      .map(({ on, is, remedy, place }) => ({
        text: `${on.join(', ')}: ${is}${remedy === undefined ? '' : `, ${remedy}`}`,
        place,
      })),
    ...session.concessions.flatMap(({ measure, positions, upTo, downTo, reason, by, place }) => {
      if (!sitting.rows.some(({ characteristic }) => characteristic.id === measure.id)) return [];
      const to = [upTo && `up to ${withUnit(upTo)}`, downTo && `down to ${withUnit(downTo)}`].filter(Boolean);
      const what = [measure.label ?? measure.id, positions.map(shortName).join(', ')]
        .filter(Boolean)
        .join(' ');
      return [
        { text: `${what} conceded ${to.join(', ')}${by === undefined ? '' : ` by ${by}`}: ${reason}`, place },
      ];
    }),
  ];
}

/** A journal is part of its crankshaft. */
const isPartOf = ({ part, positions }: PartAt, { parts, registry, engine }: MeasuredSitting): boolean => {
  const { layout } = engine.document;
  return parts.some((own) =>
    positions.length === 0
      ? registry.parts.within(own.part).includes(part)
      : positions.some((each) => isAt(part.id, each, own, registry, layout)),
  );
};

function machinedText({ name, sizes }: PartChange): string {
  const made = [
    ...new Set(sizes.flatMap(({ grade }) => Object.values(grade).map((each) => gradeText(each)))),
  ];
  return made.length === 0 ? `${name} machined` : `${name} machined to ${made.join(', ')}`;
}
