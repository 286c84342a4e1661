import { exampleRods, type RodsOnPins, readRodsOfPin } from '../../bench/scaffold/rods.ts';
import type { Written } from '../../output/escape/language.ts';
import { BELL, line, writtenLines, writtenPrompt } from '../../output/escape/line.ts';
import { type PromptDialogue, promptLoop } from '../../shell/process/promptLoop.ts';
import type { World } from '../../shell/world.ts';
import { canAsk } from '../record/stageQuestion.ts';
import { UsageError } from '../usage.ts';

/** Which rods run on each crankpin, as somebody at the terminal says it; or the exit code of a question that was left. */
export async function askRods(
  cylinders: number,
  crankpins: number,
  world: World,
): Promise<RodsOnPins | number> {
  const input = world.input?.();
  if (input === undefined || !canAsk(world)) {
    throw new UsageError(
      `${cylinders} cylinders on ${crankpins} crankpins, and which rods run on each is not stated`,
      `add them pin by pin as the maker numbers them, such as --rods "${exampleRods(cylinders, crankpins)}"`,
    );
  }
  const question = new RodsQuestion(world, cylinders, crankpins);
  const ending = await promptLoop(question, input, world.out);
  if (ending !== 'finished') return ending;
  return question.rods.length === crankpins ? question.rods : 2;
}

class RodsQuestion implements PromptDialogue {
  readonly #world: World;
  readonly #cylinders: number;
  readonly #crankpins: number;
  #rods: RodsOnPins = [];

  constructor(world: World, cylinders: number, crankpins: number) {
    this.#world = world;
    this.#cylinders = cylinders;
    this.#crankpins = crankpins;
  }

  get rods(): RodsOnPins {
    return this.#rods;
  }

  opening(): Written {
    return writtenLines([
      'Which rods run on each crankpin? As the maker numbers them, with a space between.',
    ]);
  }

  prompt(): { readonly above: Written; readonly prompt: Written } {
    return { above: writtenLines([]), prompt: writtenPrompt(`  crankpin ${this.#rods.length + 1} > `) };
  }

  hear(typed: string): 'go on' | 'finished' {
    const names = readRodsOfPin(typed);
    const wrong = this.#wrong(names);
    if (wrong !== undefined) return this.#say(wrong);
    this.#rods = [...this.#rods, names];
    if (this.#rods.length < this.#crankpins) return 'go on';
    const count = this.#rods.flat().length;
    if (count === this.#cylinders) return 'finished';
    this.#rods = [];
    return this.#say(`${count} rods, and there are ${this.#cylinders} cylinders: once more from crankpin 1`);
  }

  #wrong(names: readonly string[]): string | undefined {
    const taken = this.#rods.flat();
    const twice = names.find((name, index) => taken.includes(name) || names.indexOf(name) !== index);
    if (names.length === 0) return 'the names of its rods, or Ctrl-C to leave';
    return twice === undefined ? undefined : `rod ${twice} is on a pin already`;
  }

  #say(text: string): 'go on' {
    this.#world.out.write(writtenLines([line`${BELL}    ${text}`]));
    return 'go on';
  }
}
