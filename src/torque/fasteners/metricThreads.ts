import { type ParsedThread, type ThreadSeries, threadWith } from './threadForm.ts';

interface MetricSize {
  readonly diameterMm: number;
  readonly coarseMm: number;
  readonly fineMm: readonly number[];
}

const size = (diameterMm: number, coarseMm: number, ...fineMm: readonly number[]): MetricSize => ({
  diameterMm,
  coarseMm,
  fineMm,
});

/** Diameter, coarse pitch, fine pitches (ISO 261; the fine ones and M3.5, M9, M11 from memory). */
export const METRIC_SIZES: readonly MetricSize[] = [
  size(3, 0.5, 0.35),
  size(3.5, 0.6, 0.35),
  size(4, 0.7, 0.5),
  size(5, 0.8, 0.5),
  size(6, 1, 0.75),
  size(7, 1, 0.75),
  size(8, 1.25, 1, 0.75),
  size(9, 1.25, 1, 0.75),
  size(10, 1.5, 1.25, 1, 0.75),
  size(11, 1.5, 1, 0.75),
  size(12, 1.75, 1.5, 1.25, 1),
  size(14, 2, 1.5, 1.25, 1),
  size(16, 2, 1.5, 1),
  size(18, 2.5, 2, 1.5, 1),
  size(20, 2.5, 2, 1.5, 1),
  size(22, 2.5, 2, 1.5, 1),
  size(24, 3, 2, 1.5, 1),
  size(27, 3, 2, 1.5, 1),
  size(30, 3.5, 3, 2, 1.5, 1),
  size(33, 3.5, 3, 2, 1.5),
  size(36, 4, 3, 2, 1.5),
  size(39, 4, 3, 2, 1.5),
];

const DECIMAL = String.raw`(?:\d+(?:[.,]\d+)?)`;
const METRIC = new RegExp(
  String.raw`^M ?(?<diameter>${DECIMAL})(?: ?[x\u00d7*] ?(?<pitch>${DECIMAL}))?(?: ?- ?\d[a-z](?:\d[a-z])?)?$`,
  'i',
);

/** `M12`, `M10x1.25`, `M10 x 1,25 - 6g`; undefined when the text does not look metric at all. */
export function parseMetricThread(text: string): ParsedThread | undefined {
  const groups = METRIC.exec(text)?.groups;
  if (groups === undefined) return undefined;
  const diameterMm = readDecimal(groups.diameter ?? '');
  const found = METRIC_SIZES.find((each) => each.diameterMm === diameterMm);
  if (found === undefined) {
    return { problem: `M${diameterMm} is not a size of ISO 261`, help: 'sizes from M3 to M39 are known' };
  }
  const written = groups.pitch;
  return withPitch(found, written === undefined ? found.coarseMm : readDecimal(written));
}

function withPitch(found: MetricSize, pitchMm: number): ParsedThread {
  const { diameterMm, coarseMm } = found;
  if (pitchMm > coarseMm || pitchMm < FINEST_PITCH_MM) {
    return {
      problem: `M${diameterMm} has no pitch of ${pitchMm} mm`,
      help: `pitches of M${diameterMm}: ${[coarseMm, ...found.fineMm].join(', ')} mm`,
    };
  }
  const designation = `M${diameterMm} x ${pitchMm}`;
  const metres = { diameterM: diameterMm / 1000, pitchM: pitchMm / 1000 };
  return {
    thread: threadWith({ system: 'metric', designation, series: seriesOf(found, pitchMm), ...metres }),
  };
}

const FINEST_PITCH_MM = 0.2;

/** Makers use pitches that ISO 261 does not list (M11 x 1.25): finer than coarse is taken as special. */
function seriesOf(found: MetricSize, pitchMm: number): ThreadSeries {
  if (pitchMm === found.coarseMm) return 'coarse';
  return found.fineMm.includes(pitchMm) ? 'fine' : 'special';
}

const readDecimal = (text: string): number => Number(text.replace(',', '.'));
