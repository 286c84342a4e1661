import type { Engine } from '../../documents/assemble.ts';
import type { Measure } from '../../documents/measure.ts';
import { OUTCOMES, TEST_WORDS } from '../../documents/session/outcome.ts';
import { unitsOf } from '../../quantity/units.ts';
import { typingUnit } from '../record/expectation.ts';
import type { Mapping } from './mapping.ts';

export type CellValue =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly message: string; readonly help: string };

/**
 * A cell as a session writes it: with a decimal point, with the zeros that a spreadsheet dropped, with its unit where
 * that is not the engine's. What the mapping does not allow is refused and never guessed.
 */
export function readCellValue(
  text: string,
  { decimal, decimals, unit }: Mapping,
  measure: Measure,
  engine: Engine,
): CellValue {
  if (measure.quantity === 'pass or fail') return readResult(text, measure);
  const other = decimal === '.' ? ',' : '.';
  if (text.includes(other)) {
    const message = `${text} has a ${other === ',' ? 'comma' : 'point'} in it`;
    return refused(
      message,
      `the mapping says that the decimal mark is a ${decimal === '.' ? 'point' : 'comma'}`,
    );
  }
  const [, sign, whole, after = ''] = /^([-+]?)0*(\d+)(?:[.,](\d+))?$/.exec(text) ?? [];
  if (whole === undefined) return refused(`${text} is not a number`, 'write the reading alone');
  if (decimals !== undefined && after.length > decimals) {
    const help = `the mapping says ${decimals}: a spreadsheet may have worked it out`;
    return refused(`${text} has ${after.length} decimals`, help);
  }
  const digits = decimals === undefined ? after : after.padEnd(decimals, '0');
  const number = `${sign === '-' ? '-' : ''}${whole}${digits === '' ? '' : `.${digits}`}`;
  const isUnitless = unitsOf(measure.quantity).every(({ name }) => name === '');
  const isPlain = isUnitless || typingUnit(unit.quantity, engine)?.name === unit.name;
  return { ok: true, text: isPlain ? number : `${number} ${unit.name}` };
}

/** In small letters or large, as a session writes it or in the words of the shop. */
function readResult(text: string, { outcomes }: Measure): CellValue {
  const word = text.trim().toLowerCase().replaceAll('_', ' ');
  const own = OUTCOMES.find((each) => outcomes?.[each].toLowerCase() === word);
  const result = own ?? TEST_WORDS.find((each) => each === word);
  if (result !== undefined) return { ok: true, text: result };
  const words = [...new Set([...TEST_WORDS, ...OUTCOMES.flatMap((each) => outcomes?.[each] ?? [])])];
  return refused(`${text} is not a result of a test`, `write ${words.join(', ')}`);
}

const refused = (message: string, help: string): CellValue => ({ ok: false, message, help });
