import type { Row } from '../../checks/judge/row.ts';

/** Rods that share a crankpin stand together, in the order in which the pins first come. */
export function inPinOrder(rows: readonly Row[]): readonly Row[] {
  const groups = new Map<unknown, Row[]>();
  for (const row of rows) {
    const group = row.shared?.pin ?? row;
    groups.set(group, [...(groups.get(group) ?? []), row]);
  }
  return [...groups.values()].flat();
}

/** `pin 4: rods 7, 8`, above the first of them. */
export function pinHeading({ shared }: Row, before: Row | undefined): string | undefined {
  if (shared === undefined || before?.shared?.pin === shared.pin) return undefined;
  return `pin ${shared.pin.name}: rods ${shared.rods.map(({ name }) => name).join(', ')}`;
}
