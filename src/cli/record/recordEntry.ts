import { nominalSize } from '../../bench/instruments.ts';
import { keyOf } from '../../bench/points.ts';
import { askedBy, type TypedRequest } from '../../bench/record/command.ts';
import { lastReading } from '../../bench/record/earlier.ts';
import { eventLine, type ReadJournal, type RecordStart } from '../../bench/record/journalText.ts';
import { liveFeedback } from '../../bench/record/liveFeedback.ts';
import {
  applyEvent,
  lastTaken,
  type RecordEvent,
  type RecordState,
  startRecord,
  toWrite,
} from '../../bench/record/state.ts';
import {
  eventLines,
  feedbackLine,
  helpLines,
  type PromptAbout,
  promptAt,
  refusalLines,
} from '../../output/bench/recordText.ts';
import type { Written } from '../../output/escape/language.ts';
import { type Line, line, writtenLines, writtenPrompt } from '../../output/escape/line.ts';
import { wrap } from '../../output/terminal/wrap.ts';
import { plural } from '../../quantity/words.ts';
import { pathOnDisk } from '../../shell/discover/paths.ts';
import type { PromptDialogue } from '../../shell/process/promptLoop.ts';
import { textStyle } from '../../shell/process/terminal.ts';
import type { World } from '../../shell/world.ts';
import type { Journal } from '../../shell/write/journal.ts';
import { check } from '../check/check.ts';
import { problemLines } from '../usage.ts';
import { type BenchEngine, callName } from './benchEngine.ts';
import { Headings } from './headings.ts';
import { opening } from './opening.ts';
import type { RecordTarget } from './recordTarget.ts';
import { writeSession } from './recordWrite.ts';

/** One entry: what was taken so far, and how it is reported. */
export class Entry implements PromptDialogue {
  readonly #opened: BenchEngine;
  readonly #target: RecordTarget;
  readonly #start: RecordStart;
  readonly #journal: Journal;
  readonly #world: World;
  readonly #about: PromptAbout;
  /** Somebody sits before it. */
  readonly #isTyped: boolean;
  readonly #headings: Headings;
  #state: RecordState;
  #lines = 0;

  constructor(
    opened: BenchEngine,
    target: RecordTarget,
    start: RecordStart,
    journal: Journal,
    world: World,
    isTyped: boolean,
  ) {
    this.#opened = opened;
    this.#target = target;
    this.#start = start;
    this.#journal = journal;
    this.#world = world;
    this.#isTyped = isTyped;
    this.#about = { ...opened, style: textStyle(world.out, world.environment, false) };
    this.#headings = new Headings(this.#about);
    this.#state = startRecord(start.points, new Map(start.instruments), new Map(start.zeros));
  }

