import type { Finding } from '../../checks/finding.ts';
import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import type { CheckWriter, RunHead, RunTotals } from '../../output/check/formats/format.ts';
import type { Texts } from '../../shell/discover/loadEngines.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { type Outputs, styleOf } from '../format/outputs.ts';
import { formatsOf } from './engineParts.ts';

/** Hands what a run comes across to the writers of all formats that were asked for. */
export class CheckWriters {
  readonly #writers: readonly CheckWriter[];

  private constructor(writers: readonly CheckWriter[]) {
    this.#writers = writers;
  }

  static async open(
    choices: readonly FormatChoice[],
    head: Omit<RunHead, 'style'>,
    { outputs, world, detail }: { outputs: Outputs; world: World; detail: boolean },
  ): Promise<CheckWriters> {
    const formats = await formatsOf(choices);
    return new CheckWriters(
      choices.flatMap((choice, index) => {
        const run = { ...head, style: styleOf(choice, world, detail) };
        return formats[index]?.writer(run, outputs.writeTo(choice)) ?? [];
      }),
    );
  }

  diagnostics(list: readonly Diagnostic[], texts: Texts): void {
    for (const writer of this.#writers) writer.diagnostics(list, texts);
  }

  /** What each format has made of an engine, in their order. */
  engine(parts: readonly unknown[]): void {
    for (const [index, writer] of this.#writers.entries()) writer.engine(parts[index]);
  }

  findings(list: readonly Finding[]): void {
    for (const writer of this.#writers) writer.findings(list);
  }

  notJudged(folder: string, faulty: readonly string[]): void {
    for (const writer of this.#writers) writer.notJudged(folder, faulty);
  }

  end(totals: RunTotals): void {
    for (const writer of this.#writers) writer.end(totals);
  }
}
