import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parseSync } from 'vite';

/** The files that a file loads, itself among them: what it imports, what that imports, now or later. */
export function loadedBy(path, known = new Set()) {
  if (known.has(path) || !/\.[jt]s$/.test(path) || !existsSync(path)) return known;
  known.add(path);
  for (const each of importsOf(path)) loadedBy(each, known);
  return known;
}

const kept = new Map();

function importsOf(path) {
  if (!kept.has(path)) kept.set(path, relativeImports(path));
  return kept.get(path);
}

function relativeImports(path) {
  const text = readFileSync(path, 'utf8');
  const { staticImports, staticExports, dynamicImports } = parseSync(path, text).module;
  const isLoaded = ({ entries }) => entries.length === 0 || entries.some(({ isType }) => !isType);
  return [
    ...staticImports.filter(isLoaded).map(({ moduleRequest }) => moduleRequest.value),
    ...staticExports.flatMap(({ entries }) => entries.map(({ moduleRequest }) => moduleRequest?.value)),
    ...dynamicImports.map(({ moduleRequest: { start, end } }) => text.slice(start + 1, end - 1)),
  ]
    .filter((each) => each?.startsWith('.'))
    .map((each) => join(dirname(path), each));
}
