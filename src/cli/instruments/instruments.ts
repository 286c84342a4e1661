import { registerOf } from '../../compare/instruments/register.ts';
import { registerPage } from '../../output/instruments/registerPage.ts';
import { PAGES_FORMATS } from '../../output/pages/formats/index.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { printFormats } from '../format/printFormats.ts';
import { withBench } from '../parts/shelf.ts';
import { openShop } from '../shop/everyEngine.ts';
import { UsageError } from '../usage.ts';
import { dayOption } from './dayOption.ts';

export interface InstrumentsOptions {
  readonly on?: string | undefined;
  readonly at?: string | undefined;
  readonly format: readonly FormatChoice[];
}

/** Prints the registers of the shop around the working directory; the exit code. */
export async function instruments(options: InstrumentsOptions, world: World): Promise<number> {
  const { all: engines, hasProblems } = withBench(openShop(options.at, world), world);
  const register = registerOf(engines, dayOption('--on', options.on));
  if (register.entries.length === 0) {
    const help = hasProblems
      ? 'correct the documents above'
      : 'write the first into instruments.yaml: its comments show how, and tenths init makes that file';
    throw new UsageError('no instrument is registered here', help);
  }
  const exit = hasProblems ? 2 : 0;
  const pages = [registerPage(register, options.on !== undefined)];
  const shown = { name: 'instruments', pagesFor: () => pages, exit } as const;
  await printFormats(PAGES_FORMATS, options.format, shown, world);
  return exit;
}
