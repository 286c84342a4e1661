import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { StateReport } from '../../checks/judge/report.ts';
import type { Row } from '../../checks/judge/row.ts';
import { openFound } from '../../checks/open/openFound.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Observation } from '../../documents/session/observations.ts';
import type { Part } from '../../layout/part.ts';
import type { PartAt } from '../../layout/readPart.ts';
import { isCracked } from './renewal/cracked.ts';
import { wholesRenewed } from './renewal/wholesRenewed.ts';
import { type Suspect, suspectsOf } from './suspects.ts';

/** What a plan is made from: an engine, and where it stands. */
export interface PlanContext {
  readonly engine: Engine;
  readonly registry: Registry;
  /** Without the values that may be slips of the pen: nothing is worked out from them. */
  readonly state: StateReport;
  readonly suspects: readonly Suspect[];
  /** What was seen in its run, has no number, and is still to be dealt with. */
  readonly found: readonly Observation[];
  /** Rows of crack tests that failed. */
  readonly cracked: readonly Row[];
  readonly wholesRenewed: readonly PartAt[];
}

export function planContext(engine: Engine, registry: Registry, state: StateReport): PlanContext {
  const suspects = suspectsOf(state);
  const doubted = new Set(suspects.map(({ row }) => row));
  const rows = state.rows.filter((row) => !doubted.has(row));
  const found = openFound(state.run, engine, registry);
  const cracked = rows.filter(isCracked);
  return {
    engine,
    registry,
    state: { ...state, rows },
    suspects,
    found,
    cracked,
    wholesRenewed: wholesRenewed(found, cracked, engine),
  };
}

/** Figures of a part that are judged of it alone: its size, and its form. */
export const FIGURES_OF_A_PART: readonly (Characteristic['figure'] | undefined)[] = [
  'size',
  'out of round',
  'taper',
];

export const rowsOfPart = ({ state }: PlanContext, part: Part): readonly Row[] =>
  state.rows.filter(
    ({ characteristic }) =>
      characteristic.of === part.id && FIGURES_OF_A_PART.includes(characteristic.figure),
  );

/** The diameter that a part is ground or bored to. */
export const sizeOfPart = ({ registry }: PlanContext, { id }: Part): Characteristic | undefined =>
  registry.all.find((each) => each.of === id && each.figure === 'size' && each.dimension === 'size');
