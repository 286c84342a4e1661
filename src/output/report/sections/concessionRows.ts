import { withUnit } from '../../../documents/amount.ts';
import { nameAt } from '../../../documents/measure.ts';
import type { SessionDocument } from '../../../documents/session/session.ts';
import { privately } from '../privately.ts';
import type { Reader } from '../sheet.ts';

/** What was accepted beyond its limit, with room for a signature where nobody has agreed yet. */
export const concessionRows = (
  run: readonly SessionDocument[],
  reader: Reader,
): readonly (readonly string[])[] =>
  run.flatMap(({ concessions }) =>
    concessions.map(({ measure, positions, upTo, downTo, reason, by, agreed }) => [
      positions.map((position) => nameAt(measure, position)).join(', '),
      [upTo && withUnit(upTo), downTo && `down to ${withUnit(downTo)}`].filter(Boolean).join(', '),
      privately(reason, reader) ?? 'in the record of the shop',
      by ?? '',
      agreed ?? '',
      '',
    ]),
  );
