import type { Characteristic, ExampleReading, WorkedExample } from '../../characteristics/characteristic.ts';
import { ALSO_CALLED } from '../../documents/alsoCalled.ts';
import { everyOne } from '../../layout/naming.ts';
import { anInstrument } from '../../measurement/instrument.ts';
import { type Line, line } from '../escape/line.ts';
import { type Cell, cell, layTable } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';
import { LINE } from './explainCode.ts';

/** What a characteristic is, how it is worked out, by which routes, with the sums that are tested. */
export function characteristicLines(of: Characteristic, style: TextStyle): readonly Line[] {
  const facts: readonly (readonly [string, string])[] = [
    ...(ALSO_CALLED[of.id] === undefined
      ? []
      : [['also called', ALSO_CALLED[of.id]?.join(', ') ?? ''] as const]),
    ['measured at', everyOne(of.family)],
    ['formula', of.formula],
    ...of.derivations.map((each) => ['route', `${each.route}  (${each.inputs.join(', ')})`] as const),
    ['usually with', anInstrument(of.usual)],
    ['too great', of.words.above],
    ['too small', of.words.below],
    ['source', of.source],
  ];
  const rows = facts.map(([name, text]): readonly Cell[] => [cell(style.paint.faint(name)), cell(text)]);
  return [
    line`${style.paint.strong(of.id)}  ${of.label}, ${of.quantity}`,
    '',
    ...wrap(of.description, Math.min(style.width, LINE)),
    ...(of.note === undefined ? [] : wrap(of.note, Math.min(style.width, LINE))),
    ...(of.caution === undefined ? [] : ['', ...wrap(`Caution: ${of.caution}`, Math.min(style.width, LINE))]),
    '',
    ...layTable(rows, [{ align: 'left' }, { align: 'left' }]),
    ...of.examples.flatMap((example) => ['', ...exampleLines(example, style)]),
  ];
}

function exampleLines(
  { unit, resultUnit = unit, given, least, greatest, source }: WorkedExample,
  { paint }: TextStyle,
): readonly Line[] {
  const readings = Object.entries(given).map(([id, reading]) => `  ${id} ${readingText(reading)}`);
  const result = least === greatest ? least : `${least} to ${greatest}`;
  const heading = unit === '' ? 'example' : `example, ${unit}`;
  const inUnit = resultUnit === unit || resultUnit === '' ? '' : ` ${resultUnit}`;
  return [line`${heading}  ${paint.faint(source)}`, ...readings, `  gives ${result}${inUnit}`];
}

function readingText(reading: ExampleReading): string {
  if (typeof reading === 'string') return reading;
  return 'rows' in reading ? reading.rows.map((row) => row.join(', ')).join('; ') : reading.join(', ');
}
