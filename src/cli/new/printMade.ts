import { plural } from '../../output/check/checkText.ts';
import { visible } from '../../output/terminal/visible.ts';
import type { Problem } from '../../shell/problem.ts';
import type { World } from '../../shell/world.ts';
import type { MadeResult } from '../../shell/write/makeFiles.ts';

/** One line a file; those below a quiet folder that went well are told in one line. The exit code. */
export function printMade(
  results: readonly MadeResult[],
  { out, err }: World,
  quietFolders: readonly string[] = [],
): number {
  const told = new Set<string>();
  for (const { path, what, problem } of results) {
    if (problem !== undefined) continue;
    const folder = quietFolders.find((each) => path.startsWith(`${each}/`));
    const line = `${what.padEnd(8)}  ${visible(folder === undefined ? path : `${folder}/`)}\n`;
    if (!told.has(line)) out.write(line);
    told.add(line);
  }
  const problems = results.flatMap(({ problem }) => problem ?? []);
  err.write(problemsText(problems));
  return problems.length > 0 ? 2 : 0;
}

/** In a folder that cannot be written every file has the same problem: the first few say enough. */
function problemsText(problems: readonly Problem[]): string {
  const texts = [
    ...new Set(problems.map(({ message, help }) => `${visible(message)}\n        ${visible(help)}`)),
  ];
  const shown = texts.slice(0, 3).map((text) => `tenths: ${text}\n`);
  const more = texts.length - shown.length;
  return `${shown.join('')}${more > 0 ? `tenths: and ${plural(more, 'more file')} the like\n` : ''}`;
}
