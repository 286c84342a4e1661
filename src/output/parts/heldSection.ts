import { amountText, named, printingOf } from '../../checks/findings/readings.ts';
import type { JudgedRoute, Row } from '../../checks/judge/row.ts';
import { unitOfRow } from '../../checks/judge/session.ts';
import type { HeldBefore, RemovedSession } from '../../compare/parts/heldBefore.ts';
import type { Correction } from '../../compare/past.ts';
import type { Engine } from '../../documents/assemble.ts';
import { shortCommit } from '../diff/revision.ts';
import type { Section } from '../plan/page.ts';

/** What only earlier commits hold of a part: none of it is in the tables. */
export function heldSection(held: readonly HeldBefore[] | undefined): readonly Section[] {
  if (held === undefined) return [];
  const lines = held.flatMap(({ stay, removed, corrected }) => [
    ...removed.map((each) => removedText(each, stay.of.engine)),
    ...corrected.map((each) => correctedText(each, stay.of.engine)),
  ]);
  const title = 'Held by earlier commits, and not counted';
  return [
    {
      title,
      lines: lines.length === 0 ? ['nothing: the documents still say all that earlier commits said'] : lines,
    },
  ];
}

function removedText({ session, rows, held }: RemovedSession, engine: Engine): string {
  const values = rows.flatMap((row) => valueText(row, row.routes[0], engine)).join('; ');
  return `${session.date} in ${engine.document.name}: ${session.stage} was removed, and held ${values} (commit ${shortCommit(held)} of ${held.date})`;
}

function correctedText({ session, row, was, is, held }: Correction, engine: Engine): string {
  const now = is === undefined ? 'is not stated any more' : `is now ${numberText(row, is, engine)}`;
  return `${session.date} in ${engine.document.name}: ${named(row)} ${now}, and was ${numberText(row, was, engine)} (commit ${shortCommit(held)} of ${held.date})`;
}

const valueText = (row: Row, judged: JudgedRoute | undefined, engine: Engine): readonly string[] =>
  judged === undefined ? [] : [`${named(row)} ${numberText(row, judged, engine)}`];

const numberText = (row: Row, judged: JudgedRoute, engine: Engine): string =>
  amountText(
    judged,
    printingOf(row, (each) => unitOfRow(each, engine)),
  );