  takeUp({ events, torn }: ReadJournal): void {
    this.#state = events.reduce(applyEvent, this.#state);
    const lost = torn === 0 ? '' : `; ${plural(torn, 'line')} cut short by that and not kept`;
    const here = counted(this.#state.taken.size);
    this.#report(
      wrap(`An entry of ${this.#target.name} was cut off: ${here} here${lost}.`, this.#about.style.width),
    );
  }

  opening(): Written {
    return opening(this.#start, this.#opened.engine, this.#about.style);
  }

  /** The text to print above the prompt, where a new characteristic begins; and the prompt. */
  prompt(): { readonly above: Written; readonly prompt: Written } {
    const { points, at, again, instruments, zeros, taken } = this.#state;
    const point = points[at];
    const block = point && this.#start.plan.blocks.find((each) => each.measure === point.measure);
    if (point === undefined || block === undefined) {
      this.#headings.forget();
      const done = `  ${taken.size} of ${points.length} taken: finish writes them, back goes back > `;
      return { above: writtenLines([]), prompt: writtenPrompt(done) };
    }
    const [instrument, zero] = [instruments.get(point.measure), zeros.get(point.measure)];
    const heading = this.#headings.above(block, instrument, zero);
    const { engine, registry } = this.#opened;
    const characteristic = registry.find(point.measure);
    const place = {
      point,
      last: lastReading(point, engine, this.#target.name),
      now: taken.get(keyOf(point))?.texts.at(-1),
      nominal: characteristic && nominalSize(characteristic, point.position, engine)?.written,
      again,
    };
    const { text, above } = promptAt(place, this.#about);
    return {
      above: writtenLines([...heading, ...this.#headings.known(above)]),
      prompt: writtenPrompt(text),
    };
  }

  /** Takes one line. What it answers is printed; nothing is asked before it is on the disk. */
  hear(typed: string, isTyped: boolean): 'go on' | 'finished' | 'failed' {
    this.#lines += 1;
    const asked = askedBy(typed, this.#state, this.#opened);
    switch (asked.kind) {
      case 'nothing':
        return 'go on';
      case 'help':
        this.#report(helpLines(this.#about.style));
        return 'go on';
      case 'finish':
        return 'finished';
      case 'unclear':
        return this.#unclear(asked.why, isTyped);
      case 'event':
        return this.#carryOut(asked, isTyped);
    }
  }

  /** At the keyboard it is asked again; in a pipe every later line would land one place off. */
  #unclear(why: string, isTyped: boolean): 'go on' | 'failed' {
    if (isTyped) {
      this.#world.out.write(writtenLines(refusalLines(why, this.#about.style)));
      return 'go on';
    }
    this.#world.err.write(writtenLines([`tenths: line ${this.#lines}: ${why}`]));
    return 'failed';
  }

  #carryOut({ event, completed }: TypedRequest & { kind: 'event' }, isTyped: boolean): 'go on' | 'failed' {
    if (completed && event.do === 'take') this.#report([`    = ${event.text}`]);
    const saved = this.#journal.append(eventLine(event));
    if (!saved.ok) {
      this.#world.err.write(writtenLines(problemLines(saved.problem)));
      return 'failed';
    }
    this.#state = applyEvent(this.#state, event);
    if (event.do === 'take') this.#comment(event, isTyped);
    else if (isTyped) this.#report(eventLines(event, lastTaken(this.#state)?.texts.at(-1)));
    return 'go on';
  }

  #comment({ at }: RecordEvent & { do: 'take' }, isTyped: boolean): void {
    const point = this.#start.points[at];
    if (point === undefined) return;
    const { engine, registry } = this.#opened;
    const judging = { engine, registry, head: this.#start.head, plan: this.#start.plan };
    const where = isTyped ? '' : `line ${this.#lines}:`;
    for (const opinion of liveFeedback(point, this.#state.taken, judging)) {
      const bell = isTyped && (opinion.severity !== 'remark' || opinion.word !== 'marginal');
      const [first = '', ...rest] = feedbackLine(opinion, this.#about.style, bell);
      this.#report([line`${where}${first}`, ...rest]);
    }
  }

  /** To the screen where somebody sits before it; a pipe's results stay clean. */
  #report(lines: readonly Line[]): void {
    (this.#isTyped ? this.#world.out : this.#world.err).write(writtenLines(lines));
  }

  /** Not finished: what was taken stays where it is. */
  leave(ending: number): number {
    const nothing = toWrite(this.#state).size === 0;
    const reported = nothing
      ? ['No reading was taken.']
      : [
          `${counted(this.#state.taken.size)} kept, and not in the session yet. To go on:`,
          `  tenths record ${callName(this.#opened)}`,
        ];
    this.#world.err.write(writtenLines(['', ...reported]));
    if (nothing) this.#journal.remove();
    return ending;
  }

  async finish(): Promise<number> {
    const { path } = this.#target;
    const places = toWrite(this.#state);
    if (places.size === 0) return this.leave(0);
    const written = writeSession(this.#opened, path, this.#start, places);
    if (!written.ok) {
      const kept = '        the readings are kept: tenths record goes on from there';
      this.#world.err.write(writtenLines([...problemLines(written.problem), kept]));
      return 2;
    }
    this.#journal.remove();
    const left = this.#state.points.length - places.size;
    if (left > 0) this.#report(['', `${plural(left, 'place')} of the plan not read`]);
    this.#report(['', `${counted(this.#state.taken.size)} in ${path}`, '']);
    return check(
      [pathOnDisk(this.#opened.root, path)],
      { format: [{ format: 'text' }], strict: false, detail: false },
      this.#world,
    );
  }
}

const counted = (count: number): string => `${plural(count, 'reading')} ${count === 1 ? 'is' : 'are'}`;
