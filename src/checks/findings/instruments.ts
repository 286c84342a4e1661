import { isExact } from '../../characteristics/characteristic.ts';
import { shellWord } from '../../diagnostic/shellWord.ts';
import { didYouMean } from '../../diagnostic/suggestion.ts';
import { instrumentOn } from '../../documents/engine/instrumentOn.ts';
import type { InstrumentCheck } from '../../documents/session/checked.ts';
import type { ReadingBlock } from '../../documents/session/reading.ts';
import type { Named } from '../../documents/yaml/access.ts';
import { anInstrument, isBare, largestErrorAt } from '../../measurement/instrument.ts';
import { decimalsFor, formatAmount } from '../../quantity/format.ts';
import { absolute, compare, subtract } from '../../quantity/fraction.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { Row, SessionView } from '../judge/row.ts';
import { isSetToUnnamed } from '../value/blockInstrument.ts';
import { overdue } from './overdue.ts';

const UNKNOWN: FindingKind = {
  code: 'instrument/unknown',
  severity: 'warning',
  means: 'The instrument that a reading names is not in the register.',
  matters: 'Its error is assumed by type, and nobody knows when it was last calibrated.',
  usually: 'Add it to the register of instruments, or correct the name.',
  example: 'mic-3-5 is not in the register of instruments: did you mean mic-3-4?',
};
const ASSUMED: FindingKind = {
  code: 'instrument/assumed',
  severity: 'remark',
  means:
    'A reading names no registered instrument, or one that the register gives no figure of its error, or was taken with a gauge set to a size (`set_to`) and the master is not named (`set_with`): the usual error of its type is assumed.',
  matters: 'The verdict is as good as the assumption.',
  usually: 'Name the instrument with `with:`, and the master with `set_with:`, and register them.',
  example: 'main journal diameter: the usual error of a micrometer is assumed',
};
const OFF: FindingKind = {
  code: 'instrument/off',
  severity: 'warning',
  means: 'When it was checked on a standard the instrument was off by more than its largest error.',
  matters: 'Every reading taken with it that day is off by as much.',
  usually:
    'Set it and check it again, then take the readings anew; `tenths recall INSTRUMENT --error AMOUNT` shows which verdicts it changes since it was last good.',
  example:
    'mic-3-4 read 3.0003 in on a standard of 3.0000 in: off by 0.0003 in, and its largest error is 0.0001 in; tenths recall mic-3-4 --error 0.0003in shows what it changes',
};

export const instrumentKinds: readonly FindingKind[] = [UNKNOWN, ASSUMED, OFF];

/** What is to be said of the instruments that a session's readings were taken with. */
export const instrumentFindings = (view: SessionView, rows: readonly Row[]): readonly Finding[] => [
  ...view.session.blocks.flatMap((block) =>
    namedIn(block).flatMap((named) => unknownInstrument(named, block, view) ?? []),
  ),
  ...overdueInstruments(view),
  ...view.session.checked.flatMap((check) => checkedInstrument(check, view)),
  ...assumedInstruments(view, rows),
];

/** The gauge, and what it was set with. */
const namedIn = ({ instrument, setWith }: ReadingBlock): readonly Named[] =>
  [instrument, setWith].flatMap((each) => each ?? []);

function unknownInstrument(
  named: Named,
  { measure }: { readonly measure?: { readonly id: string } },
  { engine, session }: SessionView,
): Finding | undefined {
  if (engine.instruments.has(named.name)) return undefined;
  const help = didYouMean(named.name, engine.instruments.keys());
  const message = `${named.name} is not in the register of instruments${help === undefined ? '' : `: ${help}`}`;
  return finding(
    UNKNOWN,
    session.placeOf(named.span),
    message,
    measure === undefined ? {} : { measure: measure.id },
  );
}

/** Said once for each instrument, at the first reading after its due date. */
function overdueInstruments({ engine, session }: SessionView): readonly Finding[] {
  const found = new Map<string, Finding>();
  for (const block of session.blocks) {
    const day = block.date ?? session.date;
    for (const { name, span } of namedIn(block)) {
      const about = { measure: block.measure.id };
      const late = overdue(
        instrumentOn(engine.instruments.get(name), day),
        day,
        () => session.placeOf(span),
        about,
      );
      if (late !== undefined && !found.has(name)) found.set(name, late);
    }
  }
  return [...found.values()];
}

function checkedInstrument(check: InstrumentCheck, view: SessionView): readonly Finding[] {
  const { instrument, standard, read } = check;
  const registered = view.engine.instruments.get(instrument.name);
  const largest = registered?.maxError && largestErrorAt(registered.maxError, standard.amount);
  if (registered === undefined) return [unknownInstrument(instrument, {}, view) ?? []].flat();
  const off = subtract(read.amount, standard.amount);
  if (largest === undefined || compare(absolute(off), largest) <= 0) return [];
  const { unit } = read;
  const text = (amount: typeof off): string => formatAmount(amount, unit, decimalsFor(read.lastDigit, unit));
  const message = `${instrument.name} read ${text(read.amount)} on a standard of ${text(standard.amount)}: off by ${text(absolute(off))}, and its largest error is ${text(largest)}; tenths recall ${shellWord(instrument.name)} --error ${text(off).replace(' ', '')} shows what it changes`;
  return [finding(OFF, view.session.placeOf(read.span), message)];
}

/** Readings that name no instrument or no master, or an instrument of which the register knows nothing. */
function assumedInstruments({ session, engine }: SessionView, rows: readonly Row[]): readonly Finding[] {
  const characteristics = new Map(rows.map((row) => [row.characteristic.id, row.characteristic]));
  return session.blocks.flatMap((block) => {
    const { instrument, measure, span } = block;
    const characteristic = characteristics.get(measure.id);
    if (characteristic === undefined || isExact(characteristic)) return [];
    const registered = instrument && engine.instruments.get(instrument.name);
    const known = registered && instrumentOn(registered, block.date ?? session.date);
    const types = [
      ...(known === undefined ? [characteristic.usual] : isBare(known) ? [known.type] : []),
      ...(isSetToUnnamed(block, engine) ? (['setting master'] as const) : []),
    ];
    return types.map((type) => {
      const message = `${characteristic.label}: the usual error of ${anInstrument(type)} is assumed`;
      return finding(ASSUMED, session.placeOf(span), message, { measure: measure.id });
    });
  });
}
