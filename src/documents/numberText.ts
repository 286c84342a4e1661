import type { DocumentCode } from '../diagnostic/diagnostic.ts';
import { UNIT_SPELLINGS, UNITS } from '../quantity/units.ts';

/** Why a text is no number, in words that follow "is the text …", and what to write instead. */
export interface NotANumber {
  readonly code: DocumentCode;
  readonly reason?: string;
  readonly help: string;
}

/** What people write for a unit that is known under another name; compared without regard to case. */
const ALIASES: Readonly<Record<string, readonly string[]>> = {
  in: ['inch', 'inches', 'ins', 'in.', '"', '″', "''"],
  thou: ['mil', 'mils', 'thous', 'thousandth', 'thousandths'],
  mm: ['millimetre', 'millimetres', 'millimeter', 'millimeters', 'mm.'],
  um: ['µm', 'μm', 'micron', 'microns', 'micrometre', 'micrometres', 'micrometer', 'micrometers'],
  'lbf ft': [
    'ft lb',
    'ft lbs',
    'ft-lbs',
    'ftlb',
    'ftlbs',
    'lb ft',
    'lbs ft',
    'lbft',
    'ft lbf',
    'ft-lbf',
    'lbf-ft',
    'foot pound',
    'foot pounds',
    'pound feet',
    'ft.lb',
    'lb.ft',
  ],
  'lbf in': [
    'in lb',
    'in lbs',
    'in-lbs',
    'inlb',
    'lb in',
    'in lbf',
    'in-lbf',
    'lbf-in',
    'inch pound',
    'inch pounds',
    'in.lb',
    'lb.in',
  ],
  'ozf in': ['oz in', 'in oz', 'oz-in', 'in-oz'],
  'N m': ['n-m', 'n·m', 'newton metre', 'newton metres', 'newton meters'],
  'kgf m': ['kgm', 'kg m', 'mkg', 'm kg', 'kgfm'],
  kPa: ['kilopascal', 'kilopascals'],
  cc: ['cm3', 'ccm', 'cm³'],
  in3: ['cu in', 'in³', 'cubic inches'],
  deg: ['°', 'degree', 'degrees'],
  degC: ['°c', 'c', 'celsius', 'deg c'],
  degF: ['°f', 'f', 'fahrenheit', 'deg f'],
  h: ['hr', 'hrs', 'hour', 'hours'],
};

/** Undefined where the text is nothing like a number. */
export function notANumber(text: string): NotANumber | undefined {
  return quoted(text) ?? decimalComma(text) ?? fractionOf(text) ?? wrongUnit(text);
}

const quoted = (text: string): NotANumber | undefined =>
  /^[-+]?(?:0|[1-9]\d*)(?:\.\d+)?$/.test(text)
    ? { code: 'number-as-text', reason: 'in quotes', help: `write ${text} without the quotes` }
    : undefined;

/** Three digits behind a comma may as well be thousands: both are offered, neither is assumed. */
function decimalComma(text: string): NotANumber | undefined {
  const found = /^([-+]?\d+),(\d+)( ?\D.*)?$/.exec(text);
  if (found === null) return undefined;
  const [, before, after = '', unit = ''] = found;
  const decimal = `${before}.${after}${unit}`;
  const help =
    after.length === 3 && !/^[-+]?0$/.test(before ?? '')
      ? `write ${decimal} with a decimal point, or ${before}${after}${unit} if the comma marks thousands`
      : `write ${decimal} with a decimal point`;
  return { code: 'number-as-text', help };
}

function fractionOf(text: string): NotANumber | undefined {
  const found = /^(?:(\d{1,4})[ -])?(\d{1,4})\/(\d{1,4})( ?\D.*)?$/.exec(text);
  if (found === null || Number(found[3]) === 0) return undefined;
  const value = Number(found[1] ?? 0) + Number(found[2]) / Number(found[3]);
  return {
    code: 'number-as-text',
    reason: 'a fraction',
    help: `write it as a decimal: ${Number(value.toFixed(6))}${found[4] ?? ''}`,
  };
}

function wrongUnit(text: string): NotANumber | undefined {
  const found = /^([-+]?(?:\d+(?:\.\d+)?|\.\d+))\s*([^\d\s.,][^\d]*\d?)$/.exec(text);
  if (found === null) return undefined;
  const [, number, written = ''] = found;
  if (UNIT_SPELLINGS.includes(written)) {
    const reason = 'not a number, one space and its unit';
    return { code: 'value', reason, help: `write ${number} ${written}` };
  }
  const meant = unitMeant(written);
  const help = meant === undefined ? KNOWN_UNITS : `write ${number} ${meant}`;
  return { code: 'value', reason: `and ${written} is not a unit known here`, help };
}

/** The same unit under another name. Case does not tell units apart: no two of ours differ in case alone. */
function unitMeant(written: string): string | undefined {
  const lower = written.toLowerCase();
  const alias = Object.entries(ALIASES).find(([, spellings]) => spellings.includes(lower))?.[0];
  return alias ?? UNIT_SPELLINGS.find((each) => each.toLowerCase() === lower);
}

/** No nearest one is offered: one letter is a factor of a thousand (N mm, N m), or another quantity (Nmm, mm). */
const KNOWN_UNITS = `known units: ${[...new Set(UNITS.map(({ name }) => name))].filter(Boolean).join(', ')}`;
