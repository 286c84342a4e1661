import { planSession } from '../../bench/plan.ts';
import { type MadeFile, madeFile, schemaPath } from '../../bench/scaffold/madeFile.ts';
import { scaffoldSession } from '../../bench/scaffold/session.ts';
import { torqueFile } from '../../bench/scaffold/torque.ts';
import { shellWord } from '../../diagnostic/shellWord.ts';
import { isCalendarDate } from '../../documents/date.ts';
import { unknownMeasure } from '../../documents/measure.ts';
import { STAGES, type Stage } from '../../documents/session/stage.ts';
import { blankSheet } from '../../output/bench/blankSheet.ts';
import { sheetLines } from '../../output/bench/sheetText.ts';
import { type Line, writtenLines } from '../../output/escape/line.ts';
import { pathOnDisk } from '../../shell/discover/paths.ts';
import { shownPath } from '../../shell/discover/store.ts';
import type { World } from '../../shell/world.ts';
import { makeFiles } from '../../shell/write/makeFiles.ts';
import { type BenchEngine, benchEngine, callName, inEngine } from '../record/benchEngine.ts';
import { askStage } from '../record/stageQuestion.ts';
import { findMeasure } from '../shop/measureNamed.ts';
import { UsageError } from '../usage.ts';
import { printMade } from './printMade.ts';

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
  const { engine, registry, root } = opened;
  const only = knownMeasures(options, opened);
  const date = checkedDate(options.date, world);
  const stage = options.stage ?? (await askStage(world));
  if (typeof stage === 'number') return stage;
  const plan = planSession(engine, registry, { stage, only });
  if (options.sheet === true) {
    world.out.write(writtenLines(sheetLines(blankSheet(plan, { engine, registry, stage }), date)));
    return 0;
  }
  const path = inEngine(opened, `sessions/${date}-${stage}.yaml`);
  const head = {
    stage,
    date,
    by: options.by,
    schema: schemaPath(inEngine(opened, 'sessions'), 'session'),
  };
  const shown = shownFrom(root, path, world);
  return printAndAdvise(root, [madeFile(path, scaffoldSession(head, plan, engine, registry))], world, [
    `edit ${shown}, or: tenths record ${callName(opened)}`,
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
  const path = inEngine({ folder }, `torque/${slug(joint)}.yaml`);
  const file = torqueFile(
    {
      joint: joint.replaceAll('-', ' '),
      path,
      folder: inEngine({ folder }, 'torque'),
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

export function printAndAdvise(
  root: string,
  files: readonly MadeFile[],
  world: World,
  next: readonly string[],
  said: readonly Line[] = [],
): number {
  const results = makeFiles(root, files);
  const code = printMade(results, world);
  if (code !== 0) return code;
  if (results.every((each) => each.what === 'kept')) {
    throw new UsageError('nothing was made: it is there already', 'nothing is ever overwritten');
  }
  world.out.write(writtenLines(['', ...said, 'Next:', ...next.map((step) => `  ${step}`)]));
  return 0;
}

/** Ids of what is called by an id or a label, or a refusal with the nearest name. */
export function knownMeasures(
  { measure }: { readonly measure?: readonly string[] },
  { registry }: BenchEngine,
): readonly string[] | undefined {
  return measure?.map((word) => {
    const found = findMeasure(word, registry);
    if (found === undefined) {
      const { message, help } = unknownMeasure(word, registry);
      throw new UsageError(message, help ?? `one of ${registry.ids().join(', ')}`);
    }
    if (found.onlyWithLimits === true) {
      const [input] = found.derivations.flatMap((each) => each.inputs);
      throw new UsageError(
        `${found.id} is worked out and not read`,
        `measure ${input ?? 'what it is worked out from'}`,
      );
    }
    return found.id;
  });
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

export const shownFrom = (root: string, path: string, { workingDirectory }: World): string =>
  shownPath(pathOnDisk(root, path), workingDirectory);
