import { TREND_FORMATS } from '../../output/trend/formats/index.ts';
import type { ShownTrend } from '../../output/trend/formats/shownTrend.ts';
import { trendView } from '../../output/trend/trendView.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { printFormats } from '../format/printFormats.ts';

interface FoundTrend extends Omit<ShownTrend, 'view'> {
  /** Of what it is: it heads the tables. */
  readonly name: string;
  /** What sessions changed and no part is called. */
  readonly unknown: readonly string[];
}

export function printTrend(
  { name, unknown, ...shown }: FoundTrend,
  choices: readonly FormatChoice[],
  world: World,
): Promise<void> {
  const view = trendView(name, shown.found, unknown, shown.unitFor);
  return printFormats(TREND_FORMATS, choices, { ...shown, view }, world);
}
