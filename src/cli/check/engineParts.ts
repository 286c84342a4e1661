import type { CheckFormat } from '../../output/check/formats/format.ts';
import { CHECK_FORMATS } from '../../output/check/formats/index.ts';
import type { ShownEngine } from '../../output/check/shownEngine.ts';
import type { Showing } from '../../output/check/view/engineView.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
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
  const formats = await formatsOf(choices);
  const contexts = choices.map((each) => ({
    style: styleOf(each, world, detail),
    isShare: share !== undefined,
  }));
  return (shown) =>
    formats.flatMap(({ part }, index) => {
      const context = contexts[index];
      return context === undefined ? [] : [part(shown, context)];
    });
}

export const formatsOf = (choices: readonly FormatChoice[]): Promise<readonly CheckFormat[]> =>
  Promise.all(
    choices.map(({ format }) => {
      const load = CHECK_FORMATS[format];
      if (load === undefined) throw new Error(`no format ${format}`);
      return load();
    }),
  );
