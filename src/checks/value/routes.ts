import {
  type Characteristic,
  type Derivation,
  type DerivationChoice,
  type InputPlace,
  placesOf,
} from '../../characteristics/characteristic.ts';
import { type Grid, gridOfOne, type Measured, summary, valuesOf } from '../../characteristics/grid.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Place } from '../../diagnostic/place.ts';
import type { Engine } from '../../documents/assemble.ts';
import {
  type Point,
  type PositionReading,
  pointsOf,
  type ReadingBlock,
} from '../../documents/session/reading.ts';
import { compareSessions, type SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';
import { expandedFactor, welchSatterthwaite } from '../../measurement/conformance.ts';
import type { Instrument } from '../../measurement/instrument.ts';
import { STANDARD_TEMPERATURE, type StatedTemperature } from '../../measurement/temperature.ts';
import { standardUncertainty, subtractValues, type Value } from '../../measurement/value.ts';
import { compare, type Fraction, negate, toNumber, ZERO } from '../../quantity/fraction.ts';
import { nearestTurn } from '../../quantity/turn.ts';
import { ByReading } from '../byReading.ts';
import { nominalSizes } from '../grades/nominalSizes.ts';
import { sessionsBefore } from '../history/earlier.ts';
import { isSamePartAfter } from '../history/partHistory.ts';
import { blockError } from './blockError.ts';
import { blockInstrument, setterOf } from './blockInstrument.ts';
import { blocksOf } from './blocksOf.ts';
import { blockWarmth } from './blockWarmth.ts';
import { earlierDays } from './earlierDays.ts';
import { choicesOf, compareRoutes, equalToFirst } from './equalRoutes.ts';
import { pointValue } from './pointValue.ts';
import { reachedFrom } from './reach.ts';
import type { Route } from './route.ts';
import { unlikeReadings } from './statedConditions.ts';
import { workAfter } from './work.ts';

/** Whether what a session read of a characteristic at a position still holds. */
export type Holds = (characteristic: Characteristic, position: Position, session: SessionDocument) => boolean;

/** What makes a session's values those of the engine's state. */
export interface StateSources {
  /** The earlier sessions of the same run, the latest first. */
  readonly earlier: readonly SessionDocument[];
  readonly holds: Holds;
}

/** What sessions of one engine measure: its verdicts, its state, and sessions that use one another, share them. */
export type EngineRoutes = Map<SessionDocument, SessionRoutes>;

/** What a session measures by itself and with the sessions that it uses, built once for all that ask. */
export function routesOf(
  engine: Engine,
  registry: Registry,
  session: SessionDocument,
  built: EngineRoutes = new Map(),
): SessionRoutes {
  const known = built.get(session);
  if (known !== undefined) return known;
  const routes = new SessionRoutes(engine, registry, session, built);
  built.set(session, routes);
  return routes;
}

/** Everything that a session measures: asked by characteristic and position, worked out once. */
export class SessionRoutes {
  readonly #engine: Engine;
  readonly #registry: Registry;
  readonly #session: SessionDocument;
  readonly #placeOf: (span: { start: number; end: number }) => Place;
  /** The sessions that this one uses, or that came before it in one run of the engine, the latest first. */
  readonly #used: readonly SessionRoutes[];
  /** What was read in the session itself: of a state those of its last session. */
  readonly #own: SessionRoutes;
  /** Where an engine's state is asked for: whether what an earlier session read still holds. */
  readonly #holds: Holds | undefined;
  readonly #known = new ByReading<Map<string, readonly Route[]>>();
  readonly #read = new ByReading<Map<string, readonly Route[]>>();
  readonly #blocksOf: ReadonlyMap<string, readonly ReadingBlock[]>;
  #reached: ReadonlySet<string> | undefined;

  constructor(
    engine: Engine,
    registry: Registry,
    session: SessionDocument,
    built: EngineRoutes,
    state?: StateSources,
  ) {
    this.#engine = engine;
    this.#registry = registry;
    this.#session = session;
    this.#placeOf = session.placeOf;
    this.#holds = state?.holds;
    this.#own = state === undefined ? this : routesOf(engine, registry, session, built);
    this.#used = (state?.earlier ?? usedSessions(engine, session)).map((each) =>
      routesOf(engine, registry, each, built),
    );
    this.#blocksOf = blocksOf(session);
  }

  /** False where neither it nor all that it is worked out from was measured: most of what could be measured is not. */
  mayHave({ id }: Characteristic): boolean {
    return this.#reachedIds.has(id);
  }

  get #reachedIds(): ReadonlySet<string> {
    this.#reached ??= this.#reach();
    return this.#reached;
  }

  #reach(): ReadonlySet<string> {
    const held =
      this.#holds === undefined ? [] : this.#used.flatMap((routes) => [...routes.#blocksOf.keys()]);
    const used = this.#used.flatMap((routes) => [...routes.#reachedIds]);
    return reachedFrom(this.#registry, [...this.#blocksOf.keys(), ...held], used);
  }

  /**
   * The smallest uncertainty first, then direct, then the later date: see `equalRoutes.ts` for what is equal in all of
   * it. Readings of a known temperature are taken to the one that is asked for.
   */
  at(
    characteristic: Characteristic,
    position: Position,
    choice: DerivationChoice,
    warm: StatedTemperature = STANDARD_TEMPERATURE,
  ): readonly Route[] {
    const key = keyOf(choice, warm);
    const answers =
      this.#known.get(characteristic, position) ?? this.#known.set(characteristic, position, new Map());
    const known = answers.get(key);
    if (known !== undefined) return known;
    // A formula that leads back to itself finds nothing instead of running for ever.
    answers.set(key, []);
    const routes = [
      ...this.#direct(characteristic, position, warm),
      ...this.#derived(characteristic, position, choice, warm),
    ];
    if (routes.length > 1) routes.sort(compareRoutes);
    answers.set(key, routes);
    return routes;
  }

  #direct(characteristic: Characteristic, position: Position, warm: StatedTemperature): readonly Route[] {
    const own = this.#own.#ownDirect(characteristic, position, warm);
    return own.length > 0 || this.#holds === undefined
      ? own
      : this.#held(characteristic, position, warm, this.#holds);
  }

  /** The latest reading of an earlier session, as long as it holds. */
  #held(
    characteristic: Characteristic,
    position: Position,
    warm: StatedTemperature,
    holds: Holds,
  ): readonly Route[] {
    for (const routes of this.#used) {
      const found = routes.#ownDirect(characteristic, position, warm);
      if (found.length === 0) continue;
      if (!holds(characteristic, position, routes.#session)) return [];
      return found.map((route) => ({ ...route, takenFrom: routes.#session.date }));
    }
    return [];
  }

  #ownDirect(characteristic: Characteristic, position: Position, warm: StatedTemperature): readonly Route[] {
    const blocks = this.#blocksOf.get(characteristic.id);
    if (blocks === undefined) return [];
    const answers =
      this.#read.get(characteristic, position) ?? this.#read.set(characteristic, position, new Map());
    const read = answers.get(warm.text) ?? this.#readIn(blocks, characteristic, position, warm);
    answers.set(warm.text, read);
    return read;
  }

  #readIn(
    blocks: readonly ReadingBlock[],
    characteristic: Characteristic,
    position: Position,
    warm: StatedTemperature,
  ): readonly Route[] {
    return blocks
      .filter(
        (block) =>
          workAfter(
            this.#session,
            block,
            position,
            characteristic,
            this.#registry,
            this.#engine.document.layout,
          ) === undefined,
      )
      .flatMap((block) =>
        block.positions
          .filter((reading) => reading.position === position)
          .flatMap((reading) => this.#routeOf(characteristic, block, reading, warm) ?? []),
      );
  }

  #routeOf(
    characteristic: Characteristic,
    block: ReadingBlock,
    reading: PositionReading,
    warm: StatedTemperature,
  ): Route | undefined {
    const points = pointsOf(reading);
    const [first] = points;
    if (first === undefined) return undefined;
    const used = { engine: this.#engine, session: this.#session };
    const instrument = blockInstrument(characteristic, block, first, used);
    const setter = setterOf(block, first, used);
    const warmth = blockWarmth(characteristic, setter ?? instrument, warm, {
      block,
      session: this.#session,
      engine: this.#engine,
      registry: this.#registry,
    });
    const { position } = reading;
    const error = blockError(block, this.#session, this.#engine);
    const source = { block, position, session: this.#session, instrument, setter, warmth, error };
    const valueAt = (point: Point): Value => pointValue(point, source);
    const grid: Grid = {
      stations: reading.stations,
      directions: reading.directions,
      rows: reading.rows.map((row) => row.map((point) => point && valueAt(point))),
    };
    const measured = summary(valuesOf(grid));
    if (measured === undefined) return undefined;
    return {
      name: 'read directly',
      with: [block.from === undefined ? instrument.id : `figures of ${block.from}`],
      assumed: assumedOf(instrument, setter),
      grid,
      measured,
      ...uncertaintyOf(measured),
      written: points.map((point) => point.written),
      lastDigit: finest(points.map((point) => point.lastDigit)),
      place: this.#placeOf(reading.span),
      inputs: [],
      block,
      warmth,
      takenOn: block.date ?? this.#session.date,
      notes: reading.notes,
      putRightBy: error && negate(error(first.amount)),
      characteristic,
      position: reading.position,
      readIn: this.#session,
      takenFrom: undefined,
    };
  }

  #derived(
    characteristic: Characteristic,
    position: Position,
    choice: DerivationChoice,
    warm: StatedTemperature,
  ): readonly Route[] {
    return characteristic.derivations.flatMap((derivation) => {
      const places = placesOf(derivation, this.#registry, this.#engine.document.layout, position);
      if (places === undefined) return [];
      const sized = derivation.places === undefined ? choice : { ...choice, sizes: this.#sizesAt(position) };
      const placed = { characteristic, position, derivation, places, session: this.#session };
      for (const equal of choicesOf(places.map((place) => this.inputsAt(place, warm)))) {
        const routes = equal
          .filter((each) => this.#holds !== undefined || !isOfOthers(each))
          .filter((each) => unlikeReadings(characteristic, each) === undefined)
          .flatMap((each) => derivedRoute(placed, each, sized) ?? []);
        if (routes.length > 0) return routes;
      }
      return [];
    });
  }

  /** A shop's own formula may name them, whoever asks for its figure. */
  readonly #sizesAt = (position: Position): ReadonlyMap<string, Fraction> =>
    nominalSizes(this.#engine, this.#session, this.#registry, position);

  /** What there is of an input: read here, or standing in from a session that this one uses. */
  inputsAt({ id, position }: InputPlace, warm: StatedTemperature = STANDARD_TEMPERATURE): readonly Route[] {
    const input = this.#registry.find(id);
    if (input === undefined) return [];
    const own = this.at(input, position, {}, warm);
    return own.length > 0 || this.#holds !== undefined ? own : this.#fromUsed(input, position, warm);
  }

  /** Whether a session that this one uses has it. */
  isInUsed(characteristic: Characteristic, position: Position): boolean {
    // Of a state all that holds is its own.
    if (this.#holds !== undefined) return false;
    return this.#used.some(
      (routes) =>
        routes.at(characteristic, position, {}).length > 0 &&
        !this.#isChangedSince(routes.#session, characteristic, position),
    );
  }

  /** What this session has not measured itself, from those it uses, unless the part was changed in between. */
  #fromUsed(input: Characteristic, at: Position, warm: StatedTemperature): readonly Route[] {
    for (const routes of this.#used) {
      const found = equalToFirst(routes.at(input, at, {}, warm));
      if (found.length === 0) continue;
      if (this.#isChangedSince(routes.#session, input, at)) return [];
      return found.map((route) => ({ ...route, takenFrom: routes.#session.date }));
    }
    return [];
  }

  /** Whether the part was worked on, machined, replaced or fitted anew after a session, up to and in this one. */
  #isChangedSince(used: SessionDocument, characteristic: Characteristic, position: Position): boolean {
    const upToHere = [...sessionsBefore(this.#engine, this.#session), this.#session];
    const since = upToHere.slice(upToHere.indexOf(used) + 1);
    return !isSamePartAfter(since, characteristic, position, this.#engine, this.#registry);
  }
}

/** Nearly all is asked for as it is, at the standard temperature. */
const keyOf = ({ by, per }: DerivationChoice, { text }: StatedTemperature): string =>
  by === undefined && per === undefined ? text : `${by ?? ''} ${per?.n ?? ''} ${text}`;

/** The sessions named in `uses`, the latest first; never the session itself or a later one. */
const usedSessions = (engine: Engine, session: SessionDocument): readonly SessionDocument[] =>
  sessionsBefore(engine, session)
    .filter((each) => session.uses.some(({ name }) => name === each.name))
    .reverse();

interface PlacedDerivation {
  readonly characteristic: Characteristic;
  readonly position: Position;
  readonly derivation: Derivation;
  readonly places: readonly InputPlace[];
  readonly session: SessionDocument;
}

/** What comes wholly from other sessions was judged there; the state takes it from wherever it was read. */
const isOfOthers = (inputs: readonly Route[]): boolean =>
  inputs.length > 0 && inputs.every(({ takenFrom }) => takenFrom !== undefined);

function derivedRoute(
  { characteristic, position, derivation, places, session }: PlacedDerivation,
  inputs: readonly Route[],
  choice: DerivationChoice,
): Route | undefined {
  const [first] = inputs;
  const grids = inputs.map((input) => input.grid);
  const measured = derivation.compute(grids, choice, places);
  if (measured === undefined) return undefined;
  return {
    name: derivation.route,
    with: [...new Set(inputs.flatMap((input) => input.with))],
    assumed: inputs.flatMap((input) => input.assumed),
    grid: gridOfOne(measured.mean),
    measured,
    ...uncertaintyOf(measured),
    written: [],
    lastDigit: measured.lastDigit ?? finest(inputs.map((input) => input.lastDigit)),
    place: first?.place ?? session.start,
    inputs,
    block: undefined,
    warmth: undefined,
    putRightBy: undefined,
    takenOn: '',
    notes: [...(measured.remark === undefined ? [] : [measured.remark]), ...earlierDays(inputs)],
    characteristic,
    position,
    readIn: latestOf(inputs) ?? session,
    takenFrom: undefined,
  };
}

const latestOf = (inputs: readonly Route[]): SessionDocument | undefined =>
  inputs
    .map(({ readIn }) => readIn)
    .sort(compareSessions)
    .at(-1);

/** Of the ends of what was measured the less certain counts for both. */
export function uncertaintyOf(measured: Measured): Pick<Route, 'worse' | 'u' | 'dof' | 'expanded'> {
  const { least, greatest } = measured;
  const ofLeast = standardUncertainty(least);
  const ofGreatest = greatest === least ? ofLeast : standardUncertainty(greatest);
  const [worse, u] = ofLeast >= ofGreatest ? [least, ofLeast] : [greatest, ofGreatest];
  const dof = welchSatterthwaite([...worse.terms.values()]);
  return { worse, u, dof, expanded: u * expandedFactor(dof) };
}

/** Most instruments are registered: then no list is made. */
function assumedOf(instrument: Instrument, setter: Instrument | undefined): readonly Instrument[] {
  if (setter?.assumed === true) return instrument.assumed ? [instrument, setter] : [setter];
  return instrument.assumed ? [instrument] : NONE;
}

const NONE: readonly Instrument[] = [];

const finest = (steps: readonly Fraction[]): Fraction => steps.reduce((a, b) => (compare(b, a) < 0 ? b : a));

/** Normalised error of two routes: their difference over its expanded uncertainty (ISO 13528); above 1 they disagree. */
export function normalisedError(a: Route, b: Route): number | null {
  const difference = subtractValues(a.measured.mean, b.measured.mean);
  const amount = nearestTurn(difference.amount, ZERO, a.characteristic.cycle);
  const u = standardUncertainty(difference);
  if (u === 0) return amount.n === 0n ? 0 : null;
  const dof = welchSatterthwaite([...difference.terms.values()]);
  return Math.abs(toNumber(amount)) / (u * expandedFactor(dof));
}
