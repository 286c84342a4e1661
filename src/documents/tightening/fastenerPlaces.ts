import type { Places } from '../../torque/joint.ts';
import {
  fastenerCount,
  type Layout,
  layOut,
  MOST_FASTENERS,
  type Position,
} from '../../torque/order/layouts.ts';
import { type DocumentContext, report } from '../amount.ts';
import { childOf, itemsOf, scalarOf, textOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** Where the fasteners stand, as `positions` says; names are given where it only counts. */
export function readPlaces(
  node: Node,
  names: readonly string[] | undefined,
  context: DocumentContext,
): Places | undefined {
  if (node.kind === 'list') return inRows(node.items);
  const [caps, circle] = [childOf(node, 'caps'), childOf(node, 'circle')];
  if (caps?.kind === 'list') return { kind: 'caps', positions: caps.items.flatMap(acrossCap) };
  if (circle?.kind === 'list')
    return counted({ kind: 'circle', count: circle.items.length }, namesIn(circle));
  const layout = readLayout(node, context);
  if (layout === undefined) return undefined;
  const count = fastenerCount(layout);
  if (count > MOST_FASTENERS) {
    return report(context, 'value', node.span, `${count} fasteners are more than ${MOST_FASTENERS}`);
  }
  if (names !== undefined && names.length !== count) {
    return report(
      context,
      'value',
      node.span,
      `these are places for ${count} fasteners, and there are ${names.length}`,
      'make both the same, or leave the names out',
    );
  }
  return counted(layout, names);
}

const counted = (layout: Layout, names: readonly string[] | undefined): Places => ({
  kind: layout.kind,
  positions: fastenerCount(layout) === 0 ? [] : layOut(layout, names),
});

const namesIn = (node: Node): readonly string[] => itemsOf(node).flatMap((item) => textOf(item) ?? []);

/** One row of names, or rows of them; `~` keeps a place empty. */
function inRows(items: readonly Node[]): Places {
  const isRow = items.every((item) => item.kind === 'scalar');
  const rows = isRow ? [items] : items.map((item) => (item.kind === 'list' ? item.items : [item]));
  const positions = rows.flatMap((row, y) =>
    row.flatMap((item, x): readonly Position[] => {
      const name = textOf(item);
      return name === undefined ? [] : [{ name, x: x + 1, y: y + 1 }];
    }),
  );
  return { kind: isRow || rows.length === 1 ? 'row' : 'head', positions };
}

/** From left to right; nothing stands on the crankshaft's line. */
function acrossCap(cap: Node, index: number): readonly Position[] {
  const names = namesIn(cap);
  return names.map((name, at) => {
    const fromLeft = at - names.length / 2;
    return { name, x: index + 1, y: fromLeft < 0 ? fromLeft : fromLeft + 1 };
  });
}

function readLayout(node: Node, context: DocumentContext): Layout | undefined {
  const number = (key: string): number | undefined => {
    const value = scalarOf(childOf(node, key))?.value;
    return typeof value === 'number' ? value : undefined;
  };
  const [caps, row, circle, rows, columns] = ['caps', 'row', 'circle', 'rows', 'columns'].map(number);
  const found: readonly (Layout | undefined)[] = [
    caps === undefined ? undefined : { kind: 'caps', caps, eachCap: eachCapOf(number('each_cap')) },
    row === undefined ? undefined : { kind: 'row', count: row },
    circle === undefined ? undefined : { kind: 'circle', count: circle },
    rows === undefined || columns === undefined ? undefined : { kind: 'head', rows, columns },
  ];
  const layouts = found.flatMap((each) => each ?? []);
  if (layouts.length === 1) return layouts[0];
  const message =
    layouts.length === 0 ? 'the positions name no fastener' : 'the positions are given in more than one way';
  return report(
    context,
    'value',
    node.span,
    message,
    'write { caps: 5, each_cap: 2 }, { rows: 2, columns: 5 }, { row: 9 } or { circle: 8 }',
  );
}

const eachCapOf = (count: number | undefined): 2 | 4 | 6 => (count === 4 || count === 6 ? count : 2);

const CAP_NAME = /^(\d+)(LS|LO|LI|L|R|RI|RO|RS)$/;
const ROW_NAME = /^([A-Z])(\d+)$/;
const ACROSS = ['LS', 'LO', 'LI', 'L', 'R', 'RI', 'RO', 'RS'];
/** The gap for the crankshaft lies between L and R. */
const CENTRE = 3.5;

/** Places that names such as 3L, 2RO or B4 tell by themselves: good for a drawing, not for making an order. */
export function placesFromNames(names: readonly string[]): Places | undefined {
  const caps = names.flatMap((name): readonly Position[] => {
    const [, cap, side] = CAP_NAME.exec(name) ?? [];
    return side === undefined ? [] : [{ name, x: Number(cap), y: ACROSS.indexOf(side) - CENTRE }];
  });
  if (names.length > 1 && caps.length === names.length) return { kind: 'caps', positions: caps };
  const rows = names.flatMap((name): readonly Position[] => {
    const [, row, column] = ROW_NAME.exec(name) ?? [];
    return row === undefined ? [] : [{ name, x: Number(column), y: row.charCodeAt(0) }];
  });
  return names.length > 1 && rows.length === names.length ? { kind: 'head', positions: rows } : undefined;
}
