import type { Characteristic } from '../../characteristics/characteristic.ts';
import { pointsOf } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';
import { median, medianAbsoluteDeviation } from '../../measurement/sample.ts';
import { toNumber } from '../../quantity/fraction.ts';
import { sessionsBefore } from '../history/earlier.ts';
import type { Row, SessionView } from '../judge/row.ts';
import { isIn, type Range, rangeOfBands, shifted, unknownWear, within } from './plausibleSizes.ts';
import { serviceShifts, statedShift } from './serviceSizes.ts';

/** What is to be expected of readings at the positions of a session, from limits, nominal sizes and each other. */
export class Expectations {
  readonly #view: SessionView;
  readonly #rows: ReadonlyMap<string, Row>;
  readonly #standard = new Map<string, Range | undefined>();
  readonly #standardParts = new Map<string, boolean>();
  readonly #ranges = new Map<string, readonly Range[]>();
  readonly #medians = new Map<string, ReadonlyMap<Position, number>>();
  readonly #shifts = new Map<string, readonly number[]>();

  constructor(view: SessionView, rows: readonly Row[]) {
    this.#view = view;
    this.#rows = new Map(rows.map((row) => [keyOf(row.characteristic, row.position), row]));
  }

  row(characteristic: Characteristic, position: Position): Row | undefined {
    return this.#rows.get(keyOf(characteristic, position));
  }

  /** Where an honest reading may lie: once for each service size that the part may have; none where nothing is known. */
  ranges(characteristic: Characteristic, position: Position): readonly Range[] {
    const key = keyOf(characteristic, position);
    const known = this.#ranges.get(key);
    if (known !== undefined) return known;
    const standard = this.standardRange(characteristic, position);
    const shifts = this.#shiftsAt(characteristic, position);
    const ranges = standard === undefined ? [] : shifts.map((by) => shifted(standard, by));
    this.#ranges.set(key, ranges);
    return ranges;
  }

  /** The middle of what was read at each position of the session. */
  medians(characteristic: Characteristic): ReadonlyMap<Position, number> {
    const known = this.#medians.get(characteristic.id);
    if (known !== undefined) return known;
    const medians = mediansIn(this.#view.session, characteristic);
    this.#medians.set(characteristic.id, medians);
    return medians;
  }

  /** Whether most of its like are of standard size, as nearly all are, and so no other size need be thought of. */
  isStandard(characteristic: Characteristic): boolean {
    const { service } = characteristic;
    const known = this.#standardParts.get(characteristic.id);
    if (service === undefined || known !== undefined) return known ?? true;
    const medians = [...this.medians(characteristic)];
    const standard = medians.filter(([position, read]) => {
      const range = this.standardRange(characteristic, position);
      return range !== undefined && isIn(read, range);
    });
    const is = 2 * standard.length >= medians.length;
    this.#standardParts.set(characteristic.id, is);
    return is;
  }

  /** Whether a part of some service size, stated or not, might be so large. */
  isServiceSize(characteristic: Characteristic, position: Position, amount: number): boolean {
    const standard = this.standardRange(characteristic, position);
    return (
      standard !== undefined &&
      serviceShifts(characteristic).some((by) => by !== 0 && isIn(amount, shifted(standard, by)))
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

  /** Of a part of standard size. */
  standardRange(characteristic: Characteristic, position: Position): Range | undefined {
    const key = keyOf(characteristic, position);
    if (this.#standard.has(key)) return this.#standard.get(key);
    const row = this.#rows.get(key);
    const { from, to } = row === undefined ? {} : rangeOfBands(row.limits.bands);
    const around = from === undefined || to === undefined ? this.#aroundNominal(characteristic) : undefined;
    const range =
      (from ?? to) === undefined
        ? around
        : {
            from: from ?? around?.from ?? Number.NEGATIVE_INFINITY,
            to: to ?? around?.to ?? Number.POSITIVE_INFINITY,
          };
    this.#standard.set(key, range);
    return range;
  }

  #aroundNominal(characteristic: Characteristic): Range | undefined {
    const { engine } = this.#view;
    const bore = characteristic.service?.way === 'larger' ? engine.sizes.get('bore') : undefined;
    const size = engine.sizes.get(characteristic.id) ?? bore;
    if (size !== undefined) return within(toNumber(size), unknownWear(toNumber(size)));
    const siblings = [...this.medians(characteristic).values()];
    if (siblings.length < FEWEST_SIBLINGS) return undefined;
    const middle = median(siblings);
    const spread = ROBUST_SPREADS * medianAbsoluteDeviation(siblings);
    return within(middle, Math.max(unknownWear(middle), spread));
  }

  /**
   * The service sizes that a position may have: what was stated, else those that most of its like have, or its
   * mate. One journal alone is not ground to another size, but one cylinder is bored with its piston.
   */
  #shiftsAt(characteristic: Characteristic, position: Position): readonly number[] {
    const stated = statedShift(characteristic, position, this.#view);
    if (stated !== undefined) return [stated];
    const shared = this.#sharedShifts(characteristic);
    const mates = characteristic.service?.way === 'larger' ? this.#mates(characteristic) : [];
    const ofMates = mates.flatMap((mate) => {
      const read = this.medians(mate).get(position);
      const range = this.standardRange(mate, position);
      if (read === undefined || range === undefined) return [];
      return serviceShifts(mate).filter((by) => isIn(read, shifted(range, by)));
    });
    return [...new Set([...shared, ...ofMates])];
  }

  #sharedShifts(characteristic: Characteristic): readonly number[] {
    const known = this.#shifts.get(characteristic.id);
    if (known !== undefined) return known;
    const medians = [...this.medians(characteristic)];
    const counts = serviceShifts(characteristic).map((by) => ({
      by,
      count: medians.filter(([position, read]) => {
        const range = this.standardRange(characteristic, position);
        return range !== undefined && isIn(read, shifted(range, by));
      }).length,
    }));
    const wanted = medians.length < FEWEST_SIBLINGS ? 1 : medians.length / 2;
    const shared = counts.flatMap(({ by, count }) => (count >= wanted ? [by] : []));
    const shifts = shared.length === 0 ? [0] : shared;
    this.#shifts.set(characteristic.id, shifts);
    return shifts;
  }

  #mates({ id, service }: Characteristic): readonly Characteristic[] {
    return this.#view.registry.all.filter(
      (other) => other.id !== id && other.service?.part === service?.part && other.service?.way === 'larger',
    );
  }
}

const keyOf = ({ id }: Characteristic, position: Position): string => `${id} ${position.key}`;

const FEWEST_SIBLINGS = 3;
/** Where nothing but its like is known: eight robust deviations of them. */
const ROBUST_SPREADS = 8 * 1.4826;

export function mediansIn(session: SessionDocument, { id }: Characteristic): ReadonlyMap<Position, number> {
  const amounts = new Map<Position, number[]>();
  for (const { measure, positions } of session.blocks) {
    if (measure.id !== id) continue;
    for (const reading of positions) {
      const all = amounts.get(reading.position) ?? [];
      all.push(...pointsOf(reading).map((point) => toNumber(point.amount)));
      amounts.set(reading.position, all);
    }
  }
  return new Map([...amounts].flatMap(([at, all]) => (all.length === 0 ? [] : [[at, median(all)] as const])));
}
