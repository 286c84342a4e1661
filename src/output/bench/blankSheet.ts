import { bandsText } from '../../bench/bandsText.ts';
import { Cautions, stageCautions } from '../../bench/cautions.ts';
import type { Plan, PlannedBlock } from '../../bench/plan.ts';
import { typingUnit } from '../../bench/record/expectation.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Stage } from '../../documents/session/stage.ts';
import { tableName } from '../../layout/naming.ts';
import { headedWithUnit } from '../../quantity/format.ts';

export interface SheetHead {
  readonly engine: Engine;
  readonly registry: Registry;
  readonly stage: Stage;
}

/** A session as a form to print, in the order of the bench: built once, for every way to print it. */
export interface BlankSheet {
  readonly engine: string;
  readonly stage: Stage;
  readonly cautions: readonly string[];
  readonly blocks: readonly BlankBlock[];
}

export interface BlankBlock {
  readonly heading: string;
  /** Those of its first position; of one that has others they stand in its row. */
  readonly limits: string;
  readonly instrument: string | undefined;
  readonly how: string | undefined;
  /** Where its work begins, once a sheet. */
  readonly caution: string | undefined;
  /** The places of one part; a single one without a name where a part is read once. */
  readonly places: readonly string[];
  readonly rows: readonly { readonly position: string; readonly limits: string }[];
}

export function blankSheet(plan: Plan, head: SheetHead): BlankSheet {
  const { engine, registry, stage } = head;
  const cautions = new Cautions(registry);
  return {
    engine: engine.document.name,
    stage,
    cautions: stageCautions(stage),
    blocks: plan.blocks.flatMap((block) => blankBlock(block, head, cautions)),
  };
}

function blankBlock(
  { measure, positions, instrument, grid }: PlannedBlock,
  { engine, registry }: SheetHead,
  cautions: Cautions,
): readonly BlankBlock[] {
  const characteristic = registry.find(measure);
  if (characteristic === undefined) return [];
  const unit = typingUnit(characteristic.quantity, engine);
  const limits = bandsText(characteristic, positions[0], engine);
  const rows = positions.map((position) => {
    const own = bandsText(characteristic, position, engine);
    return { position: tableName(position), limits: own === limits ? '' : own };
  });
  return [
    {
      heading: unit === undefined ? characteristic.label : headedWithUnit(characteristic.label, unit),
      limits,
      instrument,
      how: characteristic.atTheBench,
      caution: cautions.of(measure),
      places: placesOf(grid),
      rows,
    },
  ];
}

function placesOf({ stations, directions }: PlannedBlock['grid']): readonly string[] {
  const places = stations.flatMap((station) =>
    directions.length === 0 ? [station] : directions.map((direction) => `${station} ${direction}`),
  );
  const named = places.length > 0 ? places : directions;
  return named.length > 0 ? named : [''];
}
