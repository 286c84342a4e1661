import { type ParsedThread, threadWith } from './threadForm.ts';

interface UnifiedSize {
  /** As the trade writes it: `10`, `9/16`, `1-1/8`. */
  readonly name: string;
  readonly diameterIn: number;
  /** Threads per inch of the coarse (UNC) and the fine (UNF) series. */
  readonly coarse: number;
  readonly fine: number;
}

const size = (name: string, diameterIn: number, coarse: number, fine: number): UnifiedSize => ({
  name,
  diameterIn,
  coarse,
  fine,
});

/** ASME B1.1 (threads per inch of sizes below no. 8, no. 12 and above 1 in from memory). */
export const UNIFIED_SIZES: readonly UnifiedSize[] = [
  size('4', 0.112, 40, 48),
  size('5', 0.125, 40, 44),
  size('6', 0.138, 32, 40),
  size('8', 0.164, 32, 36),
  size('10', 0.19, 24, 32),
  size('12', 0.216, 24, 28),
  size('1/4', 1 / 4, 20, 28),
  size('5/16', 5 / 16, 18, 24),
  size('3/8', 3 / 8, 16, 24),
  size('7/16', 7 / 16, 14, 20),
  size('1/2', 1 / 2, 13, 20),
  size('9/16', 9 / 16, 12, 18),
  size('5/8', 5 / 8, 11, 18),
  size('3/4', 3 / 4, 10, 16),
  size('7/8', 7 / 8, 9, 14),
  size('1', 1, 8, 12),
  size('1-1/8', 1.125, 7, 12),
  size('1-1/4', 1.25, 7, 12),
  size('1-3/8', 1.375, 6, 12),
  size('1-1/2', 1.5, 6, 12),
];

const SIZE = String.raw`(?<size>\d+[ -]\d+/\d+|\d+/\d+|\d*\.\d+|\d+)(?:"| ?in)?`;
const UNIFIED = new RegExp(
  String.raw`^(?:#|No\.? ?)?${SIZE} ?- ?(?<count>\d+)(?:[ -]?(?<series>UN[RJ]?[CFS]?|UNEF|NC|NF))?(?:[ -][123][AB])?$`,
  'i',
);
const BARE_SIZE = new RegExp(String.raw`^(?:#|No\.? ?)?${SIZE}$`, 'i');

/** Makers print decimal sizes with three or four places: .438 for 7/16. */
const SIZE_ROUNDING_IN = 0.0006;
const METRES_IN_AN_INCH = 0.0254;
const MOST_THREADS_PER_INCH = 80;

/** `9/16-12`, `3/4-10 UNC`, `10-32`, `No. 10-32`, `1-1/8-7`, `.5625-12`; undefined when it is no such text. */
export function parseUnifiedThread(text: string): ParsedThread | undefined {
  const groups = UNIFIED.exec(text)?.groups;
  const written = groups?.size;
  if (written === undefined) return withoutPitch(text);
  const found = findSize(written);
  if (found === undefined) return unknownSize(written);
  return withCount(found, Number(groups?.count), groups?.series?.toUpperCase());
}

function withCount(found: UnifiedSize, count: number, series: string | undefined): ParsedThread {
  const known = count === found.coarse ? 'UNC' : count === found.fine ? 'UNF' : undefined;
  if (count < found.coarse || count > MOST_THREADS_PER_INCH || contradicts(series, known)) {
    const written = series === undefined ? `${count}` : `${count} ${series}`;
    return { problem: `${found.name}-${written} is not a thread`, help: pitchesOf(found) };
  }
  return {
    thread: threadWith({
      system: 'unified',
      designation: `${found.name}-${count} ${known ?? (series === 'UNEF' ? 'UNEF' : 'UNS')}`,
      series: known === 'UNC' ? 'coarse' : known === 'UNF' ? 'fine' : 'special',
      diameterM: found.diameterIn * METRES_IN_AN_INCH,
      pitchM: METRES_IN_AN_INCH / count,
    }),
  };
}

/** A series that ends in C or F names the pitch as well; UN, UNS and UNEF leave it to the count. */
function contradicts(series: string | undefined, known: 'UNC' | 'UNF' | undefined): boolean {
  if (series === undefined || series === 'UNEF') return false;
  if (series.endsWith('C')) return known !== 'UNC';
  return series.endsWith('F') && known !== 'UNF';
}

function withoutPitch(text: string): ParsedThread | undefined {
  const written = BARE_SIZE.exec(text)?.groups?.size;
  const found = written === undefined ? undefined : findSize(written);
  if (found === undefined) return undefined;
  return { problem: `${text} does not say how many threads per inch`, help: pitchesOf(found) };
}

const pitchesOf = (found: UnifiedSize): string =>
  `write ${found.name}-${found.coarse} (UNC) or ${found.name}-${found.fine} (UNF)`;

const unknownSize = (written: string): ParsedThread => ({
  problem: `${written} is not a size of ASME B1.1`,
  help: 'sizes from no. 4 to 1-1/2 in are known',
});

/** A whole number above one is a number size: 10 is no. 10, never ten inches. */
function findSize(written: string): UnifiedSize | undefined {
  if (/^\d+$/.test(written)) return UNIFIED_SIZES.find((each) => each.name === written);
  const inches = readInches(written);
  return UNIFIED_SIZES.find((each) => Math.abs(each.diameterIn - inches) <= SIZE_ROUNDING_IN);
}

/** `1-1/8`, `1 1/8`, `9/16` or `.5625`. */
function readInches(written: string): number {
  const parts = written.split(/[ -]/).map((part) => {
    const [top = '', bottom] = part.split('/');
    return Number(top) / (bottom === undefined ? 1 : Number(bottom));
  });
  return parts.reduce((total, part) => total + part, 0);
}
