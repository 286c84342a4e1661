import type { Written } from '../../output/escape/language.ts';
import type { TextStyle } from '../../output/terminal/textStyle.ts';
import { absolutePath } from '../../shell/discover/paths.ts';
import { textStyle } from '../../shell/process/terminal.ts';
import type { World } from '../../shell/world.ts';
import { replaceFile } from '../../shell/write/replaceFile.ts';
import { UsageError } from '../usage.ts';
import type { FormatChoice } from './formatChoice.ts';

/** How text is laid out for a choice: for the terminal where it goes there, else as into a pipe. */
export const styleOf = (
  { file }: FormatChoice,
  { out, environment }: Pick<World, 'out' | 'environment'>,
  detail: boolean,
): TextStyle => textStyle(file === undefined ? out : {}, environment, detail);

/** Where the formats of a call go: what goes into files is kept until `save`. */
export class Outputs {
  readonly #world: World;
  readonly #files = new Map<FormatChoice, Written[]>();

  constructor(world: World) {
    this.#world = world;
  }

  writeTo(choice: FormatChoice): (text: Written) => void {
    if (choice.file === undefined) return (text) => this.#world.out.write(text);
    const texts: Written[] = [];
    this.#files.set(choice, texts);
    return (text) => texts.push(text);
  }

  /** Each file whole or not at all; one that cannot be written keeps no other from it. */
  save(): void {
    const failed = [...this.#files].flatMap(([{ format, file = '' }, texts]) => {
      const saved = replaceFile(absolutePath(file, this.#world.workingDirectory), texts.join(''));
      return saved.ok ? [] : [`${format}:${file}: ${saved.problem.message}`];
    });
    const [first, ...others] = failed;
    if (first !== undefined) throw new UsageError(first, others.join('; ') || undefined);
  }
}
