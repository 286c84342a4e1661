import { type Line, writtenLines } from '../../output/escape/line.ts';
import { plural } from '../../quantity/words.ts';
import type { Problem } from '../../shell/problem.ts';
import type { World } from '../../shell/world.ts';
import type { MadeResult } from '../../shell/write/makeFiles.ts';
import { problemLines } from '../usage.ts';

/** One line a file; those below a quiet folder that went well are reported in one line. The exit code. */
export function printMade(
  results: readonly MadeResult[],
  { out, err }: World,
  quietFolders: readonly string[] = [],
): number {
  const reported = new Set<string>();
  for (const { path, what, problem } of results) {
    if (problem !== undefined) continue;
    const folder = quietFolders.find((each) => path.startsWith(`${each}/`));
    const line = `${what.padEnd(8)}  ${folder === undefined ? path : `${folder}/`}`;
    if (!reported.has(line)) out.write(writtenLines([line]));
    reported.add(line);
  }
  const problems = results.flatMap(({ problem }) => problem ?? []);
  err.write(writtenLines(problemsText(problems)));
  return problems.length > 0 ? 2 : 0;
}

/** In a folder that cannot be written every file has the same problem: the first few say enough. */
function problemsText(problems: readonly Problem[]): readonly Line[] {
  const unlike = [...new Map(problems.map((each) => [`${each.message} ${each.help}`, each])).values()];
  const shown = unlike.slice(0, 3);
  const more = unlike.length - shown.length;
  return [
    ...shown.flatMap(problemLines),
    ...(more > 0 ? [`tenths: and ${plural(more, 'more file')} the like`] : []),
  ];
}
