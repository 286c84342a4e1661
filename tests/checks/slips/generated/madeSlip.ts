import { expanded, type GeneratedEngine, isGap, type Readings, type System } from './engine.ts';
import { pick, type Random } from './random.ts';

export const SLIP_KINDS = [
  'swap',
  'point',
  'frame',
  'turn',
  'unit',
  'copy',
  'figure',
  'dropped',
  'radius',
  'sign',
  'whole number',
  'downward',
  'strip scale',
  'last figure',
] as const;
export type SlipKind = (typeof SLIP_KINDS)[number];

export interface MadeSlip {
  readonly kind: SlipKind;
  readonly id: string;
  readonly position: string;
  /** What names the intended value in the message. */
  readonly named: string;
  /** What names the kind, where several values are plausible. */
  readonly words: RegExp;
}

const WORDS: Readonly<Record<SlipKind, RegExp>> = {
  swap: /two digits swapped/,
  point: /the decimal point/,
  frame: /one inch out|25 mm out/,
  turn: /one turn/,
  unit: /written as/,
  copy: /the reading of/,
  figure: /one figure misread/,
  dropped: /a figure dropped/,
  radius: /a radius for a diameter/,
  sign: /the sign/,
  'whole number': /written as a whole number/,
  downward: /the decimal point/,
  'strip scale': /the strip's/,
  'last figure': /the last figure not read/,
};

const ONLY_GAPS: ReadonlySet<SlipKind> = new Set(['sign', 'whole number', 'downward', 'strip scale']);
const ONLY_SIZES: ReadonlySet<SlipKind> = new Set([
  'frame',
  'turn',
  'unit',
  'copy',
  'radius',
  'figure',
  'dropped',
  'last figure',
]);

/** Changes one reading as a pen slips; undefined where the slip is small, or lands inside the wear band. */
export function makeSlip(
  next: Random,
  engine: GeneratedEngine,
  readings: readonly Readings[],
): MadeSlip | undefined {
  const { system } = engine;
  const kind = pick(next, SLIP_KINDS);
  const able = readings.filter((each) => isAble(kind, each));
  if (able.length === 0) return undefined;
  const of = pick(next, able);
  const position = Math.floor(next() * of.written.length);
  const points = of.written[position];
  const index = Math.floor(next() * (points?.length ?? 0));
  const right = points?.[index];
  if (points === undefined || right === undefined) return undefined;
  const wrong = slipped(next, kind, right, system, readings, of);
  if (wrong === undefined || wrong.text === right || !isLarge(kind, wrong.text, right, of, system))
    return undefined;
  points[index] = wrong.text;
  return {
    kind,
    id: of.part.id,
    position: of.part.positions === 1 ? '' : String(position + 1),
    named: wrong.named ?? `${right}?`,
    words: WORDS[kind],
  };
}

function isAble(kind: SlipKind, { part }: Readings): boolean {
  if (kind === 'strip scale') return part.gauge === 'strip';
  return !(isGap(part) ? ONLY_SIZES : ONLY_GAPS).has(kind);
}

function isLarge(
  kind: SlipKind,
  text: string,
  right: string,
  { part, shift }: Readings,
  system: System,
): boolean {
  if (kind === 'last figure') return true;
  const [amount, was] = [Number(text), Number(right)];
  const [least, most] = [Math.min(part.min, part.wear) + shift, Math.max(part.max, part.wear) + shift];
  return Math.abs(amount - was) >= 10 * expanded(system) && (amount < least || amount > most) && amount !== 0;
}

type Slipped = { readonly text: string; readonly named?: string } | undefined;

function slipped(
  next: Random,
  kind: SlipKind,
  right: string,
  system: System,
  readings: readonly Readings[],
  of: Readings,
): Slipped {
  const sign = next() < 0.5 ? 1 : -1;
  const by = (step: number) => ({ text: (Number(right) + sign * step).toFixed(system.places) });
  const places = [...right].flatMap((digit, at) => (digit === '.' ? [] : [at]));
  const at = pick(next, places);
  const isInch = system.unit === 'in';
  switch (kind) {
    case 'swap':
      return swapped(next, right, places);
    case 'point':
      return moved(right, sign);
    case 'downward':
      return moved(right, -1);
    case 'frame':
      return by(system.frame);
    case 'turn':
      return by(system.turn);
    case 'unit': {
      const other = isInch ? (Number(right) * 25.4).toFixed(3) : (Number(right) / 25.4).toFixed(4);
      return { text: other, named: `${other} ${isInch ? 'mm' : 'in'}?` };
    }
    case 'strip scale': {
      const other = isInch ? (Number(right) * 25.4).toFixed(3) : (Number(right) / 25.4).toFixed(4);
      return { text: other, named: `${other} ${isInch ? 'mm' : 'in'}?` };
    }
    case 'copy': {
      const from = pick(
        next,
        readings.filter((each) => each.part.id !== of.part.id && !isGap(each.part)),
      );
      const text = pick(next, from.written)[0];
      return text === undefined
        ? undefined
        : { text, named: `the reading of ${from.part.id.replaceAll('_', ' ')}` };
    }
    case 'figure': {
      const text = `${right.slice(0, at)}${Math.floor(next() * 10)}${right.slice(at + 1)}`;
      return /^0\d/.test(text) ? undefined : { text };
    }
    case 'dropped': {
      const text = right.slice(0, at) + right.slice(at + 1);
      return /^\d+\.\d+$/.test(text) && !/^0\d/.test(text) ? { text } : undefined;
    }
    case 'radius': {
      const text = (Number(right) / 2).toFixed(system.places);
      return { text, named: `${(2 * Number(text)).toFixed(system.places)}?` };
    }
    case 'sign':
      return { text: `-${right}` };
    case 'whole number': {
      const counted = Number(right) * (isInch ? 1000 : 100);
      const whole = counted.toFixed(0);
      return { text: whole, named: `${(Number(whole) / (isInch ? 1000 : 100)).toFixed(isInch ? 3 : 2)}?` };
    }
    case 'last figure':
      return { text: right.slice(0, -1), named: 'the last figure not read' };
  }
}

function swapped(next: Random, right: string, places: readonly number[]): Slipped {
  const at = Math.floor(next() * (places.length - 1));
  const [a, b] = [places[at] ?? 0, places[at + 1] ?? 0];
  const digits = [...right];
  [digits[a], digits[b]] = [right.charAt(b), right.charAt(a)];
  const text = digits.join('');
  return /^0\d/.test(text) ? undefined : { text };
}

function moved(right: string, sign: number): Slipped {
  const [whole = '', part = ''] = right.split('.');
  const text =
    sign > 0
      ? `${whole}${part.charAt(0)}.${part.slice(1)}`.replace(/^0+(?=\d)/, '')
      : `${whole.slice(0, -1) || '0'}.${whole.slice(-1)}${part}`;
  return { text };
}
