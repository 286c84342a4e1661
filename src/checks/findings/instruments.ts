import { isExact } from '../../characteristics/characteristic.ts';
import { shellWord } from '../../diagnostic/shellWord.ts';
import { didYouMean } from '../../diagnostic/suggestion.ts';
import { instrumentOn } from '../../documents/engine/instrumentOn.ts';
import type { InstrumentCheck } from '../../documents/session/checked.ts';
import { pointsOf, type ReadingBlock } from '../../documents/session/reading.ts';
import type { Named } from '../../documents/yaml/access.ts';
import { assumptionFor } from '../../measurement/assumed.ts';
import {
  anInstrument,
  BY_EYE,
  type ByEye,
  type Instrument,
  type InstrumentType,
  isBare,
  largestErrorAt,
} from '../../measurement/instrument.ts';
import { decimalsFor, formatAmount, formatUncertainty, withUnitName } from '../../quantity/format.ts';
import { absolute, compare, subtract, toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { Row, SessionView } from '../judge/row.ts';
import { isSetToUnnamed } from '../value/blockInstrument.ts';
import { overdue } from './overdue.ts';

const UNKNOWN: FindingKind = {
  code: 'instrument/unknown',
  severity: 'warning',
  means: 'The instrument that a reading names is not in the register.',
  matters: 'The program assumes the error of its type, and no document says when it was calibrated.',
  usually: 'Add it to the register of instruments, or correct the name.',
  example: 'mic-3-5 is not in the register of instruments: did you mean mic-3-4?',
};
const ASSUMED: FindingKind = {
  code: 'instrument/assumed',
  severity: 'remark',
  means:
    'A reading names no instrument of the register, or one that the register states no error of, or its gauge was set to a size (`set_to`) and the master is not named (`set_with`). The program assumes the usual largest error of that type.',
  matters: 'The verdict is only as good as this assumption.',
  usually: 'Name the instrument with `with:`, and the master with `set_with:`, and register them.',
  example:
    'main journal diameter: no registered instrument is named; the largest error of a micrometer is assumed, ±0.00020 in',
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

type UnitFor = (row: Pick<Row, 'characteristic'>) => Unit;

export const instrumentKinds: readonly FindingKind[] = [UNKNOWN, ASSUMED, OFF];

/** What is to be said of the instruments that a session's readings were taken with. */
export const instrumentFindings = (
  view: SessionView,
  rows: readonly Row[],
  unitFor: UnitFor,
): readonly Finding[] => [
  ...view.session.blocks.flatMap((block) =>
    namedIn(block).flatMap((named) => unknownInstrument(named, block, view) ?? []),
  ),
  ...overdueInstruments(view),
  ...view.session.checked.flatMap((check) => checkedInstrument(check, view)),
  ...assumedInstruments(view, rows, unitFor),
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

/** Readings that name no instrument or no master, or an instrument of which the register states no error. */
function assumedInstruments(
  { session, engine }: SessionView,
  rows: readonly Row[],
  unitFor: UnitFor,
): readonly Finding[] {
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
      const message = `${characteristic.label}: ${wantingOf(type, instrument, known)}; the largest error of ${anInstrument(type)} is assumed${errorText(type, block, unitFor({ characteristic }))}`;
      return finding(ASSUMED, session.placeOf(span), message, { measure: measure.id });
    });
  });
}

function wantingOf(
  type: InstrumentType | ByEye,
  named: ReadingBlock['instrument'],
  known: Instrument | undefined,
): string {
  if (type === 'setting master') return 'no registered master is named';
  if (named === undefined || known === undefined) return 'no registered instrument is named';
  return `the register states no error of ${named.name}`;
}

/** `, ±0.00020 in`: what is assumed at the size of the block's first reading. */
function errorText(type: InstrumentType | ByEye, { positions }: ReadingBlock, unit: Unit): string {
  const [first] = positions.flatMap(pointsOf);
  if (first === undefined || type === BY_EYE) return '';
  const { maxError } = assumptionFor(type, unit.quantity, first.amount);
  const error = formatUncertainty(toNumber(largestErrorAt(maxError, first.amount)), unit);
  return `, ±${withUnitName(error, unit)}`;
}
