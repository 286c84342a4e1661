import { quoted } from '../../diagnostic/quoted.ts';
import { type Change, placeScalar } from './placement.ts';
import { alter, findNode, type Path, parseShape, type Shape, sameShape } from './shape.ts';
import type { SpliceProblem } from './splice.ts';

/** Other text for the scalar at a path. */
export interface Filling {
  readonly path: Path;
  readonly text: string;
}

export type FillResult =
  | { readonly ok: true; readonly value: string }
  | { readonly ok: false; readonly problem: SpliceProblem };

/**
 * Replaces many scalars at once, as `replaceScalar` does one: nothing else of the text changes, and the new text is
 * proven to say what the old one said, with these replaced.
 */
export function fillScalars(text: string, fillings: readonly Filling[]): FillResult {
  const before = parseShape(text);
  if (before === undefined) return refuse('document', 'the document is not plain YAML', 'correct it first');
  const changes: Change[] = [];
  let wanted: Shape = before.shape;
  for (const { path, text: filling } of fillings) {
    const found = findNode(before.node, path);
    const added = parseShape(filling);
    if (added === undefined)
      return refuse('text', `${quoted(filling)} is not plain YAML`, 'write it plainly');
    const change = found && placeScalar(text, found, filling);
    if (change === undefined)
      return refuse('place', `nothing can be put at ${path.join(' / ')}`, 'fill it in by hand');
    changes.push(change);
    wanted = alter(wanted, path, () => added.shape);
  }
  const changed = applied(text, changes);
  const after = parseShape(changed);
  if (after === undefined || !sameShape(after.shape, wanted)) {
    return refuse(
      'layout',
      'the readings cannot be filled in without touching the rest',
      'fill them in by hand',
    );
  }
  return { ok: true, value: changed };
}

/** From the end to the beginning, so that what comes first keeps its offset. */
const applied = (text: string, changes: readonly Change[]): string =>
  [...changes]
    .sort((a, b) => b.start - a.start)
    .reduce(
      (before, { start, end, inserted }) => before.slice(0, start) + inserted + before.slice(end),
      text,
    );

const refuse = (reason: SpliceProblem['reason'], message: string, help: string): FillResult => ({
  ok: false,
  problem: { reason, message, help },
});
