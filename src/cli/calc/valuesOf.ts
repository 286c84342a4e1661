import type { NamedValue } from '../../calculator/calculator.ts';
import type { Registry } from '../../characteristics/registry.ts';
import { reportEngine } from '../../checks/judge/report.ts';
import type { Row } from '../../checks/judge/row.ts';
import { unitOfRow } from '../../checks/judge/session.ts';
import type { Engine } from '../../documents/assemble.ts';
import { compareNames } from '../../layout/nameOrder.ts';
import { type Fraction, toNumber } from '../../quantity/fraction.ts';
import { fromBase, type Unit } from '../../quantity/units.ts';

/**
 * What an engine gives to calculate with: each size by its name, and over it the latest reading of each characteristic by its
 * id: at several positions a list in their order, and each by its own name, such as `cylinder_bore_3`.
 */
export function valuesOf(engine: Engine, registry: Registry): ReadonlyMap<string, NamedValue> {
  const values = new Map<string, NamedValue>();
  for (const [name, { amount, unit }] of engine.document.sizes) values.set(name, valueIn(amount, unit));
  const rows = reportEngine(engine, registry, {}).state?.rows ?? [];
  for (const of of rowsByMeasure(rows))
    for (const [name, value] of measured(of, engine)) values.set(name, value);
  return values;
}

function rowsByMeasure(rows: readonly Row[]): readonly (readonly Row[])[] {
  const found = new Map<string, Row[]>();
  for (const row of rows) {
    if (row.routes.length === 0) continue;
    const { id } = row.characteristic;
    found.set(id, [...(found.get(id) ?? []), row]);
  }
  return [...found.values()];
}

function measured(rows: readonly Row[], engine: Engine): readonly (readonly [string, NamedValue])[] {
  const [first] = rows;
  if (first === undefined) return [];
  const { id, family } = first.characteristic;
  const unit = unitOfRow(first, engine);
  const sorted = rows.toSorted((a, b) => compareNames(a.position.name, b.position.name));
  const each = sorted.map((row) => valueIn(row.routes[0]?.mean ?? ZERO, unit));
  const numbers = each.flatMap((value) => value.numbers);
  const [only] = each;
  if (family.isSingle && only !== undefined) return [[id, only]];
  return [
    [id, { numbers, unit: unit.name, isList: true }],
    ...sorted.flatMap((row, index): readonly (readonly [string, NamedValue])[] => {
      const value = each[index];
      return value === undefined ? [] : [[`${id}_${row.position.name.replaceAll(/\W/g, '_')}`, value]];
    }),
  ];
}

const ZERO: Fraction = { n: 0n, d: 1n };

const valueIn = (amount: Fraction, unit: Unit): NamedValue => ({
  numbers: [toNumber(fromBase(amount, unit))],
  unit: unit.name,
  isList: false,
});
