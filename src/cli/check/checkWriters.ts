import type { Finding } from '../../checks/finding.ts';
import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import type { CheckFormat, CheckWriter, RunHead, RunTotals } from '../../output/check/formats/format.ts';
import { CHECK_FORMATS } from '../../output/check/formats/index.ts';
import type { Texts } from '../../shell/discover/loadEngines.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { type ChosenFormat, formatsOf } from '../format/formatsOf.ts';
import { type Outputs, styleOf } from '../format/outputs.ts';

/** Hands what a run comes across to the writers of all formats that were asked for. */
export class CheckWriters {
  readonly #writers: readonly CheckWriter[];

  /** What goes to standard output comes when the last engine was looked at. */
  readonly isWaited: boolean;
  /** What goes to standard output need not be said where all is well. */
  readonly isQuietIfWell: boolean;

  private constructor(writers: readonly CheckWriter[], chosen: readonly ChosenFormat<CheckFormat>[]) {
    this.#writers = writers;
    const printed = chosen.filter(({ choice }) => choice.file === undefined);
    this.isWaited = printed.every(({ format }) => format.waits === true);
    this.isQuietIfWell = printed.some(({ format }) => format.isQuietIfWell === true);
  }

  static async open(
    choices: readonly FormatChoice[],
    head: Omit<RunHead, 'style'>,
    { outputs, world, detail }: { outputs: Outputs; world: World; detail: boolean },
  ): Promise<CheckWriters> {
    const chosen = await formatsOf(CHECK_FORMATS, choices);
    const writers = chosen.map(({ choice, format }) =>
      format.writer({ ...head, style: styleOf(choice, world, detail) }, outputs.writeTo(choice)),
    );
    return new CheckWriters(writers, chosen);
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
