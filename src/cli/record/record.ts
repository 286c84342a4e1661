import { typingUnit } from '../../bench/record/expectation.ts';
import { type PositionOf, type RecordStart, readJournal, startLine } from '../../bench/record/journalText.ts';
import { folderOf } from '../../documents/opened.ts';
import type { Stage } from '../../documents/session/stage.ts';
import { stemOf } from '../../documents/stem.ts';
import type { Problem } from '../../shell/problem.ts';
import { promptLoop } from '../../shell/process/promptLoop.ts';
import { thisProcess } from '../../shell/process/thisProcess.ts';
import type { World } from '../../shell/world.ts';
import { nodeFiles } from '../../shell/write/fileLayer.ts';
import { makeFolder } from '../../shell/write/folders.ts';
import { type Journal, openJournal } from '../../shell/write/journal.ts';
import { readTarget } from '../../shell/write/writer.ts';
import { UsageError } from '../usage.ts';
import { type BenchEngine, benchEngine } from './benchEngine.ts';
import { Entry } from './recordEntry.ts';
import {
  lacksStage,
  type RecordTarget,
  recordStart,
  recordTarget,
  type TargetOptions,
} from './recordTarget.ts';
import { canAsk, StageQuestion } from './stageQuestion.ts';

/** Guided entry of a session's readings: each on the disk before the next is asked for. The exit code. */
export async function record(
  name: string | undefined,
  options: TargetOptions,
  world: World,
): Promise<number> {
  const input = world.input?.();
  if (input === undefined)
    throw new UsageError(
      'there is no standard input to read from',
      'type at a terminal, or send a file: tenths record < readings.txt',
    );
  const opened = benchEngine(name, world);
  let begun: Begun | undefined;
  const beginAt = (stage: Stage | undefined): Entry => {
    begun = begin(opened, stage === undefined ? options : { ...options, stage }, world, input.isTTY === true);
    return begun.entry;
  };
  try {
    const asks = lacksStage(opened, options, world) && canAsk(world);
    const ending = await promptLoop(
      asks ? new StageQuestion(world, beginAt) : beginAt(undefined),
      input,
      world.out,
    );
    if (begun === undefined) return ending === 'finished' ? 2 : ending;
    return ending === 'finished' ? await begun.entry.finish() : begun.entry.leave(ending);
  } finally {
    begun?.journal.close();
  }
}

interface Begun {
  readonly entry: Entry;
  readonly journal: Journal;
}

/** Begins an entry, or takes one up that was cut off. */
function begin(opened: BenchEngine, options: TargetOptions, world: World, isTyped: boolean): Begun {
  const target = recordTarget(opened, options, world);
  const journal = open(opened, target);
  const { layout } = opened.engine.document;
  const positionOf: PositionOf = (measure, key) => {
    const family = opened.registry.find(measure)?.family;
    return family === undefined ? layout.step(key) : layout.withKey(family, key);
  };
  try {
    const found = readJournal(journal.text, positionOf);
    const start = found?.start ?? startNow(opened, target, options, world);
    requireSomething(start, opened);
    if (found === undefined) must(journal.append(startLine(start)));
    const entry = new Entry(opened, target, start, journal, world, isTyped);
    if (found !== undefined) entry.takeUp(found);
    return { entry, journal };
  } catch (error) {
    // One that never began is nothing to go on with; one that was taken up stays.
    if (readJournal(journal.text, positionOf) === undefined) journal.remove();
    else journal.close();
    throw error;
  }
}

/** An entry that broke off before its first line was whole does not say of which stage it was to be. */
function startNow(
  opened: BenchEngine,
  target: RecordTarget,
  options: TargetOptions,
  world: World,
): RecordStart {
  if (target.existing === undefined && options.stage === undefined) {
    throw new UsageError(
      `the entry of ${target.name} was cut off before its first reading`,
      'begin it again with --stage',
    );
  }
  return recordStart(opened, target, options, world);
}

function open({ root }: BenchEngine, { path }: RecordTarget): Journal {
  const folder = folderOf(path);
  must(makeFolder(root, folder));
  const place = { files: nodeFiles, self: thisProcess, root };
  // Where the session could not be written in the end, nothing shall be measured for it.
  must(readTarget({ ...place, path }));
  return must(openJournal({ ...place, path: `${folder}/.${stemOf(path)}.part` }));
}

function must<Value>(
  outcome: { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly problem: Problem },
): Value {
  if (!outcome.ok) throw new UsageError(outcome.problem.message, outcome.problem.help);
  return outcome.value;
}

/** Before the first reading: what could not be written down must not be asked for. */
function requireSomething({ points }: RecordStart, { engine, registry }: BenchEngine): void {
  if (points.length === 0) {
    throw new UsageError(
      'nothing is left to measure: the limits name nothing that this session lacks',
      'fill in limits.yaml, or name characteristics with --measure',
    );
  }
  for (const { measure } of points) {
    const quantity = registry.find(measure)?.quantity;
    if (quantity !== undefined && typingUnit(quantity, engine) === undefined) {
      throw new UsageError(
        `no document states the unit in which a ${quantity} is typed`,
        `write \`units: { ${quantity}: … }\` in shop.yaml`,
      );
    }
  }
}
