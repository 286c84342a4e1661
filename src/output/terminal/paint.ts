import { Chalk, type ColorSupportLevel } from 'chalk';
import { type Escaped, ownPiece } from '../escape/language.ts';
import { type Line, line, sourceOfLine } from '../escape/line.ts';

/** Words that carry a meaning get a colour; the words alone always say it too. */
export interface Paint {
  readonly good: Painter;
  readonly notice: Painter;
  readonly bad: Painter;
  readonly faint: Painter;
  readonly strong: Painter;
}

export type Painter = (text: Line) => Escaped<'line'>;

/** The caller decides: chalk's own look at the terminal does not honour NO_COLOR. */
export function paintWith(level: ColorSupportLevel): Paint {
  // Without colours there is nothing to load for them.
  if (level === 0) return PLAIN;
  const chalk = new Chalk({ level });
  const painter =
    (coloured: (text: string) => string): Painter =>
    (text) =>
      ownPiece(coloured(sourceOfLine(text)));
  return {
    good: painter(chalk.green),
    notice: painter(chalk.yellow),
    bad: painter(chalk.red.bold),
    faint: painter(chalk.dim),
    strong: painter(chalk.bold),
  };
}

const asItIs: Painter = (text) => line`${text}`;

const PLAIN: Paint = { good: asItIs, notice: asItIs, bad: asItIs, faint: asItIs, strong: asItIs };
