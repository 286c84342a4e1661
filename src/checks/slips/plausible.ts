import { isGap } from '../../characteristics/belowZero.ts';
import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Position } from '../../layout/position.ts';
import { median, medianAbsoluteDeviation } from '../../measurement/sample.ts';
import { add, toNumber } from '../../quantity/fraction.ts';
import { ByReading } from '../byReading.ts';
import { type FittedSize, fittedSize } from '../grades/madeSize.ts';
import { statedMake } from '../grades/statedMake.ts';
import { isBored, isBoredWith, serviceShifts } from '../grades/usualGrades.ts';
import { sessionsBefore } from '../history/earlier.ts';
import type { Row, SessionView } from '../judge/row.ts';
import { fitsOf } from './fits.ts';
import { mediansIn } from './medians.ts';
import { isIn, type Range, rangeOfAll, shifted, unknownWear, within } from './plausibleSizes.ts';

/** What is to be expected of readings at the positions of a session, from limits, nominal sizes and each other. */
export class Expectations {
  readonly #view: SessionView;
  readonly #rows = new ByReading<Row[]>();
  readonly #fitted = new ByReading<{ readonly range: Range | undefined }>();
  readonly #standardParts = new Map<string, boolean>();
  readonly #ranges = new ByReading<readonly Range[]>();
  readonly #medians = new Map<string, ReadonlyMap<Position, number>>();
  readonly #shifts = new Map<string, readonly number[]>();

  constructor(view: SessionView, rows: readonly Row[]) {
    this.#view = view;
    for (const row of rows) {
      const { characteristic, position } = row;
      this.#rows.set(characteristic, position, [...(this.#rows.get(characteristic, position) ?? []), row]);
    }
  }

  /** One, or one for each half of a pair of shells that are unlike. */
  rows(characteristic: Characteristic, position: Position): readonly Row[] {
    return this.#rows.get(characteristic, position) ?? [];
  }

  /** Where an honest reading may lie: once for each service size that the part may have; none where nothing is known. */
  ranges(characteristic: Characteristic, position: Position): readonly Range[] {
    const known = this.#ranges.get(characteristic, position);
    if (known !== undefined) return known;
    const standard = this.fittedRange(characteristic, position);
    const shifts = this.#shiftsAt(characteristic, position);
    const ranges = standard === undefined ? [] : shifts.map((by) => shifted(standard, by));
    return this.#ranges.set(characteristic, position, ranges);
  }

