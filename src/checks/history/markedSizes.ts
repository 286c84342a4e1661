import type { Place } from '../../diagnostic/place.ts';
import type { PartChange } from '../../documents/session/partChanges.ts';
import type { StockPiston } from '../../documents/stock/stock.ts';
import { namedAt } from '../../layout/naming.ts';
import type { PartAt } from '../../layout/readPart.ts';
import { formatNumber, withUnitName } from '../../quantity/format.ts';
import { absolute, compare, type Fraction, subtract, toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import type { Finding } from '../finding.ts';
import { type Printing, printingOf } from '../findings/readings.ts';
import type { JudgedRoute, Row, SessionView } from '../judge/row.ts';
import { isAt } from './dependsOn.ts';
import { partConflict } from './partConflict.ts';

/** A piston that was read, and what the stock says of the one whose mark is said to be there. */
interface Marked {
  readonly row: Row;
  readonly judged: JudgedRoute;
  readonly piston: StockPiston;
  /** Where it is said to be fitted. */
  readonly place: Place;
}

/** Pistons whose readings are not those of their marks: two that look swapped, and others beyond both uncertainties. */
export function markedSizeFindings(
  rows: readonly Row[],
  view: SessionView,
  unitFor: (row: Row) => Unit,
): readonly Finding[] {
  const { stock } = view.engine;
  const marked = stock.pistons.length === 0 ? [] : rows.flatMap((row) => markedAt(row, view) ?? []);
  const swapped = pairs(marked).filter(([a, b]) => areSwapped(a, b));
  return [
    ...swapped.map(([a, b]) => partConflict(a.place, swappedText(a, b, unitFor), 'warning')),
    ...marked
      .filter((each) => !swapped.some((pair) => pair.includes(each)) && isBeyondBoth(each))
      .map((each) => partConflict(each.place, otherText(each, unitFor), 'warning')),
  ];
}

function markedAt(row: Row, { engine, registry, session, earlier = [] }: SessionView): Marked | undefined {
  const { characteristic, position, routes } = row;
  const [judged] = routes;
  if (characteristic.id !== 'piston_diameter' || judged === undefined) return undefined;
  const changes = [...earlier.toReversed(), session].flatMap(({ partChanges }) => partChanges);
  const change = changes.findLast(isOfIt);
  const mark = change?.marksAt.find(({ parts }) => parts.some(isHere))?.mark;
  const [piston, ...others] = engine.stock.pistons.filter(({ code }) => code === mark);
  if (change === undefined || piston === undefined || others.length > 0) return undefined;
  return { row, judged, piston, place: change.place };

  function isHere(part: PartAt): boolean {
    return isAt('piston', position, part, registry, engine.document.layout);
  }
  function isOfIt({ how, parts, marksAt }: PartChange): boolean {
    return how === 'replaced' ? parts.some(isHere) : marksAt.some((each) => each.parts.some(isHere));
  }
}

const pairs = (all: readonly Marked[]): readonly (readonly [Marked, Marked])[] =>
  all.flatMap((a, index) => all.slice(index + 1).map((b) => [a, b] as const));

/** Each reads to the last digit as the other, and not as its own by more than that digit. */
const areSwapped = (a: Marked, b: Marked): boolean =>
  readsAs(a, b.piston) && readsAs(b, a.piston) && isDigitOff(a) && isDigitOff(b);

const readsAs = ({ judged }: Marked, { diameter }: StockPiston): boolean =>
  2 * Math.abs(toNumber(subtract(judged.mean, diameter.amount))) < toNumber(diameter.lastDigit);

const isDigitOff = (marked: Marked): boolean => compare(offBy(marked), marked.piston.diameter.lastDigit) > 0;

/** The stock says no instrument: its figure is known to half its last digit. */
const isBeyondBoth = (marked: Marked): boolean =>
  toNumber(offBy(marked)) > marked.judged.route.expanded + toNumber(marked.piston.diameter.lastDigit) / 2;

const offBy = ({ judged, piston }: Marked): Fraction =>
  absolute(subtract(judged.mean, piston.diameter.amount));

function swappedText(a: Marked, b: Marked, unitFor: (row: Row) => Unit): string {
  const reads = ({ row, judged }: Marked, { code }: StockPiston): string =>
    `${nameOf(row)} reads ${sizeText(judged.mean, printingOf(row, unitFor))}, the size of ${code}`;
  const said = `fitted: says ${a.piston.code} and ${b.piston.code} (${placeText(a.piston)}, ${placeText(b.piston)})`;
  return `${reads(a, b.piston)}, and ${reads(b, a.piston)}; ${said}: the two marks look swapped`;
}

function otherText(marked: Marked, unitFor: (row: Row) => Unit): string {
  const { row, judged, piston } = marked;
  const printing = printingOf(row, unitFor);
  const said = `fitted: says ${piston.code}, which is ${sizeText(piston.diameter.amount, printing)} (${placeText(piston)})`;
  return `${nameOf(row)} reads ${sizeText(judged.mean, printing)}, and ${said}: they differ by ${sizeText(offBy(marked), printing)}, more than both uncertainties`;
}

const nameOf = ({ position }: Row): string => namedAt('piston', position);

const sizeText = (amount: Fraction, { unit, decimals }: Printing): string =>
  withUnitName(formatNumber(amount, unit, decimals), unit);

const placeText = ({ place: { path, line, column } }: StockPiston): string => `${path}:${line}:${column}`;
