import { type Fraction, fraction, multiply, parseDecimal } from '../quantity/fraction.ts';

/** A material's expansion for each degree Celsius. */
export interface Expansion {
  readonly material: string;
  readonly coefficient: Fraction;
  /** How far the coefficient may lie from that, up or down. */
  readonly halfWidth: Fraction;
  readonly source: string;
}

const millionths = (figure: string): Fraction => multiply(parseDecimal(figure), fraction(1, 1_000_000));

const expansion = (material: string, figure: string, half: string, source: string): Expansion => ({
  material,
  coefficient: millionths(figure),
  halfWidth: millionths(half),
  source,
});

const HANDBOOK = 'Callister, appendix B.6; a tenth either way: our judgement, no source';
const NIST = 'Swyt, J. Res. NIST 99:31; a tenth either way: our judgement, no source';
const ALLOY_TABLE = "a laser interferometer's user's manual, table 17-1";

const STEEL = expansion('steel', '11.5', '1.15', NIST);
/** The pure metal grows by 23.6; what engines are cast and forged of lies between 19.0 and 22.5. */
const ALUMINIUM = expansion('aluminium', '20.75', '1.75', `piston and head alloys of ${ALLOY_TABLE}`);

/** Near room temperature. Materials of one name differ, which is what their half-widths are for. */
const MATERIALS: readonly (readonly [RegExp, Expansion])[] = [
  [/\bsteel\b/, STEEL],
  [/\b(?:ductile|nodular)\b/, expansion('ductile iron', '11.2', '1.12', HANDBOOK)],
  [/^(?!.*(?:ductile|nodular)).*\biron\b/, expansion('cast iron', '11.4', '1.14', HANDBOOK)],
  [/\balumini?um\b/, ALUMINIUM],
  [/\bbronze\b/, expansion('bronze', '18', '1.8', HANDBOOK)],
];

/** A figure that is known for the alloy itself differs by its temper and by how it was rounded: our judgement, no source. */
const WITHIN_ALLOY = '0.5';

const ALUMINIUM_ALLOYS: readonly (readonly [alloy: string, figure: string])[] = [
  ['4032', '19.4'],
  ['a132', '19.0'],
  ['d132', '20.5'],
  ['f132', '20.7'],
  ['142', '22.5'],
  ['2218', '22.3'],
  ['319', '21.5'],
  ['355', '22.0'],
  ['356', '21.5'],
];

/** By its words as written, `forged steel`, `aluminium 4032`; undefined for what is not known, and for two materials at once. */
export function expansionOf(written: string): Expansion | undefined {
  const words = written.toLowerCase();
  const found = MATERIALS.filter(([name]) => name.test(words));
  const [only] = found;
  if (only === undefined || found.length > 1) return undefined;
  const alloys = only[1] === ALUMINIUM ? ALUMINIUM_ALLOYS.filter(([alloy]) => hasWord(words, alloy)) : [];
  const [alloy] = alloys;
  if (alloy === undefined || alloys.length > 1) return only[1];
  return expansion(`aluminium ${alloy[0].toUpperCase()}`, alloy[1], WITHIN_ALLOY, ALLOY_TABLE);
}

const hasWord = (words: string, word: string): boolean => words.split(/[^a-z0-9]+/).includes(word);

/** As a document states it, per degree Celsius. */
export const statedExpansion = (coefficient: Fraction, material = 'as stated'): Expansion => ({
  material,
  coefficient,
  halfWidth: millionths(WITHIN_ALLOY),
  source: 'as stated',
});

/** What a gauge is made of where nothing is said. */
export const GAUGE_STEEL = STEEL;
