import type { Registry } from '../../src/characteristics/registry.ts';
import { judgeSession } from '../../src/checks/judge/session.ts';
import type { OpenedDocument } from '../../src/documents/opened.ts';
import { engineOf, opened } from './bench.ts';

/** Numbers between 0 and 1 that are the same for the same seed. */
export function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

type Random = () => number;
const between = (next: Random, low: number, high: number): number => low + (high - low) * next();
const pick = <T>(next: Random, list: readonly T[]): T => {
  const found = list[Math.floor(next() * list.length)];
  if (found === undefined) throw new Error('nothing to pick from');
  return found;
};
/** Of a normal distribution, near enough. */
const noise = (next: Random): number => next() + next() + next() + next() + next() + next() - 3;

interface System {
  readonly unit: 'in' | 'mm';
  readonly places: number;
  readonly perInch: number;
  readonly maxError: number;
  readonly resolution: number;
  readonly services: readonly number[];
  readonly turn: number;
  readonly frame: number;
}

const INCH: System = {
  unit: 'in',
  places: 4,
  perInch: 1,
  maxError: 0.0001,
  resolution: 0.0001,
  services: [0.01, 0.02, 0.03],
  turn: 0.025,
  frame: 1,
};
const METRIC: System = {
  unit: 'mm',
  places: 3,
  perInch: 25.4,
  maxError: 0.004,
  resolution: 0.001,
  services: [0.25, 0.5, 0.75],
  turn: 0.5,
  frame: 25,
};

/** Expanded uncertainty of one reading of the instruments below. */
const expanded = ({ maxError, resolution }: System): number =>
  1.96 * Math.hypot(maxError / Math.sqrt(3), resolution / Math.sqrt(12));

/** One thing measured: its limits for new parts and its wear limit, in the engine's unit. */
interface Part {
  readonly id: string;
  readonly positions: number;
  readonly min: number;
  readonly max: number;
  readonly wear: number;
  /** Which service size moves it, and which way. */
  readonly service: 'main' | 'crankpin' | 'block';
  readonly way: -1 | 1;
}

interface GeneratedEngine {
  readonly system: System;
  readonly parts: readonly Part[];
  readonly documents: readonly OpenedDocument[];
}

const rounded = (amount: number, { places }: System): number => Number(amount.toFixed(places));

function part(
  next: Random,
  system: System,
  about: Omit<Part, 'min' | 'max' | 'wear'> & { readonly size: number; readonly wears: -1 | 1 },
): Part {
  const width = between(next, 0.0006, 0.0015) * system.perInch;
  const span = between(next, 0.0005, about.service === 'block' ? 0.005 : 0.002) * system.perInch;
  const min = rounded(about.size, system);
  const max = rounded(min + width, system);
  const wear = rounded(about.wears > 0 ? max + span : min - span, system);
  const { id, positions, service, way } = about;
  return { id, positions, service, way, min, max, wear };
}

/** What an engine's documents say of its sizes: everything, no wear limits, or nominal sizes alone. */
export const KNOWN = ['new and wear', 'new', 'nominal'] as const;
export type Known = (typeof KNOWN)[number];

/** An engine of some size, its limits and its two gauges. */
export function generateEngine(next: Random, known: Known): GeneratedEngine {
  const system = next() < 0.5 ? INCH : METRIC;
  const main = between(next, 1.6, 4.4) * system.perInch;
  const pin = main * between(next, 0.8, 0.95);
  const bore = main * between(next, 1.15, 1.4);
  const clearance = 0.003 * system.perInch;
  const of = (
    id: string,
    positions: number,
    size: number,
    wears: -1 | 1,
    service: Part['service'],
    way: -1 | 1,
  ) => part(next, system, { id, positions, size, wears, service, way });
  const parts = [
    of('main_journal_diameter', 5, main, -1, 'main', -1),
    of('crankpin_diameter', 4, pin, -1, 'crankpin', -1),
    of('main_bearing_bore', 5, main + clearance, 1, 'main', -1),
    of('rod_bearing_bore', 4, pin + clearance, 1, 'crankpin', -1),
    of('cylinder_bore', 4, bore, 1, 'block', 1),
    of('piston_diameter', 4, bore - 1.5 * clearance, -1, 'block', 1),
  ];
  return { system, parts, documents: documentsOf(system, parts, known) };
}

