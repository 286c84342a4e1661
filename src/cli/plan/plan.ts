import type { Registry } from '../../characteristics/registry.ts';
import type { StateReport } from '../../checks/judge/report.ts';
import { reportEngine } from '../../checks/judge/report.ts';
import type { Engine } from '../../documents/assemble.ts';
import { json, spreadJson, writtenJson } from '../../output/escape/json.ts';
import { writtenLines } from '../../output/escape/line.ts';
import { writtenMarkdown } from '../../output/escape/markdown.ts';
import { planJson } from '../../output/plan/planJson.ts';
import { planMarkdown } from '../../output/plan/planMarkdown.ts';
import { planPage } from '../../output/plan/planPage.ts';
import { planLines } from '../../output/plan/planText.ts';
import { workPlan } from '../../plan/work/workPlan.ts';
import { textStyle } from '../../shell/process/terminal.ts';
import type { World } from '../../shell/world.ts';
import { documentsNamed } from '../check/chooseSessions.ts';
import { openEngine } from '../shop/resolveShop.ts';
import { UsageError } from '../usage.ts';

export interface PlanOptions {
  readonly format: 'text' | 'markdown' | 'json';
  readonly session?: string;
  readonly at?: string;
}

/** Prints what is to be done to an engine; 1 where something must be, 2 where a document has a problem. */
export function plan(name: string | undefined, options: PlanOptions, world: World): number {
  const opened = openEngine(name, world, options.at);
  const engine = options.session === undefined ? opened.engine : upTo(opened.engine, options.session);
  const made = workPlan(engine, opened.registry, stateOf(engine, opened.registry));
  const page = planPage(made);
  const exit = opened.hasProblems ? 2 : made.jobs.some(({ urgency }) => urgency === 'must') ? 1 : 0;
  const style = textStyle(world.out, world.environment, false);
  const written = {
    text: () => writtenLines(planLines(page, style)),
    markdown: () => writtenMarkdown(planMarkdown(page)),
    json: () => writtenJson(json`${spreadJson(planJson(made, page, exit))}\n`),
  }[options.format]();
  world.out.write(written);
  return exit;
}

function stateOf(engine: Engine, registry: Registry): StateReport {
  const { state } = reportEngine(engine, registry, {});
  if (state !== undefined) return state;
  throw new UsageError(`${engine.document.name} has no session yet`, 'tenths new session begins one');
}

/** The engine as a session left it. */
function upTo(engine: Engine, name: string): Engine {
  const [last] = documentsNamed(name, engine.sessions);
  if (last === undefined) {
    const known = engine.sessions.map((each) => each.name).join(', ');
    throw new UsageError(`${engine.document.name} has no session ${name}`, `it has ${known}`);
  }
  return { ...engine, sessions: engine.sessions.slice(0, engine.sessions.indexOf(last) + 1) };
}
