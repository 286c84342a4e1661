import { gradeText } from '../../../documents/grades/grade.ts';
import type { SessionDocument } from '../../../documents/session/session.ts';
import { shortName } from '../../../layout/naming.ts';
import type { Reader } from '../sheet.ts';

export const workRows = (run: readonly SessionDocument[], reader: Reader): readonly (readonly string[])[] =>
  run.flatMap((session) => session.work.map(({ work, on }) => [work, on.name, whenFor(reader, session)]));

/** The words of our own for a session are nothing to a customer. */
const whenFor = (reader: Reader, { stage, date }: SessionDocument): string =>
  reader === 'customer' ? date : `${stage} ${date}`;

/** The parts of the engine for whoever opens it next: what each is, its mark and its size. */
export const fittedRows = (run: readonly SessionDocument[], reader: Reader): readonly (readonly string[])[] =>
  run.flatMap((session) =>
    session.partChanges.map(({ name, parts, how, condition, identity, sizes }) => [
      [name, placesIn(parts)].filter(Boolean).join(' '),
      [how, condition, ...sizesMade(how, sizes), ...[...identity].map(([key, value]) => `${key} ${value}`)]
        .filter(Boolean)
        .join(', '),
      whenFor(reader, session),
    ]),
  );

/** Of a fitted part its size stands among what tells it from others. */
const sizesMade = (
  how: SessionDocument['partChanges'][number]['how'],
  sizes: SessionDocument['sizes'],
): readonly string[] =>
  how === 'fitted'
    ? []
    : [
        ...new Set(
          sizes.flatMap(({ grade: { upper } }) => (upper === undefined ? [] : `size ${gradeText(upper)}`)),
        ),
      ];

const placesIn = (parts: SessionDocument['partChanges'][number]['parts']): string =>
  [...new Set(parts.flatMap(({ positions }) => positions.map(shortName)))].filter(Boolean).join(', ');
