import type { Row } from '../../checks/judge/row.ts';

/** The rows of each characteristic, in the order of the first of each. */
export function byMeasure(rows: readonly Row[]): readonly (readonly Row[])[] {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const group = groups.get(row.characteristic.id);
    if (group === undefined) groups.set(row.characteristic.id, [row]);
    else group.push(row);
  }
  return [...groups.values()];
}
