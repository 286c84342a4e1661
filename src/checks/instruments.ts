import { didYouMean } from '../diagnostic/suggestion.ts';
import type { ReadingBlock } from '../documents/reading.ts';
import { type Finding, type FindingKind, finding } from './finding.ts';
import type { Row, SessionView } from './row.ts';

const UNKNOWN: FindingKind = {
  code: 'instrument/unknown',
  severity: 'warning',
  means: 'The instrument that a reading names is not in the register.',
  matters: 'Its error is assumed by type, and nobody can tell when it was last calibrated.',
  usually: 'Add it to the register of instruments, or correct the name.',
};
const ASSUMED: FindingKind = {
  code: 'instrument/assumed',
  severity: 'remark',
  means: 'A reading names no registered instrument, so the usual error of its type is assumed.',
  matters: 'The verdict is as good as the assumption.',
  usually: 'Name the instrument with `with:` and register it.',
};

export const instrumentKinds: readonly FindingKind[] = [UNKNOWN, ASSUMED];

/** What is to be said of the instruments that a session's readings were taken with. */
export const instrumentFindings = (view: SessionView, rows: readonly Row[]): readonly Finding[] => [
  ...view.session.blocks.flatMap((block) => unknownInstrument(block, view) ?? []),
  ...assumedInstruments(view, rows),
];

function unknownInstrument(block: ReadingBlock, { engine, session }: SessionView): Finding | undefined {
  const { instrument, measure } = block;
  if (instrument === undefined || engine.instruments.has(instrument.name)) return undefined;
  const help = didYouMean(instrument.name, engine.instruments.keys());
  const message = `${instrument.name} is not in the register of instruments${help === undefined ? '' : `: ${help}`}`;
  return finding(UNKNOWN, session.placeOf(instrument.span), message, { measure: measure.id });
}

/** Readings that name no instrument: said once for each characteristic. */
function assumedInstruments({ session, engine }: SessionView, rows: readonly Row[]): readonly Finding[] {
  const characteristics = new Map(rows.map((row) => [row.characteristic.id, row.characteristic]));
  const unnamed = session.blocks.filter(
    ({ instrument, measure }) =>
      characteristics.has(measure.id) &&
      (instrument === undefined || !engine.instruments.has(instrument.name)),
  );
  return unnamed.map((block) => {
    const usual = characteristics.get(block.measure.id)?.usual ?? 'other';
    const message = `${characteristics.get(block.measure.id)?.label}: the usual error of a ${usual} is assumed`;
    return finding(ASSUMED, session.placeOf(block.span), message, { measure: block.measure.id });
  });
}
