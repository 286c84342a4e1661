import type { Formats, Writer } from '../../output/formats.ts';
import { sha256Base64 } from '../../shell/process/digest.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from './formatChoice.ts';
import { formatsOf } from './formatsOf.ts';
import { Outputs, styleOf } from './outputs.ts';

/** A result in every format that was asked for. All are made before the first is written. */
export async function printFormats<Result>(
  formats: Formats<Writer<Result>>,
  choices: readonly FormatChoice[],
  result: Result,
  world: World,
  detail = false,
): Promise<void> {
  const chosen = await formatsOf(formats, choices);
  const made = chosen.map(({ choice, format }) => ({
    choice,
    text: format(result, { style: styleOf(choice, world, detail), digest: sha256Base64 }),
  }));
  const outputs = new Outputs(world);
  for (const { choice, text } of made) outputs.writeTo(choice)(text);
  outputs.save();
}
