import { callHere } from './inProcess.ts';
import { type Ran, type RunOptions, runLine } from './program.ts';
import { type Pipeline, pipelinesOf, type Stage } from './shellLine.ts';

/**
 * Carries out a line of a shell with `tenths` answered without a process of its own: the same words, environment, input,
 * output and exit code, some thirty times as fast. A line of a form that is not known is left to a shell and real processes.
 */
export async function runHere(line: string, options: RunOptions): Promise<Ran> {
  const pipelines = pipelinesOf(line);
  if (pipelines === undefined || !pipelines.flat().some(isOurs)) return runLine(line, options);
  let [stdout, stderr] = ['', ''];
  for (const pipeline of pipelines) {
    const ran = await runPipeline(pipeline, options);
    stdout += ran.stdout;
    stderr += ran.stderr;
    // All that joins pipelines is `&&`.
    if (ran.exitCode !== 0) return { stdout, stderr, exitCode: ran.exitCode };
  }
  return { stdout, stderr, exitCode: 0 };
}

const isOurs = ({ words }: Stage): boolean => words[0] === 'tenths';

async function runPipeline(pipeline: Pipeline, options: RunOptions): Promise<Ran> {
  let ran: Ran = { stdout: '', stderr: '', exitCode: 0 };
  for (const stage of pipeline) {
    if (ran.stdout.includes('\ufffd')) throw new Error(`no text comes to ${stage.text}`);
    const { stdout, stderr, exitCode } = await runStage(stage, { ...options, input: ran.stdout });
    ran = { stdout, stderr: ran.stderr + stderr, exitCode };
  }
  return ran;
}

function runStage(stage: Stage, options: RunOptions): Promise<Ran> {
  if (!isOurs(stage)) return runLine(stage.text, options);
  return callHere(stage.words.slice(1), { ...options, env: { ...options.env, ...stage.environment } });
}
