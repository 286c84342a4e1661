/** One program of a line, with its words as a shell would hand them over. */
export interface Stage {
  readonly words: readonly string[];
  /** Assignments before the program's name. */
  readonly environment: Readonly<Record<string, string>>;
  /** What a shell is to be given to do the same. */
  readonly text: string;
}

/** Programs of which each reads what the one before it prints. */
export type Pipeline = readonly Stage[];

/** What puts a shop into the state that a line is about, or shows it. None of them changes anything in the shell itself. */
const COMPANIONS = /^(?:cat|chmod|cp|git|ln|mkdir|mkfifo|mv|printf|rm|sed|truncate)$/;

const [ASSIGNMENT, BLANK] = [/^([A-Za-z_]\w*)=(.*)$/s, /[ \t]/];

/** What a shell would do something about that is not known here: unquoted anywhere, or as the beginning of a word. */
const [SPECIAL, SPECIAL_FIRST] = [/[;&(){}$`*?[\n]/, /[#~!]/];

/**
 * A line of a shell taken apart: words, quotes, assignments, `|` between programs, `&&` between pipelines, and redirections
 * of what is not `tenths`. Undefined where it has anything else: only a shell knows what that means.
 */
export function pipelinesOf(line: string): readonly Pipeline[] | undefined {
  const reader = new LineReader();
  for (let at = 0; at < line.length; ) {
    const length = reader.take(line.slice(at));
    if (length === 0) return undefined;
    at += length;
  }
  return reader.end();
}

class LineReader {
  readonly #pipelines: Stage[][] = [[]];
  #words: { text: string; isQuoted: boolean }[] = [];
  #word: { text: string; isQuoted: boolean } | undefined;
  #text = '';
  #redirects = false;
  #isKnown = true;

  /** Takes the next piece and says how long it was: 0 where it is not known. */
  take(rest: string): number {
    const [first = ''] = rest;
    const quoted = /^'([^']*)'|^"([^"$`\\]*)"|^\\([^\n])/.exec(rest);
    if (quoted !== null) return this.#add(quoted[0], quoted[1] ?? quoted[2] ?? quoted[3] ?? '', true);
    const joint = /^(?:&&|\|(?![|&]))/.exec(rest)?.[0];
    if (joint !== undefined) return this.#endStage(joint);
    if (BLANK.test(first)) return this.#endWord(first);
    const redirection = /^(?:\d?>>?|<)(?![<>&|])/.exec(rest)?.[0];
    if (redirection !== undefined && this.#word === undefined) {
      this.#redirects = true;
      return this.#endWord(redirection);
    }
    if (/['"\\|<>]/.test(first) || SPECIAL.test(first)) return 0;
    if (SPECIAL_FIRST.test(first) && this.#word === undefined) return 0;
    return this.#add(first, first, false);
  }

  end(): readonly Pipeline[] | undefined {
    this.#endStage('');
    return this.#isKnown ? this.#pipelines : undefined;
  }

  #add(source: string, text: string, isQuoted: boolean): number {
    this.#word = {
      text: `${this.#word?.text ?? ''}${text}`,
      isQuoted: isQuoted || this.#word?.isQuoted === true,
    };
    this.#text += source;
    return source.length;
  }

  #endWord(source: string): number {
    if (this.#word !== undefined) this.#words.push(this.#word);
    this.#word = undefined;
    this.#text += source;
    return source.length;
  }

  #endStage(source: string): number {
    this.#endWord('');
    const stage = stageOf(this.#words, this.#text.trim(), this.#redirects);
    if (stage === undefined) this.#isKnown = false;
    else this.#pipelines.at(-1)?.push(stage);
    if (source === '&&') this.#pipelines.push([]);
    [this.#words, this.#text, this.#redirects] = [[], '', false];
    return source.length;
  }
}

function stageOf(
  found: readonly { readonly text: string; readonly isQuoted: boolean }[],
  text: string,
  redirects: boolean,
): Stage | undefined {
  const first = found.findIndex((word) => word.isQuoted || !ASSIGNMENT.test(word.text));
  if (first < 0) return undefined;
  const assignments = found.slice(0, first).map((word) => ASSIGNMENT.exec(word.text) ?? []);
  const words = found.slice(first).map((word) => word.text);
  const [program = ''] = words;
  if (program === 'tenths' ? redirects : !COMPANIONS.test(program)) return undefined;
  const environment = Object.fromEntries(assignments.map(([, name = '', value = '']) => [name, value]));
  return { words, environment, text };
}
