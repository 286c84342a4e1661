import type { Characteristic } from '../../src/characteristics/characteristic.ts';
import type { SessionView } from '../../src/checks/judge/row.ts';
import { viewOf } from '../../src/checks/value/measured.ts';
import type { Position } from '../../src/layout/position.ts';
import { type Files, shopOf } from '../shopOf.ts';

/** The latest session of sound documents, as what judges it looks at it. */
export function viewIn(files: Files): SessionView {
  const { engine, registry, diagnostics } = shopOf(files);
  const session = engine?.sessions.at(-1);
  if (engine === undefined || session === undefined || diagnostics.length > 0)
    throw new Error(`not sound: ${diagnostics.map(({ message }) => message).join('; ')}`);
  return viewOf(engine, registry, session);
}

export function characteristicIn({ registry }: SessionView, id: string): Characteristic {
  const found = registry.find(id);
  if (found === undefined) throw new Error(`no characteristic ${id}`);
  return found;
}

export function positionIn({ engine }: SessionView, { family }: Characteristic, name: string): Position {
  const found = engine.document.layout.positionsOf(family).find((each) => each.name === name);
  if (found === undefined) throw new Error(`no position ${name}`);
  return found;
}
