import { type EngineReport, reportEngine } from '../checks/report.ts';
import { diffStates, isSame } from '../compare/diff.ts';
import { stateOfSession } from '../compare/state.ts';
import { diffText } from '../output/diffText.ts';
import { folderAt, standingAt } from '../shell/root.ts';
import { textStyle } from '../shell/terminal.ts';
import type { World } from '../shell/world.ts';
import { sessionNamed } from './chooseSessions.ts';
import { openEngine } from './shopAt.ts';
import { UsageError } from './usage.ts';

export interface DiffOptions {
  readonly engine?: string | undefined;
  readonly all: boolean;
  readonly exitCode: boolean;
}

/** Compares two sessions of an engine; the exit code, 1 for a difference only where it was asked for. */
export function diff(words: readonly string[], options: DiffOptions, world: World): number {
  const { names, engine } = namesAndEngine(words, options.engine, world);
  const opened = openEngine(engine, world);
  const report = reportEngine(opened.engine, opened.registry, {});
  const [a, b] = names.map((name) => oneSession(name, report));
  if (a === undefined || b === undefined)
    throw new UsageError('two sessions are compared', 'tenths diff teardown rebuild');
  const result = diffStates(stateOfSession(report, a), stateOfSession(report, b));
  const sides = { a: `${a.session.stage} ${a.session.date}`, b: `${b.session.stage} ${b.session.date}` };
  const style = textStyle(world.out, world.environment, false);
  const { unitFor } = stateOfSession(report, b);
  world.out.write(diffText(report.engine.document.name, sides, result, unitFor, options, style));
  if (opened.hasProblems) return 2;
  return options.exitCode && !isSame(result) ? 1 : 0;
}

/** A last word that is an engine's folder says which engine is meant. */
function namesAndEngine(
  words: readonly string[],
  engine: string | undefined,
  { workingDirectory }: World,
): { readonly names: readonly string[]; readonly engine: string | undefined } {
  const last = words.at(-1);
  const path = last === undefined ? undefined : standingAt(last, workingDirectory);
  const isFolder = path !== undefined && folderAt(path) === path;
  return isFolder && engine === undefined
    ? { names: words.slice(0, -1), engine: last }
    : { names: words, engine };
}

function oneSession(name: string, report: EngineReport): EngineReport['sessions'][number] {
  const [found] = sessionNamed(name, report.sessions);
  if (found !== undefined) return found;
  const names = report.sessions.map(({ session }) => session.name).join(', ');
  throw new UsageError(`no session is known as ${name}`, `the engine has ${names}`);
}
