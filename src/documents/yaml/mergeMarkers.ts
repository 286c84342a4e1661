import type { Problem } from './problem.ts';

/** A line that git writes where it could not merge. No well-formed document begins one so. */
const MARKER = /^(?:<{7}|>{7})(?: .*)?\r?$/gm;

/** The first of git's marker lines. The parser would stumble over each of them, and over both versions between them. */
export function mergeMarkers(text: string): Problem | undefined {
  const markers = [...text.matchAll(MARKER)];
  const [first] = markers;
  if (first === undefined) return undefined;
  const places = Math.max(1, markers.filter(([line]) => line.startsWith('<')).length);
  return {
    code: 'merge',
    span: { start: first.index, end: first.index + first[0].trimEnd().length },
    message: `git could not merge ${places === 1 ? 'one place' : `${places} places`} of this file, and left both versions there`,
    help: 'keep the version that is right, and take out the lines that begin with <<<<<<<, ======= and >>>>>>>',
  };
}
