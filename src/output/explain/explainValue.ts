import {
  amountText,
  type Printing,
  plusMinus,
  printingOf,
  readingText,
} from '../../checks/findings/readings.ts';
import { movedText } from '../../checks/findings/temperature.ts';
import { type EngineReport, isState, unitsFor } from '../../checks/judge/report.ts';
import type { JudgedRoute, JudgingOptions } from '../../checks/judge/row.ts';
import { unitOfRow } from '../../checks/judge/session.ts';
import { leavesOf, type Route } from '../../checks/value/route.ts';
import { correctionIn, isMoved } from '../../measurement/temperature.ts';
import type { FinerInstruments } from '../../plan/work/instruments.ts';
import { decimalsFor, formatNumber, withUnitName } from '../../quantity/format.ts';
import type { Unit } from '../../quantity/units.ts';
import { agreementText } from '../check/agreementText.ts';
import { hotLines } from '../check/hotText.ts';
import { putRightNote } from '../check/putRightText.ts';
import { leftToCutText } from '../check/view/leftToCutText.ts';
import { positionText, verdictText } from '../check/view/rowView.ts';
import { type Line, line, withGaps } from '../escape/line.ts';
import { type Cell, cell, fitting, layTable } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { uncoloured, widthOf } from '../terminal/width.ts';
import { wrap } from '../terminal/wrap.ts';
import { budgetLines } from './explainBudget.ts';
import { limitLines, placeText, reasonLines } from './explainLimits.ts';
import { riskLines } from './explainRisk.ts';
import { type MeasuredRow, sessionText, takenText } from './measuredRow.ts';

const LEFT = { align: 'left' } as const;
const RIGHT = { align: 'right' } as const;

/** Where a value comes from: its readings, the sum, the error budget, the bands and why the verdict is what it is. */
export function valueLines(
  measured: MeasuredRow,
  { engine, registry, rule }: EngineReport,
  options: JudgingOptions,
  finer: readonly FinerInstruments[],
  style: TextStyle,
): readonly Line[] {
  const { row, of } = measured;
  const printing = printingOf(row, unitsFor(engine));
  const [judged, ...others] = row.routes;
  const earlier = isState(of) ? of.run.slice(0, -1).reverse() : [];
  const around = { session: of.session, earlier, engine, registry };
  const unitOf = (of: Route): Unit => unitOfRow(of, engine);
  const title = `${row.characteristic.label} ${positionText(row)}`.trim();
  const heading = line`${style.paint.strong(title)}  ${takenText(measured)}`;
  if (judged === undefined)
    return [
      heading,
      '',
      `  ${[row.judgement.verdict ?? 'not measured', row.notTaken?.reason].filter(Boolean).join(': ')}`,
    ];
  const left = leftToCutText(row, printing);
  const risk = riskLines(row, finer, printing);
  const blocks: readonly (readonly Line[])[] = [
    [heading, `  ${amountText(judged, printing)}  ${verdictText(row, printing)}`.trimEnd()],
    ['readings', ...readingLines(judged.route, style), ...takenLines(judged.route, unitOf)],
    [judged.route.inputs.length === 0 ? 'as read' : 'worked out', ...sumLines(judged, printing, unitOf)],
    ['error budget', ...budgetLines(judged, printing, unitOf)],
    ...(row.hot === undefined ? [] : [['in the running engine', ...hotLines(row, printing)]]),
    ['limits', ...limitLines(row, printing), ...(left === '' ? [] : [`  ${left}`])],
    ['verdict', ...reasonLines(row, around, rule, options, printing)],
    ...(risk.length === 0 ? [] : [['what the verdict may cost', ...risk]]),
    ...(others.length === 0 ? [] : [['other routes', ...others.map((each) => otherLine(each, printing))]]),
  ];
  return withGaps(blocks.map((lines) => lines.flatMap((each) => folded(each, style))));
}

/** What is wider than the window goes on below, a step further in. */
const folded = (text: Line, { width }: TextStyle): readonly Line[] =>
  widthOf(text) <= width
    ? [text]
    : wrap(uncoloured(text).trimStart(), width - 6).map(
        (each, index) => `${index === 0 ? '  ' : '      '}${each}`,
      );

