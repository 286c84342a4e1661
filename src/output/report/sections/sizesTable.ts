import { limitNumber, printingOf, readingText } from '../../../checks/findings/readings.ts';
import type { Row } from '../../../checks/judge/row.ts';
import { shortName } from '../../../layout/naming.ts';
import { headedWithUnit } from '../../../quantity/format.ts';
import type { Unit } from '../../../quantity/units.ts';
import { byMeasure } from '../../check/byMeasure.ts';
import { type Block, table } from '../sheet.ts';
import { AREA_TITLES, areaOf } from './areas.ts';

/** Every final size in one table, for whoever opens the engine next, with what each figure is. */
export function sizesTable(rows: readonly Row[], unitFor: (row: Row) => Unit): readonly Block[] {
  const groups = byMeasure(rows.filter(({ routes }) => routes.length > 0));
  const ordered = AREA_TITLES.flatMap((area) =>
    groups.filter(([first]) => first !== undefined && areaOf(first.characteristic) === area),
  );
  return table(
    'sizes and clearances as assembled',
    ['figure', 'what it is', 'measured', 'new parts', 'wear limit'],
    ordered.flatMap((group) => sizeRows(group, unitFor)),
  );
}

/** A row for each set of limits: a step of an assembly may have its own. */
function sizeRows(group: readonly Row[], unitFor: (row: Row) => Unit): readonly (readonly string[])[] {
  const byLimits = new Map<string, Row[]>();
  for (const row of group) {
    const key = [bandText(row, 'new', unitFor), bandText(row, 'wear', unitFor)].join(' / ');
    byLimits.set(key, [...(byLimits.get(key) ?? []), row]);
  }
  return [...byLimits.values()].map((rows, index) => sizeRow(rows, index === 0, unitFor));
}

function sizeRow(rows: readonly Row[], isFirst: boolean, unitFor: (row: Row) => Unit): readonly string[] {
  const [first] = rows;
  if (first === undefined) return [];
  const printing = printingOf(first, unitFor);
  const { label, description } = first.characteristic;
  const values = rows.flatMap((row) => {
    const [judged] = row.routes;
    if (judged === undefined) return [];
    const where = [shortName(row.position), row.half ?? ''].join(' ').trim();
    return [[where, readingText(judged, printing)].filter(Boolean).join(': ')];
  });
  return [
    isFirst ? headedWithUnit(label, printing.unit) : '',
    isFirst ? description : '',
    values.map((each) => (each.length > MOST_UNBROKEN ? each : unbroken(each))).join('; '),
    unbroken(bandText(first, 'new', unitFor)),
    unbroken(bandText(first, 'wear', unitFor)),
  ];
}

/** Longer names of places have to break somewhere. */
const MOST_UNBROKEN = 40;

/** A figure and its range stay on one line. */
const unbroken = (text: string): string => text.replaceAll(' ', '\u00a0');

function bandText(row: Row, band: 'new' | 'wear', unitFor: (row: Row) => Unit): string {
  const sides = row.limits.bands[band];
  const printing = printingOf(row, unitFor);
  const [min, max] = [sides?.min, sides?.max].map((limit) => limit && limitNumber(limit, printing));
  if (min !== undefined && max !== undefined) return `${min} to ${max}`;
  return [min && `at least ${min}`, max && `at most ${max}`].filter(Boolean).join('');
}
