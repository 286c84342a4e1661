import type { Characteristic } from '../../characteristics/characteristic.ts';
import { pointsOf } from '../../documents/session/reading.ts';
import { namedAt } from '../../layout/naming.ts';
import { expandedFactor } from '../../measurement/conformance.ts';
import { median } from '../../measurement/sample.ts';
import { amountOf, type Slip, slipsOf } from '../../measurement/slips.ts';
import { decimalsFor, formatAmount } from '../../quantity/format.ts';
import { type Fraction, fraction, toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { Row, SessionView } from '../judge/row.ts';
import { placeOfPoint, type ReadingPoint, readingPointsOf } from '../value/readingPoints.ts';
import { writtenNumbers } from '../value/writtenNumbers.ts';
import { Expectations } from './plausible.ts';
import { isIn, wider } from './plausibleSizes.ts';
import { readingOfAnother, type SlipCandidate, sizeOfAnother } from './slipCandidates.ts';

const IMPLAUSIBLE: FindingKind = {
  code: 'reading/implausible',
  severity: 'warning',
  means:
    'The reading is farther from its limits, its nominal size and its like than wear explains, in the way that a slip of the pen is: digits swapped, the decimal point moved, an inch or a turn of the micrometer out, the wrong unit, the reading of another part.',
  matters: 'A slip that looks like a worn part costs a part; one that hides a worn part costs an engine.',
  usually:
    'Measure again. Put it right with its trace, `{ value: 2.8734, was: 2.8374, why: misread }`, or leave it where it is so.',
  example:
    'main journal diameter 2: written 2.8742: the reading of crankpin diameter 2; about 3.2478 in is expected here',
};

export const slipKinds: readonly FindingKind[] = [IMPLAUSIBLE];

/** Nearer than this many expanded uncertainties a slip cannot be told from wear. */
const LEAST_SLIP = 5;
/** Without a slip that explains it, only what lies this many widths of the range beyond it is said. */
const FAR = 2;

/** Lengths that no honest part explains; once for each position of a block. Nothing is ever corrected. */
export function slipFindings(
  view: SessionView,
  rows: readonly Row[],
  unitFor: (row: Pick<Row, 'characteristic'>) => Unit,
): readonly Finding[] {
  const looker = new Looker(view, new Expectations(view, rows), unitFor);
  const found = new Map<unknown, Finding>();
  for (const point of readingPointsOf(view.session)) {
    if (found.has(point.reading)) continue;
    const one = looker.look(point);
    if (one !== undefined) found.set(point.reading, one);
  }
  return [...found.values()];
}

class Looker {
  readonly #view: SessionView;
  readonly #expectations: Expectations;
  readonly #unitFor: (row: Pick<Row, 'characteristic'>) => Unit;

  constructor(
    view: SessionView,
    expectations: Expectations,
    unitFor: (row: Pick<Row, 'characteristic'>) => Unit,
  ) {
    this.#view = view;
    this.#expectations = expectations;
    this.#unitFor = unitFor;
  }

  look(point: ReadingPoint): Finding | undefined {
    for (const suspect of this.#suspects(point)) {
      const message = this.#message(suspect);
      if (message === undefined) continue;
      const named = namedAt(suspect.characteristic.label, point.reading.position);
      return finding(IMPLAUSIBLE, placeOfPoint(this.#view.session, point), `${named}: ${message}`, {
        measure: suspect.characteristic.id,
        position: point.reading.position,
      });
    }
    return undefined;
  }

  #message(suspect: SlipCandidate): string | undefined {
    const { number, amount, characteristic, point } = suspect;
    const [slip, copy] = [this.#explained(suspect), readingOfAnother(suspect, this.#view)];
    const isService = this.#expectations.isServiceSize(characteristic, point.reading.position, amount);
    if (slip !== undefined) {
      const otherwise = isService ? ', or another service size that `fitted:` does not say' : '';
      return `${slip}${copy === undefined ? '' : `, or ${copy}`}${otherwise}`;
    }
    const isUnexplained = isFar(suspect) && !isService;
    const source = copy ?? this.#ofOtherSize(suspect) ?? (isUnexplained ? UNEXPLAINED : undefined);
    return source && `written ${number.digits}: ${source}${this.#like(suspect)}`;
  }

  /** The numbers of a point that no honest part explains; none where it was put right already. */
  #suspects(at: ReadingPoint): readonly SlipCandidate[] {
    const { block, reading, point } = at;
    const characteristic = this.#view.registry.find(block.measure.id);
    if (characteristic?.quantity !== 'length' || point.settled || point.range !== undefined) return [];
    // Nearly all readings are of the size that is fitted: what it takes to know the others is worked out for the rest alone.
    const usual = this.#expectations.fittedRange(characteristic, reading.position);
    const amounts = point.repeats ?? [point.amount];
    const isUsual = (amount: Fraction): boolean => usual === undefined || isIn(toNumber(amount), usual);
    if (amounts.every(isUsual) && this.#expectations.isStandard(characteristic)) return [];
    const ranges = this.#expectations.ranges(characteristic, reading.position);
    const expanded = this.#expanded(at, characteristic);
    const earlier = this.#expectations.earlier(characteristic, reading.position);
    return writtenNumbers(point).flatMap((number) => {
      const amount = toNumber(amountOf(number));
      const isAsBefore = earlier !== undefined && Math.abs(amount - earlier) <= LEAST_SLIP * expanded;
      const isHonest = ranges.some((range) => isIn(amount, wider(range, expanded)));
      if (ranges.length === 0 || isHonest || isAsBefore) return [];
      return [{ point: at, characteristic, number, amount, ranges, expanded }];
    });
  }

  /** Of one reading: what its repeats scatter is what a slip among them makes. */
  #expanded({ block, reading, point }: ReadingPoint, characteristic: Characteristic): number {
    const routes = this.#expectations.rows(characteristic, reading.position).flatMap((row) => row.routes);
    const own = routes.find(({ route }) => route.block === block) ?? routes[0];
    if (own === undefined) return 2 * toNumber(point.lastDigit);
    const terms = [...own.route.measured.least.terms].filter(([source]) => !source.startsWith('spread'));
    return expandedFactor(Number.POSITIVE_INFINITY) * Math.hypot(...terms.map(([, { u }]) => u));
  }

  /** The likeliest number that a slip turned into this one: the nearest to what is expected there. */
  #explained(suspect: SlipCandidate): string | undefined {
    const { number, amount, ranges, expanded } = suspect;
    const expected = this.#expected(suspect);
    const distance = (slip: Slip): number => Math.abs(toNumber(slip.intended) - expected);
    const [likeliest] = slipsOf(number)
      .filter(({ intended }) => ranges.some((range) => isIn(toNumber(intended), range)))
      .filter(({ intended }) => Math.abs(toNumber(intended) - amount) >= LEAST_SLIP * expanded)
      .sort((a, b) => distance(a) - distance(b));
    return likeliest && `${likeliest.written}? written ${number.digits}: ${likeliest.words}`;
  }

  /** What the other points of the position say, else an earlier session, else its like, else the limits. */
  #expected({ point, characteristic, ranges }: SlipCandidate): number {
    const plausible = (amount: number): boolean => ranges.some((range) => isIn(amount, range));
    const { position } = point.reading;
    const beside = pointsOf(point.reading)
      .map((point) => toNumber(point.amount))
      .filter(plausible);
    const earlier = this.#expectations.earlier(characteristic, position);
    const like = [...this.#expectations.medians(characteristic).values()].filter(plausible);
    if (beside.length > 0) return median(beside);
    if (earlier !== undefined && plausible(earlier)) return earlier;
    if (like.length > 0) return median(like);
    const [first] = ranges;
    return first === undefined ? Number.NaN : (first.from + first.to) / 2;
  }

  /** A worn piston is nearly as large as its bore: only a part of quite another size is known by it. */
  #ofOtherSize(suspect: SlipCandidate): string | undefined {
    const isUnlike = Math.abs(suspect.amount - this.#expected(suspect)) >= UNLIKE_SIZES * suspect.amount;
    return isUnlike ? sizeOfAnother(suspect, this.#view, this.#expectations) : undefined;
  }

  #like(suspect: SlipCandidate): string {
    const expected = this.#expected(suspect);
    return Number.isFinite(expected) ? `; about ${this.#text(expected, suspect)} is expected here` : '';
  }

  #text(amount: number, { characteristic, point }: SlipCandidate): string {
    const unit = this.#unitFor({ characteristic });
    const decimals = decimalsFor(point.point.lastDigit, unit);
    return formatAmount(fraction(Math.round(amount)), unit, decimals);
  }
}

const UNEXPLAINED = 'no usual slip explains it';

/** A fiftieth: no part wears by so much, and crankpins differ from mains by more. */
const UNLIKE_SIZES = 0.02;

function isFar({ amount, ranges, expanded }: SlipCandidate): boolean {
  return ranges.every(({ from, to }) => {
    const beyond = Math.max(from - amount, amount - to);
    return beyond > FAR * (to - from) + 2 * LEAST_SLIP * expanded;
  });
}
