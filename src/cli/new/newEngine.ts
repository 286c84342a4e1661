import { engineFiles } from '../../bench/scaffold/engine.ts';
import { type RodsOnPins, rodsProblem } from '../../bench/scaffold/rods.ts';
import { usualCharacteristics } from '../../characteristics/registry.ts';
import { shellWord } from '../../diagnostic/shellWord.ts';
import { shopPath } from '../../shell/discover/paths.ts';
import { hasShopDocument, shopRoot, standingAt } from '../../shell/discover/root.ts';
import type { World } from '../../shell/world.ts';
import { callName } from '../record/benchEngine.ts';
import { UsageError } from '../usage.ts';
import { printAndAdvise, shownFrom, slug } from './new.ts';
import { askRods } from './rodsQuestion.ts';
import { shopLength } from './shopLength.ts';

export interface NewEngineOptions {
  readonly cylinders?: number;
  readonly mains?: number;
  readonly crankpins?: number;
  readonly rods?: RodsOnPins;
  readonly folder?: string;
}

/** A folder for an engine, with its document and an empty one for its limits. */
export async function newEngine(name: string, options: NewEngineOptions, world: World): Promise<number> {
  const root = shopRoot(world.workingDirectory);
  const folder = options.folder === undefined ? `engines/${slug(name)}` : inShop(root, options.folder, world);
  const existing = ['engine.yaml', 'engine.yml'].find(
    (file) => standingAt(`${folder}/${file}`, root) !== undefined,
  );
  if (existing !== undefined) {
    throw new UsageError(`${folder}/${existing} is there already`, 'choose another name or another --folder');
  }
  const cylinders = options.cylinders ?? options.rods?.flat().length ?? USUAL_CYLINDERS;
  const crankpins = await crankpinsOf(options, cylinders, world);
  if (typeof crankpins === 'object' && 'left' in crankpins) return crankpins.left;
  const files = engineFiles({
    name,
    folder,
    cylinders,
    mains: options.mains ?? cylinders + 1,
    crankpins,
    characteristics: usualCharacteristics,
    length: shopLength(root, world),
  });
  const steps = [
    `edit ${shownFrom(root, folder, world)}/limits.yaml       the limits, and where they come from`,
    `tenths new session ${callName({ folder })} --stage teardown`,
  ];
  if (hasShopDocument(root)) return printAndAdvise(root, files, world, steps);
  const shop = shellWord(shownFrom(root, '.', world));
  const said = [
    `No shop.yaml is here or above: the engine was made below ${root}, and plain numbers need a unit each.`,
  ];
  const makeShop = `tenths init ${shop}       makes shop.yaml, which says the units, and instruments.yaml`;
  return printAndAdvise(root, files, world, [makeShop, ...steps], said);
}

const USUAL_CYLINDERS = 4;

/** A pin a rod, the rods on each pin as they were given or asked for, or the exit code of a question that was left. */
async function crankpinsOf(
  { rods, ...options }: NewEngineOptions,
  cylinders: number,
  world: World,
): Promise<number | RodsOnPins | { readonly left: number }> {
  const count = options.crankpins ?? rods?.length ?? cylinders;
  if (rods !== undefined) {
    const problem = rodsProblem(rods, options.crankpins, options.cylinders);
    if (problem !== undefined) throw new UsageError(problem.message, problem.help);
    return rods;
  }
  if (count === cylinders) return count;
  if (count > cylinders) {
    throw new UsageError(`${count} crankpins for ${cylinders} cylinders`, 'every crankpin carries a rod');
  }
  const asked = await askRods(cylinders, count, world);
  return typeof asked === 'number' ? { left: asked } : asked;
}

function inShop(root: string, folder: string, { workingDirectory }: World): string {
  const found = shopPath(root, folder, workingDirectory);
  if (found === '.')
    throw new UsageError('the folder of the shop cannot be an engine', 'name a folder below it');
  return found;
}