  /** The middle of what was read at each position of the session. */
  medians(characteristic: Characteristic): ReadonlyMap<Position, number> {
    const known = this.#medians.get(characteristic.id);
    if (known !== undefined) return known;
    const medians = mediansIn(this.#view.session, characteristic);
    this.#medians.set(characteristic.id, medians);
    return medians;
  }

  /** Whether most of its like are of the size that is fitted, as nearly all are, and no other size need be thought of. */
  isStandard(characteristic: Characteristic): boolean {
    const known = this.#standardParts.get(characteristic.id);
    if (characteristic.dimension === undefined || known !== undefined) return known ?? true;
    const medians = [...this.medians(characteristic)];
    const standard = medians.filter(([position, read]) => {
      const range = this.fittedRange(characteristic, position);
      return range !== undefined && isIn(read, range);
    });
    const is = 2 * standard.length >= medians.length;
    this.#standardParts.set(characteristic.id, is);
    return is;
  }

  /** Whether a part of some service size, stated or not, might be so large. */
  isServiceSize(characteristic: Characteristic, position: Position, amount: number): boolean {
    const range = this.fittedRange(characteristic, position);
    const from = toNumber(this.#size(characteristic, position).by);
    return (
      range !== undefined &&
      serviceShifts(characteristic, this.#view.registry.parts).some(
        (by) => by !== from && isIn(amount, shifted(range, by - from)),
      )
    );
  }

  /** What the latest earlier session read there. */
  earlier(characteristic: Characteristic, position: Position): number | undefined {
    const { engine, session } = this.#view;
    for (const each of sessionsBefore(engine, session).toReversed()) {
      const read = mediansIn(each, characteristic).get(position);
      if (read !== undefined) return read;
    }
    return undefined;
  }

  /** Whether anybody says to what size the part was made. */
  isSizeKnown(characteristic: Characteristic, position: Position): boolean {
    return this.#size(characteristic, position).isKnown;
  }

  /** Whether what it is bored with was measured there. */
  hasMate(characteristic: Characteristic, position: Position): boolean {
    return this.#mates(characteristic).some((mate) => this.medians(mate).has(position));
  }

  /** Whether what it runs with is of that size too, a piston with its bore; undefined where no such part was measured. */
  matesAgree(characteristic: Characteristic, by: number): boolean | undefined {
    const mates = fitsOf(this.#view.registry)
      .filter(({ outer, inner }) => outer === characteristic || inner === characteristic)
      .map(({ outer, inner }) => (outer === characteristic ? inner : outer))
      .filter((mate) => mate.dimension !== undefined && this.medians(mate).size > 0);
    if (mates.length === 0) return undefined;
    return mates.every((mate) => this.#sharedShifts(mate).some((each) => Math.abs(each - by) < 1));
  }

  #size(characteristic: Characteristic, position: Position): FittedSize {
    return fittedSize(this.#view.engine, this.#view.session, characteristic, position);
  }

  /** Of a part of the size that is fitted; standard where nobody says which. */
  fittedRange(characteristic: Characteristic, position: Position): Range | undefined {
    const known =
      this.#fitted.get(characteristic, position) ??
      this.#fitted.set(characteristic, position, { range: this.#fittedRange(characteristic, position) });
    return known.range;
  }

  #fittedRange(characteristic: Characteristic, position: Position): Range | undefined {
    const { from, to } = rangeOfAll(
      this.rows(characteristic, position).map(({ limits }) => limits.bands),
      isGap(characteristic),
    );
    const around =
      from === undefined || to === undefined ? this.#aroundNominal(characteristic, position) : undefined;
    return (from ?? to) === undefined
      ? around
      : {
          from: from ?? around?.from ?? Number.NEGATIVE_INFINITY,
          to: to ?? around?.to ?? Number.POSITIVE_INFINITY,
        };
  }

  #aroundNominal(characteristic: Characteristic, position: Position): Range | undefined {
    const { engine } = this.#view;
    const { id, nominal = id } = characteristic;
    const standard = engine.sizes.get(id) ?? engine.sizes.get(nominal);
    if (standard !== undefined) {
      const size = toNumber(add(standard, this.#size(characteristic, position).by));
      return within(size, unknownWear(size));
    }
    const make = (at: Position): string =>
      statedMake({ characteristic, position: at, size: this.#size(characteristic, at) }, this.#view);
    const own = make(position);
    const siblings = [...this.medians(characteristic)].flatMap(([at, read]) =>
      make(at) === own ? [read] : [],
    );
    if (siblings.length < FEWEST_SIBLINGS) return undefined;
    const middle = median(siblings);
    if (isGap(characteristic)) return { from: middle / LIKE_GAPS, to: middle * LIKE_GAPS };
    const spread = ROBUST_SPREADS * medianAbsoluteDeviation(siblings);
    return within(middle, Math.max(unknownWear(middle), spread));
  }

  /**
   * How far from the size that is fitted a position may be: not at all where that was stated, else as far as most of its
   * like are, or its mate. One journal alone is not ground to another size, but one cylinder is bored with its piston.
   */
  #shiftsAt(characteristic: Characteristic, position: Position): readonly number[] {
    if (this.#size(characteristic, position).isKnown) return [0];
    const shared = this.#sharedShifts(characteristic);
    const mates = isBored(characteristic, this.#view.registry.parts) ? this.#mates(characteristic) : [];
    const ofMates = mates.flatMap((mate) => {
      const read = this.medians(mate).get(position);
      const range = this.fittedRange(mate, position);
      if (read === undefined || range === undefined) return [];
      return serviceShifts(mate, this.#view.registry.parts).filter((by) => isIn(read, shifted(range, by)));
    });
    return [...new Set([...shared, ...ofMates])];
  }

  #sharedShifts(characteristic: Characteristic): readonly number[] {
    const known = this.#shifts.get(characteristic.id);
    if (known !== undefined) return known;
    const medians = [...this.medians(characteristic)];
    const counts = serviceShifts(characteristic, this.#view.registry.parts).map((by) => ({
      by,
      count: medians.filter(([position, read]) => {
        const range = this.fittedRange(characteristic, position);
        return range !== undefined && isIn(read, shifted(range, by));
      }).length,
    }));
    const wanted = medians.length < FEWEST_SIBLINGS ? 1 : medians.length / 2;
    const shared = counts.flatMap(({ by, count }) => (count >= wanted ? [by] : []));
    const shifts = shared.length === 0 ? [0] : shared;
    this.#shifts.set(characteristic.id, shifts);
    return shifts;
  }

  #mates(characteristic: Characteristic): readonly Characteristic[] {
    return this.#view.registry.all.filter(
      (other) =>
        other.id !== characteristic.id && isBoredWith(characteristic, other, this.#view.registry.parts),
    );
  }
}

/** Clearances of one engine differ by as much: .0007 new to .0047 worn in TM 9-2815-254-24, p. 3-138. */
const LIKE_GAPS = 6;
const FEWEST_SIBLINGS = 3;
/** Where nothing but its like is known: eight robust deviations of them. */
const ROBUST_SPREADS = 8 * 1.4826;
