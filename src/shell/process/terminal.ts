import { paintWith } from '../../output/terminal/paint.ts';
import { LINES, PLAIN } from '../../output/terminal/picture.ts';
import type { TextStyle } from '../../output/terminal/textStyle.ts';
import type { Environment } from '../world.ts';

/** What the shell must know of a stream to lay text out for it. */
export interface Stream {
  readonly isTTY?: boolean;
  readonly columns?: number;
}

/** A window of no or absurd width still gets lines that can be read. */
const NARROWEST = 40;
const WIDEST = 240;
const USUAL = 80;

/** How text is laid out on a stream: colours only on a terminal, NO_COLOR and FORCE_COLOR respected. */
export const textStyle = (stream: Stream, environment: Environment, detail: boolean): TextStyle => ({
  paint: paintWith(hasColours(stream, environment) ? 1 : 0),
  width:
    stream.isTTY === true
      ? Math.max(NARROWEST, Math.min(stream.columns || USUAL, WIDEST))
      : Number.POSITIVE_INFINITY,
  glyphs: speaksUnicode(environment) ? LINES : PLAIN,
  detail,
});

export function hasColours(stream: Stream, { NO_COLOR, FORCE_COLOR, TERM }: Environment): boolean {
  if (NO_COLOR !== undefined && NO_COLOR !== '') return false;
  if (FORCE_COLOR !== undefined && FORCE_COLOR !== '' && FORCE_COLOR !== '0') return true;
  return stream.isTTY === true && TERM !== 'dumb';
}

/** Line drawing is safe unless the locale says another character set. */
function speaksUnicode({ LC_ALL, LC_CTYPE, LANG }: Environment): boolean {
  const locale = LC_ALL || LC_CTYPE || LANG || '';
  return locale === '' || /utf-?8/i.test(locale);
}
