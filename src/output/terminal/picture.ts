/** Where a reading lies between its limits, as positions on one line: all in the same unit. */
export interface PictureOf {
  readonly least: number;
  readonly greatest: number;
  readonly min: number | undefined;
  readonly max: number | undefined;
  readonly target: { readonly min: number | undefined; readonly max: number | undefined } | undefined;
  /** Where an open side is drawn to; undefined leaves it to the reading. */
  readonly openTo: number | undefined;
}

export interface Glyphs {
  readonly least: string;
  readonly greatest: string;
  readonly allowed: string;
  readonly target: string;
  readonly reading: string;
  readonly spread: string;
  readonly beyondLeft: string;
  readonly beyondRight: string;
}

export const LINES: Glyphs = {
  least: '├',
  greatest: '┤',
  allowed: '─',
  target: '═',
  reading: '●',
  spread: '━',
  beyondLeft: '◄',
  beyondRight: '►',
};

export const PLAIN: Glyphs = {
  least: '|',
  greatest: '|',
  allowed: '-',
  target: '=',
  reading: 'o',
  spread: '+',
  beyondLeft: '<',
  beyondRight: '>',
};

/** Room beside the limits, as a share of the picture, in which a reading past them is still drawn to scale. */
const MARGIN = 0.15;

/**
 * One line of `width` characters: the deciding limits as its ends, the target between them, the reading as a
 * point or, from least to greatest, a stretch. Empty where nothing limits it.
 */
export function drawBand(of: PictureOf, width: number, glyphs: Glyphs): string {
  const scale = scaleOf(of, width);
  if (scale === undefined) return '';
  const cells = Array.from({ length: width }, () => ' ');
  const column = (value: number): number => Math.round(scale.offset + (value - scale.from) * scale.perUnit);
  const fill = (from: number, to: number, glyph: string): void => {
    for (let at = Math.max(0, from); at <= Math.min(width - 1, to); at++) cells[at] = glyph;
  };
  const [left, right] = [
    of.min === undefined ? 0 : column(of.min),
    of.max === undefined ? width - 1 : column(of.max),
  ];
  fill(left, right, glyphs.allowed);
  if (of.target !== undefined) {
    const from = of.target.min === undefined ? left : column(of.target.min);
    fill(
      Math.max(left, from),
      Math.min(right, of.target.max === undefined ? right : column(of.target.max)),
      glyphs.target,
    );
  }
  if (of.min !== undefined) cells[left] = glyphs.least;
  if (of.max !== undefined) cells[right] = glyphs.greatest;
  drawReading(
    cells,
    beyondTick(column(of.least), of.least, of, left, right),
    beyondTick(column(of.greatest), of.greatest, of, left, right),
    glyphs,
  );
  return cells.join('').trimEnd();
}

/** A reading past a limit never hides on the limit's own column, nor one inside it. */
function beyondTick(column: number, value: number, of: PictureOf, left: number, right: number): number {
  if (of.max !== undefined && value > of.max) return Math.max(column, right + 1);
  if (of.min !== undefined && value < of.min) return Math.min(column, left - 1);
  return column;
}

function drawReading(cells: string[], from: number, to: number, glyphs: Glyphs): void {
  const last = cells.length - 1;
  const clamp = (at: number): number => Math.min(last, Math.max(0, at));
  for (let at = clamp(from); at <= clamp(to); at++) cells[at] = glyphs.spread;
  cells[clamp(from)] = from < 0 ? glyphs.beyondLeft : from > last ? glyphs.beyondRight : glyphs.reading;
  cells[clamp(to)] = to > last ? glyphs.beyondRight : to < 0 ? glyphs.beyondLeft : glyphs.reading;
}

interface Scale {
  readonly from: number;
  readonly offset: number;
  readonly perUnit: number;
}

function scaleOf(of: PictureOf, width: number): Scale | undefined {
  const [low, high] = [of.min ?? openEnd(of, 'low'), of.max ?? openEnd(of, 'high')];
  if (low === undefined || high === undefined || !(high > low)) return undefined;
  const margin = Math.max(2, Math.round(width * MARGIN));
  const offset = of.min === undefined ? 0 : margin;
  const inside = width - 1 - offset - (of.max === undefined ? 0 : margin);
  return { from: low, offset, perUnit: inside / (high - low) };
}

/** Where the picture ends on the side that nothing limits. */
function openEnd(of: PictureOf, side: 'low' | 'high'): number | undefined {
  const limit = side === 'low' ? of.max : of.min;
  if (limit === undefined) return undefined;
  const reach = side === 'low' ? [of.openTo ?? limit, of.least] : [of.openTo ?? limit, of.greatest];
  return side === 'low'
    ? Math.min(...reach, limit - Math.abs(limit) * 1e-4)
    : Math.max(...reach, limit + Math.abs(limit) * 1e-4);
}