function documentsOf(system: System, parts: readonly Part[], known: Known): readonly OpenedDocument[] {
  const { unit, maxError, resolution, places } = system;
  const limits = parts.map(
    ({ id, min, max, wear }) =>
      `  ${id}: { new: { min: ${min.toFixed(places)}, max: ${max.toFixed(places)} }, wear: { ${wear > max ? 'max' : 'min'}: ${wear.toFixed(places)} } }`,
  );
  const stated = {
    'new and wear': limits.join('\n'),
    new: limits.map((line) => line.replace(/, wear.*(?= \}$)/, '')).join('\n'),
    nominal: '  crankshaft_end_play: { wear: { max: 0.5 mm } }',
  }[known];
  const sizes = parts.map(({ id, min }) => `${id}: ${min.toFixed(places)}`).join(', ');
  const gauge = (type: string): string =>
    `{ type: ${type}, resolution: ${resolution} ${unit}, max_error: ${maxError} ${unit} }`;
  return [
    opened(
      'engine.yaml',
      `kind: engine\nname: G\nunits: { length: ${unit} }\nlayout: { mains: 5, crankpins: 4, cylinders: 4 }\n${known === 'nominal' ? `sizes: { ${sizes} }\n` : ''}`,
    ),
    opened('limits.yaml', `kind: limits\nsource: generated\nlimits:\n${stated}\n`),
    opened(
      'instruments.yaml',
      `kind: instruments\ninstruments:\n  mic: ${gauge('micrometer')}\n  bore: ${gauge('bore gauge')}\n`,
    ),
  ];
}

/** What was read of one part: by position the numbers as written, front and rear. */
interface Readings {
  readonly part: Part;
  readonly shift: number;
  readonly written: string[][];
}

/** Parts worn up to twice the way from new to worn out, some cranks reground and blocks rebored. */
function measure(next: Random, { system, parts }: GeneratedEngine): readonly Readings[] {
  const shifts = {
    main: next() < 0.3 ? pick(next, system.services) : 0,
    crankpin: next() < 0.3 ? pick(next, system.services) : 0,
    block: next() < 0.3 ? pick(next, system.services) : 0,
  };
  return parts.map((each) => {
    const shift = each.way * shifts[each.service];
    // Half of the engines are worn at every position alike, up to twice the way; half unevenly and less.
    const [worst, out] = [2 * next(), each.wear > each.max ? 1 : -1];
    const isWornOut = next() < 0.5;
    const span = Math.abs(each.wear - (out > 0 ? each.max : each.min));
    const written = Array.from({ length: each.positions }, () => {
      const worn = out * span * (isWornOut ? 2 * next() : worst * next());
      const size = between(next, each.min, each.max) + shift + worn;
      return [0, 1].map(() => (size + (noise(next) * expanded(system)) / 4).toFixed(system.places));
    });
    return { part: each, shift, written };
  });
}

const yamlOf = (date: string, readings: readonly Readings[]): string =>
  `kind: session\nstage: teardown\ndate: ${date}\nreadings:\n${readings
    .map(
      ({ part: { id }, written }) =>
        `  - { measure: ${id}, with: ${/bore/.test(id) ? 'bore' : 'mic'}, stations: [front, rear], at: { ${written
          .map((points, index) => `${index + 1}: [${points.join(', ')}]`)
          .join(', ')} } }`,
    )
    .join('\n')}\n`;

export const SLIP_KINDS = ['swap', 'point', 'frame', 'turn', 'unit', 'copy'] as const;
export type SlipKind = (typeof SLIP_KINDS)[number];

interface MadeSlip {
  readonly kind: SlipKind;
  readonly id: string;
  readonly position: string;
  /** What names the intended value in the message. */
  readonly named: string;
}

/** Changes one reading as a pen slips; undefined where the slip is small, or lands inside the wear band. */
function slip(next: Random, engine: GeneratedEngine, readings: readonly Readings[]): MadeSlip | undefined {
  const { system } = engine;
  const kind = pick(next, SLIP_KINDS);
  const of = pick(next, readings);
  const position = Math.floor(next() * of.written.length);
  const points = of.written[position];
  const index = next() < 0.5 ? 0 : 1;
  const right = points?.[index];
  if (points === undefined || right === undefined) return undefined;
  const wrong = slipped(next, kind, right, system, readings, of);
  if (wrong === undefined || wrong.text === right || Number(wrong.text) <= 0) return undefined;
  const [amount, was] = [Number(wrong.text), Number(right)];
  const { min, max, wear } = of.part;
  const [least, most] = [Math.min(min, wear) + of.shift, Math.max(max, wear) + of.shift];
  if (Math.abs(amount - was) < 10 * expanded(system) || (amount >= least && amount <= most)) return undefined;
  points[index] = wrong.text;
  return { kind, id: of.part.id, position: String(position + 1), named: wrong.named ?? `${right}?` };
}

