import { didYouMean } from '../diagnostic/suggestion.ts';
import type { ReadingBlock } from '../documents/reading.ts';
import { type Finding, finding } from './finding.ts';
import type { Row, SessionView } from './row.ts';

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
  return finding('instrument/unknown', session.placeOf(instrument.span), message, { measure: measure.id });
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
    return finding('instrument/assumed', session.placeOf(block.span), message, { measure: block.measure.id });
  });
}
