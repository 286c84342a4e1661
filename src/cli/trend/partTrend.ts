import { unitOfRow } from '../../checks/judge/session.ts';
import { titleOf } from '../../compare/parts/conflicts.ts';
import {
  characteristicsOf,
  type MeasuredPart,
  measuredParts,
  partTrend,
} from '../../compare/parts/measuredPart.ts';
import type { Trend } from '../../compare/trend.ts';
import type { World } from '../../shell/world.ts';
import { partsMarked, partsOfShop } from '../parts/part.ts';
import { findMeasure } from '../shop/measureNamed.ts';
import { UsageError } from '../usage.ts';
import { onlyAt } from './onlyAt.ts';
import { printTrend } from './printTrend.ts';
import type { TrendOptions } from './trendOptions.ts';

/** Prints one characteristic of a part from engine to engine; the exit code. */
export async function trendOfPart(
  measure: string,
  words: readonly string[],
  options: TrendOptions & { readonly part: string },
  world: World,
): Promise<number> {
  const [position = options.position, ...more] = words;
  if (more.length > 0 || options.engine !== undefined || options.history === true)
    throw new UsageError(
      'a part is followed over all engines',
      'tenths trend CHARACTERISTIC [POSITION] --part MARK',
    );
  const { parts, hasProblems } = partsOfShop(options.at, world);
  const { part, trend } = followed(measure, measuredParts(partsMarked(options.part, parts)), options);
  const engine = part.sittings.findLast(({ isBench }) => !isBench)?.engine ?? part.sittings.at(-1)?.engine;
  if (engine === undefined) throw new UsageError(`${titleOf(part)} was never measured`);
  const found = onlyAt(trend, position, engine);
  const exit = hasProblems ? 2 : 0;
  const unitFor = (row: Parameters<typeof unitOfRow>[0]) => unitOfRow(row, engine);
  const engines = [...new Set(part.stays.map(({ of }) => of.engine.document.name))];
  const name = `${titleOf(part)}, in ${engines.join(', ')}`;
  const about = { folder: engine.folder, name: engine.document.name, part };
  await printTrend(
    { name, about, found, unknown: [], revision: undefined, exit, unitFor },
    options.format,
    world,
  );
  return exit;
}

/** Of parts that share a mark the one that has such a characteristic. */
function followed(
  measure: string,
  parts: readonly MeasuredPart[],
  { by }: TrendOptions,
): { readonly part: MeasuredPart; readonly trend: Trend } {
  const found = parts.flatMap((part) => {
    const characteristic = findMeasure(measure, { all: characteristicsOf(part) });
    const trend = characteristic && partTrend(part, characteristic, by);
    return trend === undefined ? [] : [{ part, trend }];
  });
  const [first] = found;
  if (first !== undefined && first.trend.lines.length > 0) return first;
  const known = [...new Set(parts.flatMap((part) => characteristicsOf(part).map(({ id }) => id)))];
  const title = parts.map(titleOf).join(' and ');
  throw new UsageError(
    `${measure} was not measured of ${title}`,
    known.length === 0 ? 'nothing was' : `it has ${known.join(', ')}`,
  );
}
