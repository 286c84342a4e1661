import { Chalk, type ColorSupportLevel } from 'chalk';

/** Words that carry a meaning get a colour; the words alone always say it too. */
export interface Paint {
  readonly good: (text: string) => string;
  readonly notice: (text: string) => string;
  readonly bad: (text: string) => string;
  readonly faint: (text: string) => string;
  readonly strong: (text: string) => string;
}

/** The caller decides: chalk's own look at the terminal does not honour NO_COLOR. */
export function paintWith(level: ColorSupportLevel): Paint {
  // Without colours there is nothing to load for them.
  if (level === 0) return PLAIN;
  const chalk = new Chalk({ level });
  return {
    good: chalk.green,
    notice: chalk.yellow,
    bad: chalk.red.bold,
    faint: chalk.dim,
    strong: chalk.bold,
  };
}

const asItIs = (text: string): string => text;

const PLAIN: Paint = { good: asItIs, notice: asItIs, bad: asItIs, faint: asItIs, strong: asItIs };
