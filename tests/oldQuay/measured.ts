import { noise, type Random } from '../checks/slips/generated/random.ts';
import { type Block, inTurn, type Session } from './documents.ts';
import type { Life, Step } from './fleet.ts';

interface Unit {
  readonly places: number;
  /** Of a micrometre. */
  readonly um: number;
  /** How wide the limits of new journals and bores are, and how far beyond them wear may go. */
  readonly journal: { readonly wide: number; readonly worn: number };
  readonly bore: { readonly wide: number; readonly worn: number };
  readonly play: { readonly from: number; readonly to: number; readonly worn: number };
}

export const UNITS: Readonly<Record<Life['unit'], Unit>> = {
  in: {
    places: 4,
    um: 1 / 25400,
    journal: { wide: 0.0009, worn: 0.0017 },
    bore: { wide: 0.0011, worn: 0.0053 },
    play: { from: 0.0045, to: 0.0115, worn: 0.0165 },
  },
  mm: {
    places: 3,
    um: 0.001,
    journal: { wide: 0.023, worn: 0.043 },
    bore: { wide: 0.028, worn: 0.134 },
    play: { from: 0.11, to: 0.29, worn: 0.42 },
  },
};

type Kind = 'cylinders' | 'main journals' | 'crankpins';

/** What each cylinder and journal has come to, which nobody knows: upper and lower end of a bore. */
interface Sizes {
  readonly bores: readonly (readonly [top: number, bottom: number])[];
  readonly mains: readonly number[];
  readonly pins: readonly number[];
}

/** The sessions of one engine: it wears while it runs, is made to size again, and is read with the errors of its gauges. */
export function sessionsOf(life: Life, next: Random): readonly Session[] {
  let sizes = madeNew(life, next);
  let hours = 0;
  return life.steps.map((step) => {
    const run = Math.max(0, (step.hours ?? hours) - hours);
    hours = step.hours ?? hours;
    sizes = remade(worn(sizes, run, step, life, next), step, life, next);
    return sessionAt({ ...step, hours }, sizes, life, next);
  });
}

const times = <T>(count: number, make: (index: number) => T): readonly T[] =>
  Array.from({ length: count }, (_, index) => make(index));

/** In the middle of the limits of new parts, give or take an eighth of them. */
const near = (size: number, wide: number, scatter: number, next: Random): number =>
  size + wide * (0.5 + (scatter * noise(next)) / 8);

function madeNew(life: Life, next: Random): Sizes {
  const { journal, bore } = UNITS[life.unit];
  const { counts, sizes } = life;
  return {
    bores: times(counts.cylinders, () => straight(near(sizes.bore, bore.wide, 1, next))),
    mains: times(counts.mains, () => near(sizes.main, journal.wide, 1, next)),
    pins: times(counts.pins, () => near(sizes.pin, journal.wide, 1, next)),
  };
}

const straight = (size: number): readonly [number, number] => [size, size];

/** The upper end of a cylinder wears most, its lower end a tenth of that, a journal a fifth (invented). */
function worn(sizes: Sizes, run: number, { hurt }: Step, { wear, unit }: Life, next: Random): Sizes {
  const one = (run / 1000) * wear * UNITS[unit].um;
  const some = (): number => one * (1 + noise(next) / 8);
  return {
    bores: sizes.bores.map(([top, bottom], index) => {
      const more = hurt?.cylinder === index + 1 ? hurt.by : 0;
      return [top + some() + more, bottom + some() / 10];
    }),
    mains: sizes.mains.map((size) => size - some() / 5),
    pins: sizes.pins.map((size) => size - some() / 5),
  };
}

/** `0.020 over` in the engine's unit, with its sign. */
function stepOf(text: string): number {
  const [amount = '', ...words] = text.split(' ');
  return words.includes('under') ? -Number(amount) : Number(amount);
}

function remade(sizes: Sizes, { made = {}, scatter = 1 }: Step, life: Life, next: Random): Sizes {
  const { journal, bore } = UNITS[life.unit];
  const to = (kind: Kind, size: number, wide: number): number | undefined => {
    const text = made[kind];
    return text === undefined ? undefined : near(size + stepOf(text), wide, scatter, next);
  };
  return {
    bores: sizes.bores.map((each) => {
      const size = to('cylinders', life.sizes.bore, bore.wide);
      return size === undefined ? each : straight(size);
    }),
    mains: sizes.mains.map((each) => to('main journals', life.sizes.main, journal.wide) ?? each),
    pins: sizes.pins.map((each) => to('crankpins', life.sizes.pin, journal.wide) ?? each),
  };
}

function sessionAt(step: Step, sizes: Sizes, life: Life, next: Random): Session {
  const { stage, date, by, hours, made = {}, before = [], after = [] } = step;
  const madeLines = Object.entries(made).map(([part, size]) => `  - { part: ${part}, size: ${size} }`);
  return {
    stage,
    date,
    by,
    ...(hours === undefined ? {} : { hours }),
    before: [...(madeLines.length === 0 ? [] : ['machined:', ...madeLines]), ...before],
    readings: readingsAt(step, sizes, life, next),
    after,
  };
}

function readingsAt(
  { stage, measures, from }: Step,
  sizes: Sizes,
  life: Life,
  next: Random,
): readonly Block[] {
  const { places, um, play } = UNITS[life.unit];
  const all = stage === 'machined' ? ['bores', 'journals'] : ['bores', 'journals', 'end play'];
  const has = (what: string): boolean => (measures ?? all).includes(what as never);
  const read = (size: number): string => (size + noise(next) * um).toFixed(places);
  const mic = micFor(life);
  const bores: Block = {
    measure: 'cylinder_bore',
    with: life.unit === 'in' ? 'bore-2-6' : 'bore-50-150',
    at: inTurn(sizes.bores.map((each) => each.map(read))),
    along: 'stations: [top, bottom]',
  };
  const endPlay = (): Block => ({
    measure: 'crankshaft_end_play',
    with: life.unit === 'in' ? 'dial-1' : 'dial-10',
    at: (play.from + (play.to - play.from) * (0.3 + next() / 4)).toFixed(life.unit === 'in' ? 3 : 2),
  });
  const journals: readonly Block[] = [
    { measure: 'main_journal_diameter', with: mic, at: inTurn(sizes.mains.map(read)) },
    { measure: 'crankpin_diameter', with: mic, at: inTurn(sizes.pins.map(read)) },
  ];
  const blocks = [
    ...(has('bores') ? [bores] : []),
    ...(has('journals') ? journals : []),
    ...(has('end play') ? [endPlay()] : []),
  ];
  return from === undefined ? blocks : blocks.map((each) => ({ ...each, from }));
}

const micFor = ({ unit }: Life): string => (unit === 'in' ? 'mic-2-3' : 'mic-50-75');
