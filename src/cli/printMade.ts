import { visible } from '../output/visible.ts';
import type { MadeResult } from '../shell/makeFiles.ts';
import type { World } from '../shell/world.ts';

/** One line a file; those below a quiet folder that went well are told in one line. The exit code. */
export function printMade(
  results: readonly MadeResult[],
  { out, err }: World,
  quietFolders: readonly string[] = [],
): number {
  const told = new Set<string>();
  for (const { path, what, problem } of results) {
    if (problem !== undefined) {
      err.write(`tenths: ${visible(problem.message)}\n        ${visible(problem.help)}\n`);
      continue;
    }
    const folder = quietFolders.find((each) => path.startsWith(`${each}/`));
    const line = `${what.padEnd(8)}  ${visible(folder === undefined ? path : `${folder}/`)}\n`;
    if (!told.has(line)) out.write(line);
    told.add(line);
  }
  return results.some((each) => each.what === 'failed') ? 2 : 0;
}
