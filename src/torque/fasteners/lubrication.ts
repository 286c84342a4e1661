/** How the threads and the faces under the heads are, as far as it decides how much torque is lost. */
export interface Lubrication {
  /** In the trade's words, as printed beside an estimate. */
  readonly name: string;
  /** K of T = K d F. */
  readonly nutFactor: number;
  /** The clamp load of one bolt lies within this share of the estimate, up or down. */
  readonly scatter: number;
}

interface Known extends Lubrication {
  readonly words: RegExp;
}

const known = (name: string, nutFactor: number, scatter: number, words: RegExp): Known => ({
  name,
  nutFactor,
  scatter,
  words,
});

/**
 * Nut factors from memory (Shigley, Mechanical Engineering Design, table 8-15), that of molybdenum paste common practice,
 * no source. Torque wrench preload scatter from memory (NSTS 08307): unlubricated 35 %, cadmium plated 30 %, lubricated 25 %.
 */
export const LUBRICATIONS: readonly Known[] = [
  known('dry, black finish', 0.3, 0.35, /\bblack\b/i),
  known('dry, zinc plated', 0.2, 0.35, /\bzinc\b|\bgalvani[sz]ed\b/i),
  known('dry, finish not stated', 0.2, 0.35, /^(?!.*(\bblack|\bzinc|\bgalvani|\bcad)).*\bdry\b/i),
  known('cadmium plated', 0.16, 0.3, /\bcadmium\b|\bcad\b/i),
  known('oiled', 0.18, 0.25, /\boil(ed)?\b|\blubricated\b|^(?!.*(\bmoly|\banti-?seize)).*\bgreased?\b/i),
  known('anti-seize paste', 0.12, 0.25, /\banti-?seize\b/i),
  known('molybdenum paste', 0.12, 0.25, /\bmoly\w*\b/i),
];

/** When nothing is said, or what is said cannot be placed: K 0.20, as for zinc or a fastener as received. */
export const UNSTATED: Lubrication = {
  name: 'lubrication not known',
  nutFactor: 0.2,
  scatter: 0.35,
};

/** Words that turn a note round: "no oil" is not oiled. */
const DENIAL = /\b(no|not|without|free of|un(?:lubricated|oiled|greased|plated))\b/i;

/**
 * The lubrication a note such as `engine oil on threads and under heads` speaks of. A note that names two
 * of them, or says what is not there, is not guessed at: `UNSTATED`.
 */
export function lubricationNamed(note: string): Lubrication {
  const named = LUBRICATIONS.filter((each) => each.words.test(note));
  const [only] = named;
  if (only === undefined || named.length > 1 || DENIAL.test(note)) return UNSTATED;
  const { words: _, ...lubrication } = only;
  return lubrication;
}

/** A nut factor that the document itself states; it scatters as its lubrication does. */
export const statedNutFactor = (nutFactor: number, { scatter }: Lubrication): Lubrication => ({
  name: 'nut factor as stated',
  nutFactor,
  scatter,
});

/** `engine oil` is what `engine oil on threads and under heads` asks for. */
export function isSameText(a: string, b: string): boolean {
  const [one, other] = [plain(a), plain(b)];
  return (
    one === other ||
    (one !== '' && other.startsWith(`${one} `)) ||
    (other !== '' && one.startsWith(`${other} `))
  );
}

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** Whether two notes speak of one lubricant: `engine oil`, and `engine oil on threads and under heads`. */
export function isSameLubricant(a: string, b: string): boolean {
  const [one, other] = [lubricationNamed(a), lubricationNamed(b)];
  return isSameText(a, b) || (one.name !== UNSTATED.name && one.name === other.name);
}
