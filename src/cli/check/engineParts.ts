import { CHECK_FORMATS } from '../../output/check/formats/index.ts';
import type { ShownEngine } from '../../output/check/shownEngine.ts';
import type { Showing } from '../../output/check/view/engineView.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { formatsOf } from '../format/formatsOf.ts';
import { styleOf } from '../format/outputs.ts';
import type { Share } from './share.ts';

export interface PartOptions extends Showing {
  readonly format: readonly FormatChoice[];
  readonly share?: Share | undefined;
}

export type EngineParts = (shown: ShownEngine) => readonly unknown[];

/** What each format of a call makes of an engine, in their order: plain data, looked into by the format alone. */
export async function shownParts(
  { format: choices, detail, share }: Pick<PartOptions, 'format' | 'detail' | 'share'>,
  world: World,
): Promise<EngineParts> {
  const chosen = await formatsOf(CHECK_FORMATS, choices);
  const parts = chosen.map(({ choice, format }) => {
    const context = { style: styleOf(choice, world, detail), isShare: share !== undefined };
    return (shown: ShownEngine): unknown => format.part(shown, context);
  });
  return (shown) => parts.map((part) => part(shown));
}
