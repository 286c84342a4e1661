import { COMMANDS, CONTROLS, MARKUP, NAUGHTY } from '../../output/escape/hostileTexts.ts';
import { isLong, SEED } from '../../propertyRuns.ts';

/** Controls that no document may hold, however they are written: one that does is reported of, and its text is quoted. */
export const REFUSED = /[\0-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]/u;

/** What stands in a document in place of a name. */
export type Texts = (name: string) => string;

/** Keys are wanted in composed form, so that two that look alike are the same. */
const isTaken = (text: string): boolean => !REFUSED.test(text) && text === text.normalize('NFC');

const ATTACKS = [...COMMANDS, ...CONTROLS, ...MARKUP];

/** Several attacks a text, one of them at its start and one at its end, and a naughty string beside the name. */
function shopsOf(attacks: readonly string[], naughty: readonly string[], count: number): readonly Texts[] {
  const volleys = [...Array(count).keys()].map((first) =>
    attacks.filter((_, index) => index % count === first),
  );
  return volleys.map((_, shop) => {
    const numbers = new Map<string, number>();
    return (name) => {
      const number = numbers.get(name) ?? numbers.size;
      numbers.set(name, number);
      const volley = volleys[(number + shop) % count] ?? [];
      const strange = naughty[(number * count + shop) % naughty.length] ?? '';
      return [...volley.slice(0, -1), strange, name, ...volley.slice(-1)].join(' ');
    };
  });
}

/** Of these shops every document is taken: all texts are attacked, each of them by all attacks. */
export const TAKEN_SHOPS = shopsOf(ATTACKS.filter(isTaken), NAUGHTY.filter(isTaken), 5);

/** Of these shops every document is refused. */
export const REFUSED_SHOPS = shopsOf(
  ATTACKS.filter((each) => !isTaken(each)),
  NAUGHTY.filter((each) => !isTaken(each)),
  2,
);

/** All of them, or one in so many. */
export const sample = <Each>(all: readonly Each[], oneIn: number): readonly Each[] =>
  all.filter((_, index) => isLong || index % oneIn === SEED % oneIn);

/** With its number, for a title. */
export const numbered = (shops: readonly Texts[]) => sample([...shops.entries()], shops.length);

/** Of a terminal, or of none. */
export const WIDTHS: readonly (number | undefined)[] = isLong ? [60, undefined] : [60];
