import { characteristics } from '../../characteristics/registry.ts';
import { shellWord } from '../../diagnostic/shellWord.ts';
import type { World } from '../../shell/world.ts';
import { findMeasure } from '../shop/measureNamed.ts';
import { engineNames, sourceOf } from '../shop/resolveShop.ts';
import { readSubject, type Subject } from '../shop/subjectWords.ts';
import { UsageError } from '../usage.ts';

export interface ExplainCall {
  /** A finding code or a characteristic. */
  readonly name: string;
  /** Of a value where it is looked for. */
  readonly subject: Subject | undefined;
}

interface ExplainedIn {
  readonly engine?: string | undefined;
  readonly at?: string | undefined;
}

/** `CODE`, `CHARACTERISTIC [POSITION] [ENGINE]`; `ENGINE CHARACTERISTIC [POSITION]` is accepted as well. */
export function readExplainCall(words: readonly string[], options: ExplainedIn, world: World): ExplainCall {
  const [first = '', ...rest] = words;
  if (rest.length === 0 && options.engine === undefined) return { name: first, subject: undefined };
  const [measure = '', position, ...more] = rest;
  if (isEngineFirst(first, measure, options, world)) {
    if (more.length > 0) throw tooMany([first, measure], [position ?? '', ...more]);
    return { name: measure, subject: { engine: first, position } };
  }
  if (rest.length > 2) throw tooMany([first], rest);
  return { name: first, subject: readSubject(first, rest, options, world) };
}

function tooMany(words: readonly string[], position: readonly string[]): UsageError {
  const whole = [...words, position.join(' ')].map(shellWord).join(' ');
  return new UsageError(
    `too many words: ${position.slice(1).join(' ')}`,
    `a position of several words: tenths explain ${whole}`,
  );
}

/** What is no characteristic of ours and is called as an engine is. */
function isEngineFirst(word: string, next: string, options: ExplainedIn, world: World): boolean {
  if (next === '' || options.engine !== undefined) return false;
  if (findMeasure(word, { all: characteristics }) !== undefined) return false;
  const source = sourceOf(options.at, '.', world);
  const isOurs = findMeasure(next, { all: characteristics }) !== undefined;
  return isOurs || source.locate(word) !== undefined || engineNames(word, source).length > 0;
}