function slipped(
  next: Random,
  kind: SlipKind,
  right: string,
  system: System,
  readings: readonly Readings[],
  of: Readings,
): { text: string; named?: string } | undefined {
  const sign = next() < 0.5 ? 1 : -1;
  const by = (step: number) => ({ text: (Number(right) + sign * step).toFixed(system.places) });
  switch (kind) {
    case 'swap': {
      const places = [...right].flatMap((digit, at) => (digit === '.' ? [] : [at]));
      const at = Math.floor(next() * (places.length - 1));
      const [a, b] = [places[at] ?? 0, places[at + 1] ?? 0];
      const digits = [...right];
      [digits[a], digits[b]] = [right.charAt(b), right.charAt(a)];
      const text = digits.join('');
      return /^0\d/.test(text) ? undefined : { text };
    }
    case 'point': {
      const [whole = '', part = ''] = right.split('.');
      const text =
        sign > 0
          ? `${whole}${part.charAt(0)}.${part.slice(1)}`
          : `${whole.slice(0, -1) || '0'}.${whole.slice(-1)}${part}`;
      return { text };
    }
    case 'frame':
      return by(system.frame);
    case 'turn':
      return by(system.turn);
    case 'unit': {
      const other =
        system.unit === 'in' ? (Number(right) * 25.4).toFixed(3) : (Number(right) / 25.4).toFixed(4);
      return { text: other, named: `${other} ${system.unit === 'in' ? 'mm' : 'in'}?` };
    }
    case 'copy': {
      const from = pick(
        next,
        readings.filter((each) => each.part.id !== of.part.id),
      );
      const position = Math.floor(next() * from.written.length);
      const text = from.written[position]?.[0];
      return text === undefined
        ? undefined
        : { text, named: `the reading of ${from.part.id.replaceAll('_', ' ')}` };
    }
  }
}

export interface Rate {
  made: number;
  flagged: number;
  named: number;
}

export interface Rates {
  readonly clean: { sessions: number; flagged: number };
  readonly slips: Readonly<Record<SlipKind, Rate>>;
  readonly all: Rate;
  /** A few that went wrong, to look at. */
  readonly missed: string[];
}

/** Generates that many sessions, clean and each again with one slip, and counts what is said of them. */
export function measureRates(count: number, seed: number, known: Known = 'new and wear'): Rates {
  const next = random(seed);
  const none = (): Rate => ({ made: 0, flagged: 0, named: 0 });
  const rates: Rates = {
    clean: { sessions: 0, flagged: 0 },
    slips: { swap: none(), point: none(), frame: none(), turn: none(), unit: none(), copy: none() },
    all: none(),
    missed: [],
  };
  for (let i = 0; i < count; i++) {
    const engine = generateEngine(next, known);
    const readings = measure(next, engine);
    const clean = implausible(engine, yamlOf('2026-02-03', readings));
    rates.clean.sessions += 1;
    if (clean.length > 0) {
      rates.clean.flagged += 1;
      rates.missed.push(`clean: ${clean[0]?.message}`);
    }
    const made = slip(next, engine, readings);
    if (made === undefined) continue;
    const found = implausible(engine, yamlOf('2026-02-03', readings)).find(
      ({ measure: id, position }) => id === made.id && position === made.position,
    );
    const isNamed = found?.message.includes(made.named) === true;
    for (const rate of [rates.all, rates.slips[made.kind]]) {
      rate.made += 1;
      if (found !== undefined) rate.flagged += 1;
      if (isNamed) rate.named += 1;
    }
    if (!isNamed) rates.missed.push(`${made.kind} ${made.id} ${made.named}: ${found?.message}`);
  }
  return rates;
}

function implausible(engine: GeneratedEngine, text: string) {
  const own = [...engine.documents, opened('s.yaml', text)];
  const made: { engine: ReturnType<typeof engineOf>['engine']; registry: Registry } = engineOf(own);
  return made.engine.sessions.flatMap((session) =>
    judgeSession(made.engine, made.registry, session).findings.filter(
      ({ code }) => code === 'reading/implausible',
    ),
  );
}
