import { together, type Written } from '../../escape/language.ts';
import { writtenLines } from '../../escape/line.ts';

/** An engine as it is read: where it is one of several, its answer stands before all of their texts. */
export interface ReadPart {
  readonly text: Written;
  readonly answer: { readonly text: Written; readonly weight: readonly number[] } | undefined;
}

type Answered = ReadPart & { readonly answer: object };

/** Blocks of text with an empty line between them; answers wait for the end, where the worst comes first. */
export class AnswersFirst {
  readonly #write: (text: Written) => void;
  readonly #answered: Answered[] = [];
  #isFirst = true;

  constructor(write: (text: Written) => void) {
    this.#write = write;
  }

  block(text: Written): void {
    if (text === '') return;
    this.#write(this.#isFirst ? text : together(writtenLines(['']), text));
    this.#isFirst = false;
  }

  engine(part: ReadPart): void {
    const { text, answer } = part;
    if (answer === undefined) this.block(text);
    else this.#answered.push({ text, answer });
  }

  end(): void {
    const sorted = this.#answered.toSorted((a, b) => worstFirst(a.answer.weight, b.answer.weight));
    this.block(together(...sorted.map(({ answer }) => answer.text)));
    for (const { text } of sorted) this.block(text);
  }
}

function worstFirst(a: readonly number[], b: readonly number[]): number {
  const differing = a.findIndex((figure, index) => figure !== b[index]);
  return (b[differing] ?? 0) - (a[differing] ?? 0);
}
