import type { ReadingBlock } from '../../documents/session/reading.ts';
import { namedAt } from '../../layout/naming.ts';
import type { Instrument } from '../../measurement/instrument.ts';
import { decimalsFor, formatAmount } from '../../quantity/format.ts';
import {
  compare,
  divide,
  type Fraction,
  fraction,
  multiply,
  subtract,
  toNumber,
} from '../../quantity/fraction.ts';
import { type Unit, unitsOf } from '../../quantity/units.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { SessionView } from '../judge/row.ts';
import { andMore, placeOfPoint, type ReadingPoint, readingPointsOfBlock } from '../value/readingPoints.ts';

const RANGE: FindingKind = {
  code: 'instrument/range',
  severity: 'warning',
  means: 'The reading lies outside what its instrument can measure, or off the marks of its strip.',
  matters: 'Another instrument was used than the one that is named, or the number is wrong.',
  usually: 'Correct the name of the instrument, or the reading.',
  example:
    'main journal diameter 1: 3.2478 is outside the range of mic-2-3, 2 in to 3 in, and 1 more in this block',
};
const DIGITS: FindingKind = {
  code: 'instrument/digits',
  severity: 'warning',
  means: 'The reading has more digits than its instrument resolves.',
  matters: 'The last digit was guessed or worked out, and looks as if it had been measured.',
  usually: 'Write what the instrument shows, or register the resolution that it has.',
  example: 'main journal diameter 1: 3.24775 has more digits than mic-3-4 resolves, 0.0001 in',
};

export const scaleKinds: readonly FindingKind[] = [RANGE, DIGITS];

/** Whether the scale of the registered instrument can show what was written; said once for each block. */
export const scaleFindings = (view: SessionView): readonly Finding[] =>
  view.session.blocks.flatMap((block) => {
    const instrument = block.instrument && view.engine.instruments.get(block.instrument.name);
    if (instrument === undefined) return [];
    return [offRange(block, instrument, view), tooManyDigits(block, instrument, view)].flatMap(
      (each) => each ?? [],
    );
  });

function offRange(block: ReadingBlock, instrument: Instrument, view: SessionView): Finding | undefined {
  const span = rangeOf(instrument);
  if (span === undefined || block.setTo === 'journal') return undefined;
  const points = readingPointsOfBlock(
    block,
    ({ range: read, amount }) => read === undefined && !isWithin(amount, span, block.setTo),
  );
  const range = (unit: Unit): string => {
    const decimals = Math.max(...[span.from, span.to].map((end) => decimalsOf(end, unit)));
    return `${formatAmount(span.from, unit, decimals)} to ${formatAmount(span.to, unit, decimals)}`;
  };
  return said(RANGE, points, view, (text, unit) =>
    instrument.marks === undefined
      ? `${text} is outside the range of ${instrument.id}, ${range(unit)}`
      : `${text} is off the marks of ${instrument.id}, ${range(unit)}`,
  );
}

interface Range {
  readonly from: Fraction;
  readonly to: Fraction;
}

function rangeOf({ range, marks }: Instrument): Range | undefined {
  if (range !== undefined) return range;
  const [from, to] = [marks?.[0], marks?.at(-1)];
  return from === undefined || to === undefined ? undefined : { from, to };
}

/** A gauge set to a master may have the range of its dial, which its deviation from the master must keep to. */
const isWithin = (amount: Fraction, { from, to }: Range, setTo: ReadingBlock['setTo']): boolean => {
  const within = (each: Fraction): boolean => compare(each, from) >= 0 && compare(each, to) <= 0;
  if (within(amount)) return true;
  return typeof setTo === 'object' && within(subtract(amount, setTo));
};

function tooManyDigits(block: ReadingBlock, instrument: Instrument, view: SessionView): Finding | undefined {
  const { resolution } = instrument;
  if (resolution === undefined || resolution.n === 0n) return undefined;
  const from = typeof block.setTo === 'object' ? block.setTo : fraction(0);
  const points = readingPointsOfBlock(
    block,
    (point) =>
      point.range === undefined &&
      compare(point.lastDigit, resolution) < 0 &&
      (point.repeats ?? [point.amount]).some((amount) =>
        isFiner(subtract(amount, from), point.lastDigit, resolution),
      ),
  );
  return said(
    DIGITS,
    points,
    view,
    (text, unit) =>
      `${text} has more digits than ${instrument.id} resolves, ${formatAmount(resolution, unit, decimalsOf(resolution, unit))}`,
  );
}

const TEN = fraction(10);

/**
 * Of a last digit finer than the step. A nought too many, or a number between two steps; a reading turned
 * exactly from inches into millimetres has many digits and still stands on a step, and one that was rounded
 * in turning may have a digit of its own.
 */
function isFiner(amount: Fraction, lastDigit: Fraction, resolution: Fraction): boolean {
  const isDigitFiner = compare(multiply(lastDigit, TEN), resolution) <= 0;
  const isOnStep = isWhole(divide(amount, resolution));
  return isSameScale(divide(resolution, lastDigit)) ? isDigitFiner || !isOnStep : isDigitFiner && !isOnStep;
}

/** Steps of ones, twos and fives of the digits; between inches and millimetres stands a 127. */
function isSameScale(steps: Fraction): boolean {
  if (!isWhole(steps)) return false;
  let left = steps.n / steps.d;
  for (const factor of [2n, 5n]) while (left % factor === 0n) left /= factor;
  return left === 1n;
}

const isWhole = ({ n, d }: Fraction): boolean => n % d === 0n;

function said(
  kind: FindingKind,
  points: readonly ReadingPoint[],
  { engine, registry, session }: SessionView,
  message: (reading: string, unit: Unit) => string,
): Finding | undefined {
  const [point, ...more] = points;
  if (point === undefined) return undefined;
  const { id, quantity } = point.block.measure;
  const unit = engine.units.get(quantity) ?? unitsOf(quantity)[0];
  if (unit === undefined) return undefined;
  const label = registry.find(id)?.label ?? id;
  const text = `${namedAt(label, point.reading.position)}: ${point.point.written}`;
  return finding(kind, placeOfPoint(session, point), `${message(text, unit)}${andMore(more.length)}`, {
    measure: id,
    position: point.reading.position,
  });
}

/** As many decimals as an amount needs in the unit, up to six. */
function decimalsOf(amount: Fraction, unit: Unit): number {
  const inUnit = toNumber(amount) / toNumber(unit.factor);
  const places = inUnit.toFixed(6).replace(/0+$/, '');
  return Math.max(places.length - places.indexOf('.') - 1, decimalsFor(unit.factor, unit));
}
