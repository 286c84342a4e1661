import { Cautions } from '../../bench/cautions.ts';
import type { PlannedBlock } from '../../bench/plan.ts';
import type { GaugeZero } from '../../bench/sessionText.ts';
import { blockHeading, faintLines, type PromptAbout } from '../../output/bench/recordText.ts';
import type { Line } from '../../output/escape/line.ts';

/** What stands above a prompt where a characteristic, or the setting of its gauge, is another than before. */
export class Headings {
  readonly #about: PromptAbout;
  readonly #cautions: Cautions;
  /** The characteristic and its setting that the last heading was about. */
  #last = '';
  /** What was last said of a place above its prompt. */
  #known = '';

  constructor(about: PromptAbout) {
    this.#about = about;
    this.#cautions = new Cautions(about.registry);
  }

  above(block: PlannedBlock, instrument: string | undefined, zero: GaugeZero | undefined): readonly Line[] {
    const key = JSON.stringify([block.measure, instrument, zero]);
    if (key === this.#last) return [];
    this.#last = key;
    this.#known = '';
    const caution = this.#cautions.of(block.measure);
    return blockHeading(block, { instrument, zero, caution }, this.#about);
  }

  /** What does not fit beside the prompt, where it is other than at the place before. */
  known(text: string): readonly Line[] {
    if (text === this.#known) return [];
    this.#known = text;
    return text === '' ? [] : faintLines(text, this.#about.style);
  }

  /** The next begins anew. */
  forget(): void {
    this.#last = '';
  }
}
