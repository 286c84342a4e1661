import { STAGES, type Stage } from '../../documents/session/stage.ts';
import type { Written } from '../../output/escape/language.ts';
import { BELL, line, writtenLines, writtenPrompt } from '../../output/escape/line.ts';
import { type Ending, type PromptDialogue, promptLoop } from '../../shell/process/promptLoop.ts';
import type { World } from '../../shell/world.ts';
import { UsageError } from '../usage.ts';

/** What each stage is about, and whose limits decide there. */
const MEANINGS: Readonly<Record<Stage, string>> = {
  teardown: 'as it comes apart; wear limits decide',
  machined: 'parts after work on them; limits of new ones',
  trial: 'put together to measure; limits of new ones',
  rebuild: 'put together for good; limits of new ones',
  service: 'looked into between; wear limits decide',
};

/** Whether somebody sits before it who can be asked. */
export const canAsk = ({ input, out }: World): boolean => input?.().isTTY === true && out.isTTY === true;

const stageMissing = (): UsageError =>
  new UsageError('the stage of the job is not stated', `add --stage and one of ${STAGES.join(', ')}`);

/** The stage that is chosen from a list, or the exit code of a question that was left. */
export async function askStage(world: World): Promise<Stage | number> {
  const input = world.input?.();
  if (input === undefined || !canAsk(world)) throw stageMissing();
  let chosen: Stage | undefined;
  const question = new StageQuestion(world, (stage) => {
    chosen = stage;
    return undefined;
  });
  const ending: Ending = await promptLoop(question, input, world.out);
  return chosen ?? (ending === 'finished' ? 2 : ending);
}

/** Asks for the stage, then hands the conversation over: what was typed behind the answer is not lost. */
export class StageQuestion implements PromptDialogue {
  readonly #world: World;
  readonly #then: (stage: Stage) => PromptDialogue | undefined;
  #next: PromptDialogue | undefined;

  constructor(world: World, then: (stage: Stage) => PromptDialogue | undefined) {
    this.#world = world;
    this.#then = then;
  }

  opening(): Written {
    const lines = STAGES.map((stage, index) => `  ${index + 1}  ${stage.padEnd(9)} ${MEANINGS[stage]}`);
    return writtenLines(['Where does the job stand?', ...lines]);
  }

  prompt(): { readonly above: Written; readonly prompt: Written } {
    return this.#next?.prompt() ?? { above: writtenLines([]), prompt: writtenPrompt('  number or name > ') };
  }

  hear(typed: string, isTyped: boolean): 'go on' | 'finished' | 'failed' {
    if (this.#next !== undefined) return this.#next.hear(typed, isTyped);
    const stage = stageCalled(typed.trim().toLowerCase());
    if (stage === undefined) {
      if (typed.trim() !== '')
        this.#world.out.write(writtenLines([line`${BELL}    one of the five, or Ctrl-C to leave`]));
      return 'go on';
    }
    this.#next = this.#then(stage);
    if (this.#next === undefined) return 'finished';
    this.#world.out.write(this.#next.opening());
    return 'go on';
  }
}

/** By its number, its name or the beginning of that. */
const stageCalled = (text: string): Stage | undefined =>
  STAGES.find((stage, index) => text !== '' && (text === `${index + 1}` || stage.startsWith(text)));