/** What was typed, with file and line; of a derived value everything that it comes from. */
function readingLines(route: Route, { width }: TextStyle): readonly Line[] {
  // A figure of nominal sizes alone was not read.
  const leaves = [...new Set(leavesOf(route))].filter(({ block }) => block !== undefined);
  const names = inputNames(leaves);
  const isOfSeveral = new Set(leaves.map(({ readIn }) => readIn)).size > 1;
  const rows = leaves.map((leaf, index): readonly Cell[] => [
    cell(names[index] ?? ''),
    cell(leaf.written.join(', ')),
    cell([...leaf.with, ...setterText(leaf)].join(', ')),
    cell(isOfSeveral ? sessionText(leaf.readIn) : ''),
  ]);
  const places = leaves.map(({ place }) => placeText(place));
  const lines = fitting(width, ['beside', 'below'] as const, (shape) =>
    shape === 'beside'
      ? layTable(
          rows.map((row, index) => [...row, cell(places[index] ?? '')]),
          [LEFT, LEFT, LEFT, LEFT, LEFT],
        )
      : layTable(rows, [LEFT, LEFT, LEFT, LEFT]).flatMap((each, index) => [
          each,
          `      ${places[index] ?? ''}`,
        ]),
  );
  const notes = route.notes.map((note) => `  ${note}`);
  return [...lines, ...notes];
}

/** From where and to where each reading was taken, how far, and by which expansion. */
function takenLines(route: Route, unitFor: (of: Route) => Unit): readonly string[] {
  const leaves = leavesOf(route);
  const names = inputNames(leaves);
  return leaves.flatMap((leaf, index) => {
    const { warmth, measured } = leaf;
    const right = putRightNote(leaf, unitFor(leaf)).map((note) => `  ${names[index]}: ${note}`);
    if (warmth === undefined || !isMoved(warmth)) return right;
    const moved = movedText(correctionIn(measured.mean.amount, warmth), warmth, unitFor(leaf));
    return [
      ...right,
      `  ${names[index]}: reading made at ${warmth.from.text}, converted to ${warmth.to.text}, ${moved}`,
    ];
  });
}

const setterText = ({ block }: Route): readonly string[] =>
  block?.setWith === undefined ? [] : [`set with ${block.setWith.name}`];

/** The formula, and the numbers that went into it. */
function sumLines(judged: JudgedRoute, printing: Printing, unitFor: (input: Route) => Unit): readonly Line[] {
  const { route } = judged;
  const number = (amount: JudgedRoute['least']): string =>
    formatNumber(amount, printing.unit, printing.decimals + 1);
  const names = inputNames(route.inputs);
  const ends = [
    [cell('least'), cell(number(judged.least))],
    [cell('mean'), cell(number(judged.mean))],
    [cell('greatest'), cell(number(judged.greatest))],
  ];
  const inputs = route.inputs.map((input, index): readonly Cell[] => [
    cell(names[index] ?? ''),
    cell(inputText(input, printing, unitFor(input))),
  ]);
  const formula = route.inputs.length === 0 ? [] : [`  ${route.name}`];
  return [...formula, ...layTable([...inputs, ...ends], [LEFT, RIGHT])];
}

/** In the unit of the figure where both are of one quantity, else in its own. */
function inputText({ measured, lastDigit }: Route, printing: Printing, own: Unit): string {
  const isAlike = own.quantity === printing.unit.quantity;
  const [unit, decimals] = isAlike
    ? [printing.unit, printing.decimals + 1]
    : [own, decimalsFor(lastDigit, own) + 1];
  const [least, greatest] = [measured.least, measured.greatest].map(({ amount }) =>
    formatNumber(amount, unit, decimals),
  );
  const text = `${least} to ${greatest}`;
  return isAlike ? text : withUnitName(text, unit);
}

/** What was read, with its position where there is more than one of it. */
function inputNames(inputs: readonly Route[]): readonly string[] {
  const ids = inputs.map(({ characteristic }) => characteristic.id);
  return ids.map((id, index) => {
    const isOneOfSeveral = ids.filter((each) => each === id).length > 1;
    return isOneOfSeveral ? `${id} ${inputs[index]?.position.name ?? ''}` : id;
  });
}

/** With all digits of its own: another route may have been read finer. */
function otherLine(other: JudgedRoute, { unit, decimals }: Printing): string {
  const agreement = other.en === null ? '' : `${agreementText(other)} (E_n ${other.en.toFixed(2)})`;
  const own = { unit, decimals: Math.max(decimals, decimalsFor(other.route.lastDigit, unit)) };
  return `  ${other.route.name} (${other.route.with.join(', ')}): ${readingText(other, own)} ${plusMinus(other.route, unit)}${agreement}`;
}
