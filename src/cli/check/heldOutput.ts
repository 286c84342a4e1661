import type { Written } from '../../output/escape/language.ts';
import type { Output } from '../../shell/world.ts';

/** Keeps what is printed until it is certain that it may be; looks like the stream that it is kept for. */
export class HeldOutput implements Output {
  readonly #out: Output;
  readonly #texts: Written[] = [];

  constructor(out: Output) {
    this.#out = out;
  }

  get isTTY(): boolean {
    return this.#out.isTTY === true;
  }

  get columns(): number {
    return this.#out.columns ?? 0;
  }

  write(text: Written): void {
    this.#texts.push(text);
  }

  release(): void {
    for (const text of this.#texts.splice(0)) this.#out.write(text);
  }
}
