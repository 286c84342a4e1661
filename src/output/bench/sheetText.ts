import { bandsText } from '../../bench/bandsText.ts';
import { Cautions, stageCautions } from '../../bench/cautions.ts';
import type { Plan, PlannedBlock } from '../../bench/plan.ts';
import { typingUnit } from '../../bench/record/expectation.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Stage } from '../../documents/session/stage.ts';
import { tableName } from '../../layout/naming.ts';
import { headedWithUnit } from '../../quantity/format.ts';
import type { Line } from '../escape/line.ts';
import { type Cell, type Column, cell, layTable } from '../terminal/table.ts';
import { wrap } from '../terminal/wrap.ts';

export interface SheetHead {
  readonly engine: Engine;
  readonly registry: Registry;
  readonly stage: Stage;
  readonly date: string;
}

/** A sheet of a printer has this many columns. */
const PAGE = 80;
const BLANK = '_________';
const LEFT: Column = { align: 'left' };

/** A session as a form to print: in the order of the bench, with the limits beside the blanks. */
export function sheetLines(plan: Plan, head: SheetHead): readonly Line[] {
  const { engine, registry, stage, date } = head;
  const cautions = new Cautions(registry);
  return [
    `${engine.document.name}   ${stage} ${date}`,
    `by ${BLANK}${BLANK}   hours ${BLANK}   temperature ${BLANK}`,
    ...stageCautions(stage).flatMap(cautionLines),
    ...plan.blocks.flatMap((block) => ['', ...blockLines(block, head, cautions)]),
  ];
}

const cautionLines = (caution: string): readonly Line[] => wrap(`Caution: ${caution}`, PAGE);

function blockLines(
  block: PlannedBlock,
  { engine, registry }: SheetHead,
  cautions: Cautions,
): readonly Line[] {
  const characteristic = registry.find(block.measure);
  if (characteristic === undefined) return [];
  const unit = typingUnit(characteristic.quantity, engine);
  const general = bandsText(characteristic, block.positions[0], engine);
  const label = unit === undefined ? characteristic.label : headedWithUnit(characteristic.label, unit);
  const heading = `${label}   ${general}`;
  const columns = block.grid.stations.flatMap((station) =>
    block.grid.directions.length === 0
      ? [station]
      : block.grid.directions.map((direction) => `${station} ${direction}`),
  );
  const names = columns.length > 0 ? columns : block.grid.directions;
  const rows = block.positions.map((position): readonly Cell[] => {
    const own = bandsText(characteristic, position, engine);
    return [
      cell(tableName(position)),
      ...(names.length === 0 ? [''] : names).map(() => cell(BLANK)),
      cell(own === general ? '' : own),
    ];
  });
  const header = [cell(''), ...names.map((name) => cell(name))];
  const all = names.length === 0 ? rows : [header, ...rows];
  const layout = Array.from({ length: 2 + Math.max(1, names.length) }, () => LEFT);
  const caution = cautions.of(block.measure);
  return [
    `${heading}   with ${block.instrument ?? BLANK}`.trimEnd(),
    ...(characteristic.atTheBench === undefined ? [] : wrap(characteristic.atTheBench, PAGE)),
    ...(caution === undefined ? [] : cautionLines(caution)),
    ...layTable(all, layout),
  ];
}
