import { planSession } from '../../bench/plan.ts';
import { engineFiles } from '../../bench/scaffold/engine.ts';
import { type MadeFile, madeFile, schemaPath } from '../../bench/scaffold/madeFile.ts';
import { type RodsOnPins, rodsProblem } from '../../bench/scaffold/rods.ts';
import { scaffoldSession } from '../../bench/scaffold/session.ts';
import { torqueFile } from '../../bench/scaffold/torque.ts';
import { characteristics } from '../../characteristics/registry.ts';
import { isCalendarDate } from '../../documents/date.ts';
import { STAGES, type Stage } from '../../documents/session/stage.ts';
import { sheetText } from '../../output/bench/sheetText.ts';
import { shellWord } from '../../output/terminal/shellWord.ts';
import { pathOnDisk, shopPath } from '../../shell/discover/paths.ts';
import { shopRoot, standingAt } from '../../shell/discover/root.ts';
import { shownPath } from '../../shell/discover/store.ts';
import type { World } from '../../shell/world.ts';
import { makeFiles } from '../../shell/write/makeFiles.ts';
import { type BenchEngine, benchEngine } from '../record/benchEngine.ts';
import { askStage } from '../record/stageQuestion.ts';
import { UsageError } from '../usage.ts';
import { printMade } from './printMade.ts';
import { askRods } from './rodsQuestion.ts';

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
    characteristics,
  });
  return printAndAdvise(root, files, world, [
    `edit ${shownFrom(root, folder, world)}/limits.yaml       the limits, and where they come from`,
    `tenths new session ${shellWord(folder.split('/').at(-1) ?? folder)} --stage teardown`,
  ]);
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

export interface SessionOptions {
  /** Asked for where it is not given and somebody can answer. */
  readonly stage?: Stage;
  readonly date?: string;
  readonly by?: string;
  readonly measure?: readonly string[];
  readonly sheet?: boolean;
}

/** An empty session of an engine, or with `sheet` the same as a form to print and fill in by hand. */
export async function newSession(
  name: string | undefined,
  options: SessionOptions,
  world: World,
): Promise<number> {
  const opened = benchEngine(name, world);
  const { engine, registry, folder, root } = opened;
  const only = knownMeasures(options, opened);
  const date = checkedDate(options.date, world);
  const stage = options.stage ?? (await askStage(world));
  if (typeof stage === 'number') return stage;
  const plan = planSession(engine, registry, { stage, only });
  if (options.sheet === true) {
    world.out.write(sheetText(plan, { engine, registry, stage, date }));
    return 0;
  }
  const path = `${folder}/sessions/${date}-${stage}.yaml`;
  const head = {
    stage,
    date,
    by: options.by,
    schema: schemaPath(`${folder}/sessions`, 'session'),
  };
  const shown = shownFrom(root, path, world);
  return printAndAdvise(root, [madeFile(path, scaffoldSession(head, plan, engine, registry))], world, [
    `edit ${shown}, or: tenths record ${shellWord(folder.split('/').at(-1) ?? folder)}`,
    `tenths check ${shellWord(shown)}`,
  ]);
}

export interface NewTorqueOptions {
  readonly engine?: string;
  readonly passes: readonly string[];
  readonly fasteners?: readonly string[];
  readonly source?: string;
}

export function newTorque(joint: string, options: NewTorqueOptions, world: World): number {
  const { root, folder, engine } = benchEngine(options.engine, world);
  const path = `${folder}/torque/${slug(joint)}.yaml`;
  const file = torqueFile(
    {
      joint: joint.replaceAll('-', ' '),
      path,
      folder: `${folder}/torque`,
      passes: options.passes.map(torqueOf),
      fasteners: options.fasteners,
      source: options.source,
    },
    engine,
  );
  return printAndAdvise(root, [file], world, [
    `edit ${shownFrom(root, path, world)}       names, the maker's order, lubricant, source`,
    `tenths check ${shellWord(shownFrom(root, path, world))}`,
  ]);
}

function torqueOf(text: string): string {
  if (/^(0|[1-9]\d*)(\.\d+)?( ?[A-Za-z][A-Za-z -]*)?$/.test(text)) return text;
  throw new UsageError(`${text} is not a torque`, 'write the passes as --passes 40,80,110');
}

function printAndAdvise(
  root: string,
  files: readonly MadeFile[],
  world: World,
  next: readonly string[],
): number {
  const results = makeFiles(root, files);
  const code = printMade(results, world);
  if (code !== 0) return code;
  if (results.every((each) => each.what === 'kept')) {
    throw new UsageError('nothing was made: it is there already', 'nothing is ever overwritten');
  }
  world.out.write(`\nNext:\n${next.map((step) => `  ${step}\n`).join('')}`);
  return 0;
}

/** Ids as the registry knows them, or a refusal with the nearest name. */
export function knownMeasures(
  { measure }: { readonly measure?: readonly string[] },
  { registry }: BenchEngine,
): readonly string[] | undefined {
  for (const id of measure ?? []) {
    const found = registry.find(id);
    if (found === undefined) {
      throw new UsageError(`nothing is known as ${id}`, `one of ${registry.ids().join(', ')}`);
    }
    if (found.onlyWithLimits === true) {
      const [input] = found.derivations.flatMap((each) => each.inputs);
      throw new UsageError(
        `${id} is worked out and not read`,
        `measure ${input ?? 'what it is worked out from'}`,
      );
    }
  }
  return measure;
}

export function checkedDate(date: string | undefined, { today }: World): string {
  const chosen = date ?? today;
  if (!isCalendarDate(chosen)) throw new UsageError(`${chosen} is not a date`, 'write it as 2026-02-03');
  return chosen;
}

export const isStage = (text: string): text is Stage => STAGES.some((stage) => stage === text);

/** `Reservoir pump no. 2` as a folder's name: `reservoir-pump-no-2`. */
export function slug(name: string): string {
  const found = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  if (found === '') throw new UsageError(`${name} makes no name of a folder`, 'use letters or digits');
  return found;
}

const shownFrom = (root: string, path: string, { workingDirectory }: World): string =>
  shownPath(pathOnDisk(root, path), workingDirectory);

function inShop(root: string, folder: string, { workingDirectory }: World): string {
  const found = shopPath(root, folder, workingDirectory);
  if (found === '.') throw new UsageError('the shop itself is no engine', 'name a folder below it');
  return found;
}
