import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import { placesUnder } from '../../documents/engine/places.ts';
import type { PositionReading } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Path } from '../../documents/writing/shape.ts';
import { childOf, itemsOf, textAt } from '../../documents/yaml/access.ts';
import type { Node } from '../../documents/yaml/node.ts';
import type { PlannedBlock } from '../plan.ts';
import type { PlannedPoint } from '../points.ts';
import { GAUGE_COUNTS, type GaugeZero } from '../sessionText.ts';

/** A `~` in a session: a reading that is still to be taken, and where it stands. */
export interface OpenPlace {
  readonly point: PlannedPoint;
  readonly path: Path;
  /** The map that it is the value of, where it is one: a note goes there. */
  readonly holder: Path | undefined;
}

export interface OpenBlock {
  readonly block: PlannedBlock;
  readonly path: Path;
  readonly places: readonly OpenPlace[];
  /** Nothing was read in it yet, so instrument and setting may still be stated. */
  readonly untouched: boolean;
  readonly statesInstrument: boolean;
  /** Its numbers are deviations of a gauge that was set. */
  readonly zero: GaugeZero | undefined;
}

/** The blocks of a session that have something to be filled in, in the order of the file. */
export function openBlocks(
  root: Node,
  session: SessionDocument,
  engine: Engine,
  registry: Registry,
): readonly OpenBlock[] {
  const items = itemsOf(childOf(root, 'readings'));
  return session.blocks.flatMap((read) => {
    const item = items[read.index];
    const characteristic = registry.find(read.measure.id);
    if (item === undefined || characteristic === undefined) return [];
    const path: Path = ['readings', read.index];
    const positions = characteristic.family.isNamedBySession
      ? stepsIn(item, read.positions, engine)
      : read.positions;
    const found = positions.map((reading) => ({
      reading,
      places: placesOf(reading, read.measure.id, locate(item, reading, path, engine, characteristic.family)),
    }));
    const places = found.flatMap((each) => each.places);
    const [first] = found.filter((each) => each.places.length > 0);
    if (first === undefined) return [];
    const { stations, directions } = first.reading;
    return [
      {
        block: {
          measure: read.measure.id,
          family: characteristic.family,
          positions: found.filter((each) => each.places.length > 0).map(({ reading }) => reading.position),
          grid: {
            stations: stations.flatMap(({ name }) => name ?? []),
            directions: directions.flatMap((direction) => direction ?? []),
            fromShop: childOf(item, 'stations') === undefined && childOf(item, 'directions') === undefined,
          },
          instrument: read.instrument?.name,
        },
        path,
        places,
        untouched: positions.every((each) => each.rows.flat().every((point) => point === undefined)),
        statesInstrument: read.instrument !== undefined,
        zero: zeroOf(item),
      },
    ];
  });
}

/** A step whose value waits is no reading yet, so the session does not list it. */
const stepsIn = (
  item: Node,
  read: readonly PositionReading[],
  { document: { layout } }: Engine,
): readonly PositionReading[] =>
  itemsOf(childOf(item, 'after')).flatMap((step): readonly PositionReading[] => {
    const name = textAt(step, 'step');
    const position = name === undefined ? undefined : layout.step(name);
    if (position === undefined) return [];
    const found = read.find((each) => each.position === position);
    const empty = { stations: [{}], directions: [undefined], rows: [[undefined]], notes: [] };
    return [found ?? { ...empty, position, span: step.span }];
  });

function zeroOf(item: Node): GaugeZero | undefined {
  const [setTo, base] = [textAt(item, 'set_to'), textAt(item, 'base')];
  const counts = GAUGE_COUNTS.find((each) => each === textAt(item, 'in'));
  if (setTo !== undefined) return { setTo, counts };
  if (base !== undefined) return { base, counts };
  return counts && { counts };
}

interface Located {
  readonly node: Node;
  readonly path: Path;
  /** A step's value stands in the step's own map. */
  readonly holder: Path | undefined;
}

/** The node that holds what was read at a position. */
function locate(
  item: Node,
  reading: PositionReading,
  path: Path,
  engine: Engine,
  family: PlannedBlock['family'],
): Located | undefined {
  if (family.writtenUnder === 'value') {
    const node = childOf(item, 'value');
    if (node !== undefined) return { node, path: [...path, 'value'], holder: undefined };
  }
  if (family.writtenUnder === 'after') {
    const index = itemsOf(childOf(item, 'after')).findIndex(
      (step) => textAt(step, 'step') === reading.position.name,
    );
    const step = itemsOf(childOf(item, 'after'))[index];
    const key = childOf(step, 'running') === undefined ? 'value' : 'running';
    const node = childOf(step, key);
    const holder = [...path, 'after', index];
    return node === undefined ? undefined : { node, path: [...holder, key], holder };
  }
  const placed = placesUnder(childOf(item, 'at'), engine.document.layout, family).find(
    ({ position }) => position === reading.position,
  );
  return placed && { node: placed.node, path: [...path, 'at', ...placed.path], holder: undefined };
}

function placesOf(
  { position, stations, directions, rows }: PositionReading,
  measure: string,
  located: Located | undefined,
): readonly OpenPlace[] {
  if (located === undefined) return [];
  return rows.flatMap((row, r) =>
    row.flatMap((point, c): readonly OpenPlace[] => {
      if (point !== undefined) return [];
      const place = emptyAt(located, r, c, directions.length, stations[r]?.name);
      if (place === undefined) return [];
      return [
        { ...place, point: { measure, position, station: stations[r]?.name, direction: directions[c] } },
      ];
    }),
  );
}

/** Follows a point of the table back to its node; undefined where that is no `~`. */
function emptyAt(
  { node, path, holder }: Located,
  row: number,
  column: number,
  width: number,
  station: string | undefined,
): Omit<OpenPlace, 'point'> | undefined {
  if (node.kind === 'scalar') return node.value === null ? { path, holder } : undefined;
  if (node.kind === 'map') {
    const key = node.entries.has('value') ? 'value' : station;
    const child = key === undefined ? undefined : childOf(node, key);
    if (key === undefined || child === undefined) return undefined;
    // A reason beside it: the place was left out on purpose.
    if (key === 'value' && childOf(node, 'note') !== undefined) return undefined;
    const inside = { node: child, path: [...path, key], holder: key === 'value' ? path : undefined };
    return emptyAt(inside, 0, 0, 1, undefined);
  }
  const isTable = node.items.some((item) => item.kind === 'list');
  const index = isTable ? row : row * width + column;
  const child = node.items[index];
  if (child === undefined) return undefined;
  const inside = { node: child, path: [...path, index], holder: undefined };
  return child.kind === 'list'
    ? emptyAt(inside, 0, column, width, undefined)
    : emptyAt(inside, 0, 0, 1, station);
}
