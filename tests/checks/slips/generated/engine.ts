import type { OpenedDocument } from '../../../../src/documents/opened.ts';
import { opened } from '../../bench.ts';
import {
  BEARING_CLEARANCES,
  BORES,
  END_PLAYS,
  JOURNALS,
  PISTONS,
  type PublishedWear,
  SHELLS,
  SIDE_CLEARANCES,
} from './publishedWear.ts';
import { between, noise, pick, type Random } from './random.ts';

export interface System {
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
export const expanded = ({ maxError, resolution }: System): number =>
  1.96 * Math.hypot(maxError / Math.sqrt(3), resolution / Math.sqrt(12));

type Service = 'main' | 'crankpin' | 'block' | 'none';

/** One thing measured: its limits for new parts and its wear limit, in the engine's unit. */
export interface Part {
  readonly id: string;
  readonly positions: number;
  readonly gauge: 'mic' | 'bore' | 'dial' | 'strip';
  readonly min: number;
  readonly max: number;
  readonly wear: number;
  /** Which service size moves it, and which way. */
  readonly service: Service;
  readonly way: -1 | 1;
}

export interface GeneratedEngine {
  readonly system: System;
  readonly parts: readonly Part[];
  readonly documents: readonly OpenedDocument[];
}

/** What an engine's documents say of its sizes: everything, no wear limits, or nominal sizes alone. */
export const KNOWN = ['new and wear', 'new', 'nominal'] as const;
export type Known = (typeof KNOWN)[number];

export const isGap = ({ service }: Part): boolean => service === 'none';

/** An engine of some size, with widths and wear limits as they are published, and its gauges. */
export function generateEngine(next: Random, known: Known): GeneratedEngine {
  const system = next() < 0.5 ? INCH : METRIC;
  const main = between(next, 1.6, 4.4);
  const pin = main * between(next, 0.8, 0.95);
  const bore = main * between(next, 1.15, 1.4);
  const isStrip = next() < 0.5;
  const sized = (
    id: string,
    positions: number,
    size: number,
    [of, twice]: readonly [PublishedWear, number],
    service: Service,
    way: -1 | 1,
  ): Part => {
    const [width, out] = [
      twice * (of.max - of.min),
      twice * (of.wear > of.max ? of.wear - of.max : of.wear - of.min),
    ];
    const wear = id.includes('bore') ? size + width + Math.abs(out) : size + out;
    return inUnit(system, {
      id,
      positions,
      gauge: id.includes('bore') ? 'bore' : 'mic',
      min: size,
      max: size + width,
      wear,
      service,
      way,
    });
  };
  const gap = (
    id: string,
    positions: number,
    gauge: Part['gauge'],
    { min, max, wear }: PublishedWear,
  ): Part => inUnit(system, { id, positions, gauge, min, max, wear, service: 'none', way: 1 });
  const parts = [
    sized('main_journal_diameter', 5, main, [pick(next, JOURNALS), 1], 'main', -1),
    sized('crankpin_diameter', 4, pin, [pick(next, JOURNALS), 1], 'crankpin', -1),
    isStrip
      ? gap('main_bearing_clearance', 5, 'strip', pick(next, BEARING_CLEARANCES))
      : sized('main_bearing_bore', 5, main + 0.003, [pick(next, SHELLS), 2], 'main', -1),
    sized('rod_bearing_bore', 4, pin + 0.003, [pick(next, SHELLS), 2], 'crankpin', -1),
    sized('cylinder_bore', 4, bore, [pick(next, BORES), 1], 'block', 1),
    sized('piston_diameter', 4, bore - 0.0045, [pick(next, PISTONS), 1], 'block', 1),
    gap('crankshaft_end_play', 1, 'dial', pick(next, END_PLAYS)),
    gap('rod_side_clearance', 4, 'dial', pick(next, SIDE_CLEARANCES)),
  ];
  return { system, parts, documents: documentsOf(system, parts, known) };
}

function inUnit(system: System, part: Part): Part {
  const of = (inches: number): number => Number((inches * system.perInch).toFixed(system.places));
  return { ...part, min: of(part.min), max: of(part.max), wear: of(part.wear) };
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
  const sizes = parts
    .filter((each) => !isGap(each))
    .map(({ id, min }) => `${id}: ${min.toFixed(places)}`)
    .join(', ');
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
      `kind: instruments\ninstruments:\n  mic: ${gauge('micrometer')}\n  bore: ${gauge('bore gauge')}\n  dial: ${gauge('dial indicator')}\n  strip: ${gauge('gauging strip')}\n`,
    ),
  ];
}

/** What was read of one part: by position the numbers as written, front and rear. */
export interface Readings {
  readonly part: Part;
  readonly shift: number;
  readonly written: string[][];
}

/** Parts worn up to twice the way to the published wear limit, some cranks reground and blocks rebored. */
export function measure(next: Random, { system, parts }: GeneratedEngine): readonly Readings[] {
  const shifts = {
    main: next() < 0.3 ? pick(next, system.services) : 0,
    crankpin: next() < 0.3 ? pick(next, system.services) : 0,
    block: next() < 0.3 ? pick(next, system.services) : 0,
    none: 0,
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
      const points = isGap(each) ? [0] : [0, 1];
      return points.map(() =>
        Math.max(each.min / 2, size + (noise(next) * expanded(system)) / 4).toFixed(system.places),
      );
    });
    return { part: each, shift, written };
  });
}

export const yamlOf = (date: string, readings: readonly Readings[], hours?: string): string =>
  `kind: session\nstage: teardown\ndate: ${date}\n${hours === undefined ? '' : `hours: ${hours}\n`}readings:\n${readings.map(blockOf).join('\n')}\n`;

function blockOf({ part: { id, gauge, positions }, written }: Readings): string {
  const texts = written.map((points) => (points.length === 1 ? points[0] : `[${points.join(', ')}]`));
  const stations = written.some(({ length }) => length > 1) ? ', stations: [front, rear]' : '';
  const where =
    positions === 1
      ? `value: ${texts[0]}`
      : `at: { ${texts.map((text, index) => `${index + 1}: ${text}`).join(', ')} }`;
  return `  - { measure: ${id}, with: ${gauge}${stations}, ${where} }`;
}
