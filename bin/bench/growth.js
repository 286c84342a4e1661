import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chance } from './chance.js';
import { PEAK } from './manyEngines.js';
import { engineText, INSTRUMENTS, LIMITS, SHOP, sessionText, writeShop } from './shop.js';
import { CHECKED, TENTHS } from './startUp.js';

const INLINE = { cylinders: 4, mains: 5 };

/** What may grow, in which steps, and how a shop of that size is written. The smallest step is what does not grow. */
export const GROWING = [
  { what: 'sessions in an engine', sizes: [1, 250, 500, 1000, 2000], write: manySessions },
  { what: 'readings in a session', sizes: [10, 1250, 2500, 5000, 10_000], write: manyReadings },
  { what: 'engines', sizes: [1, 125, 250, 500, 1000], write: writeShop },
  { what: 'instruments', sizes: [10, 125, 250, 500, 1000], write: manyInstruments },
  { what: 'problems in a document', sizes: [10, 1000, 2000, 4000, 8000], write: manyProblems },
];

/**
 * Processor time and peak memory of a check of each size, and the power of the size with which what is more than at the
 * smallest grows.
 */
export function growthOf({ what, sizes: all, write }, { scratch, scale, told }) {
  const sizes = all.map((size, at) => (at === 0 ? size : Math.ceil(size * scale)));
  const checked = (size) => {
    const folder = join(scratch, `${what} ${size}`);
    write(folder, size);
    return told(['--import', PEAK, TENTHS, 'check', folder, '--no-cache'], {
      pipe: 3,
      exit: [...CHECKED.exit, 2],
    });
  };
  // The first call compiles for the others.
  checked(sizes[0]);
  const runs = sizes.map(checked);
  const [cpu, kib] = ['cpu', 'kib'].map((unit) => runs.map((run) => run[unit]));
  const powers = [cpu, kib].map((values) => powerOf(sizes, values));
  return { what, sizes, cpu, kib, powers, isFine: powers.every((power) => power <= mostFor(sizes)) };
}

/**
 * The slope of a line through the logarithms; what the smallest size takes is taken off the others, and what comes to less
 * than a fifth of that tells nothing. Zero where fewer than two sizes take more.
 */
export function powerOf(sizes, values) {
  const [smallest] = values;
  const points = sizes
    .map((size, at) => ({ x: Math.log(size), more: values[at] - smallest }))
    .filter(({ more }) => more > smallest / 5)
    .map(({ x, more }) => ({ x, y: Math.log(more) }));
  if (points.length < 2) return 0;
  const mean = (key) => points.reduce((sum, point) => sum + point[key], 0) / points.length;
  const [x, y] = [mean('x'), mean('y')];
  const sum = (term) => points.reduce((total, point) => total + term(point), 0);
  return sum((point) => (point.x - x) * (point.y - y)) / sum((point) => (point.x - x) ** 2);
}

/** That of n log n over the same sizes, and a tenth for what a busy machine adds. */
export const mostFor = (sizes) =>
  powerOf(
    sizes,
    sizes.map((size) => size * Math.log2(Math.max(size, 2))),
  ) + 0.1;

export const GROWTH_HEAD = ['', 'from', 'to', 'processors', 'power', 'peak memory', 'power', ''];

export function growthRow({ what, sizes, cpu, kib, powers: [time, memory], isFine }) {
  const [ends, first] = [(list) => list.at(-1), (list) => list[1]];
  return [
    what,
    String(first(sizes)),
    String(ends(sizes)),
    `${(first(cpu) / 1000).toFixed(1)} to ${(ends(cpu) / 1000).toFixed(1)} s`,
    time.toFixed(2),
    `${(first(kib) / 1024).toFixed(0)} to ${(ends(kib) / 1024).toFixed(0)} MiB`,
    memory.toFixed(2),
    isFine ? 'no worse than n log n' : 'WORSE than n log n',
  ];
}

function oneEngine(folder, { instruments = INSTRUMENTS, sessions }) {
  const engine = join(folder, 'engines/pump');
  mkdirSync(join(engine, 'sessions'), { recursive: true });
  writeFileSync(join(folder, 'shop.yaml'), SHOP);
  writeFileSync(join(folder, 'instruments.yaml'), instruments);
  writeFileSync(join(engine, 'engine.yaml'), engineText(1, INLINE));
  writeFileSync(join(engine, 'limits.yaml'), LIMITS);
  for (const [name, text] of sessions) writeFileSync(join(engine, 'sessions', `${name}.yaml`), text);
}

const session = (number, date) =>
  sessionText(`service ${number}`, date, INLINE, { worn: 1, grown: 1, spread: chance(number).spread });

function manySessions(folder, count) {
  const sessions = Array.from({ length: count }, (_, at) => {
    const date = new Date(Date.UTC(2020, 0, 1 + at)).toISOString().slice(0, 10);
    return [`${date}-service`, session(at + 1, date)];
  });
  oneEngine(folder, { sessions });
}

/** All bores again and again: a document may have 256 KiB, so a block holds what it can. */
function manyReadings(folder, count) {
  const { spread } = chance(1);
  const list = (length, textOf) => `[${Array.from({ length }, textOf).join(', ')}]`;
  const bore = () => list(3, () => list(2, () => (4.1252 + spread() * 0.0001).toFixed(4)));
  const bores = Array.from({ length: INLINE.cylinders }, (_, at) => at + 1);
  const blocks = Array.from(
    { length: Math.ceil(count / (6 * INLINE.cylinders)) },
    () => `  - measure: cylinder_bore
    with: bore-2-6
    stations: [top, middle, bottom]
    directions: [thrust, axial]
    at: { ${bores.map((number) => `${number}: ${bore()}`).join(', ')} }
`,
  );
  oneEngine(folder, { sessions: [['1-service', `${SESSION_HEAD}${blocks.join('')}`]] });
}

function manyInstruments(folder, count) {
  const more = Array.from(
    { length: count },
    (_, at) =>
      `  mic-more-${at}: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in, due: 2027-01-10 }\n`,
  );
  oneEngine(folder, {
    instruments: INSTRUMENTS + more.join(''),
    sessions: [['1-service', session(1, '2026-03-01')]],
  });
}

/** A reading a line, and none of anything that is known. */
function manyProblems(folder, count) {
  const blocks = Array.from({ length: count }, (_, at) => `  - { measure: z${at % 100}, value: 1 }\n`);
  oneEngine(folder, { sessions: [['1-service', `${SESSION_HEAD}${blocks.join('')}`]] });
}

const SESSION_HEAD = `kind: session
stage: service
date: 2026-03-01
by: RK
temperature: 64 degF
readings:
`;
