import { type DocumentContext, report } from '../amount.ts';
import { entriesOf, itemsOf, textOf, textsOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** By cylinder: `{ 1: [I, E], 2: [I, E] }`, or `[I, E]` where all cylinders have the same. */
export function readValves(
  node: Node | undefined,
  cylinders: readonly string[],
  context: DocumentContext,
): ReadonlyMap<string, readonly string[]> {
  if (node?.kind === 'map') {
    for (const { key, keySpan } of entriesOf(node)) {
      if (cylinders.includes(key)) continue;
      const help = `it has ${cylinders.join(', ')}`;
      report(context, 'value', keySpan, `the engine has no cylinder ${key}`, help);
    }
    return new Map(entriesOf(node).map(({ key, node: valves }) => [key, textsOf(valves)]));
  }
  const names = itemsOf(node).flatMap((item) => textOf(item) ?? []);
  reportFlat(node, names, cylinders, context);
  return new Map(cylinders.map((cylinder) => [cylinder, names]));
}

/** `[1I, 1E, 2I, 2E]` names valves of the whole engine, and the cylinder of each is a part of its name. */
function areOfEngine(names: readonly string[], cylinders: readonly string[]): boolean {
  const isAhead = names.some((name) => cylinders.some((each) => name !== each && name.startsWith(each)));
  // The inlets of one cylinder may be I1 and I2: only a list of the engine names all its cylinders, and one in each.
  const isHeld = names.every((name) => cylinders.some((each) => name.includes(each)));
  const isOfAll = cylinders.every((each) => names.some((name) => name.includes(each)));
  return isAhead || (isHeld && isOfAll);
}

function reportFlat(
  node: Node | undefined,
  names: readonly string[],
  cylinders: readonly string[],
  context: DocumentContext,
): void {
  const first = names.find((name) => cylinders.some((cylinder) => name.includes(cylinder)));
  if (node === undefined || first === undefined || !areOfEngine(names, cylinders)) return;
  const message = `${first} holds the name of a cylinder, and a list names the valves of every cylinder`;
  report(context, 'value', node.span, message, `write valves: ${mapOf(names, cylinders)}`);
}

/** As far as it can be told from the names: each under the longest name of a cylinder that it holds. */
function mapOf(names: readonly string[], cylinders: readonly string[]): string {
  const longestFirst = [...cylinders].sort((a, b) => b.length - a.length);
  const ofCylinder = new Map<string, string[]>();
  for (const name of names) {
    const cylinder =
      longestFirst.find((each) => name.startsWith(each)) ?? longestFirst.find((each) => name.endsWith(each));
    if (cylinder === undefined) continue;
    const rest = name.startsWith(cylinder) ? name.slice(cylinder.length) : name.slice(0, -cylinder.length);
    ofCylinder.set(cylinder, [...(ofCylinder.get(cylinder) ?? []), rest.trim() || name]);
  }
  const shown = cylinders.map((each) => `${each}: [${(ofCylinder.get(each) ?? ['…']).join(', ')}]`);
  return `{ ${shown.join(', ')} }`;
}
