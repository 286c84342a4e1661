import { formatLimit, type Printing, printingOf, readingText } from '../checks/readings.ts';
import type { Change } from '../compare/change.ts';
import type { ConcessionChange, Diff } from '../compare/diff.ts';
import type { LimitChange } from '../compare/limitChanges.ts';
import type { EngineState, StateValue } from '../compare/state.ts';
import { formatNumber, formatUncertainty } from '../quantity/format.ts';
import { absolute } from '../quantity/fraction.ts';
import { positionText, verdictText } from './checkTables.ts';
import { type Cell, type Column, cell, fitting, layTable, painted } from './table.ts';
import type { TextStyle } from './textStyle.ts';
import { visible } from './visible.ts';

/** The two sides of a comparison, as they are named in print. */
export interface Sides {
  readonly a: string;
  readonly b: string;
}

type UnitFor = EngineState['unitFor'];

const COLUMNS: readonly Column[] = [
  { align: 'left' },
  { align: 'right' },
  { align: 'right' },
  { align: 'right' },
  { align: 'left' },
  { align: 'left' },
];

/** What changed in one engine, the worst first; what is within its uncertainty or the same is counted. */
export function diffText(
  name: string,
  sides: Sides,
  diff: Diff,
  unitFor: UnitFor,
  options: { readonly all: boolean },
  style: TextStyle,
): string {
  const heading = `${style.paint.strong(visible(name))}  ${visible(sides.a)} → ${visible(sides.b)}`;
  const sections = [
    ...SECTIONS.filter(({ folded }) => options.all || folded !== true).map((each) =>
      section(each, diff.changes.filter(each.has), unitFor, options.all, style),
    ),
    limitLines(diff.limits, unitFor),
    concessionLines(diff.concessions),
    options.all ? [] : foldedLines(diff.changes),
  ].filter((lines) => lines.length > 0);
  if (sections.length === 0) sections.push(['nothing to compare']);
  return `${[[heading], ...sections].map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

interface Section {
  readonly title: string;
  /** Only counted, unless all is asked for. */
  readonly folded?: boolean;
  /** Only the positions, unless all is asked for. */
  readonly listed?: boolean;
  readonly has: (change: Change) => boolean;
}

const SECTIONS: readonly Section[] = [
  { title: 'newly out', has: ({ crossed }) => crossed === 'out' },
  { title: 'newly in', has: ({ crossed }) => crossed === 'in' },
  { title: 'changed', has: ({ crossed, state }) => crossed === null && state === 'real' },
  { title: 'measured only after', listed: true, has: ({ state }) => state === 'appeared' },
  { title: 'measured only before', listed: true, has: ({ state }) => state === 'disappeared' },
  {
    title: 'within their uncertainty',
    folded: true,
    has: ({ crossed, state }) => crossed === null && state === 'within',
  },
  { title: 'the same', folded: true, has: ({ crossed, state }) => crossed === null && state === 'same' },
];

function section(
  { title, listed }: Section,
  changes: readonly Change[],
  unitFor: UnitFor,
  all: boolean,
  style: TextStyle,
): readonly string[] {
  if (changes.length === 0) return [];
  const groups = [...groupsOf(changes)];
  const lines =
    listed === true && !all
      ? groups.map(([label, group]) => `  ${visible(label)}  ${group.map(positionWord).join(', ')}`)
      : groups.flatMap(([label, group]) => groupLines(label, group, unitFor, style));
  return [style.paint.strong(title), ...lines];
}

/** By characteristic, in the order of the sheet. */
function groupsOf(changes: readonly Change[]): ReadonlyMap<string, readonly Change[]> {
  const groups = new Map<string, Change[]>();
  for (const change of changes) {
    const { label } = change.characteristic;
    groups.set(label, [...(groups.get(label) ?? []), change]);
  }
  return groups;
}

/** `3`, or `3 (out)`: what was out and is not there any more is not passed over. */
function positionWord({ position, a, b }: Change): string {
  const verdict = (b ?? a)?.row.judgement.verdict;
  const isNews = verdict === 'out' || verdict === 'accepted' || verdict === 'undecided';
  return visible(isNews ? `${position} (${verdict})` : position);
}

function groupLines(
  label: string,
  group: readonly Change[],
  unitFor: UnitFor,
  style: TextStyle,
): readonly string[] {
  const [first] = group;
  const row = (first?.b ?? first?.a)?.row;
  if (row === undefined) return [];
  const lines = fitting(style.width, SHAPES, (shape) =>
    layTable(
      group.map((change) => changeCells(change, shape, unitFor, style)),
      COLUMNS,
      4,
    ),
  );
  return [`  ${visible(label)}, ${unitFor(row).name}`, ...lines];
}

/** What gives way first where the window is narrow: what is not like for like, then the uncertainty. */
interface Shape {
  readonly unlike: boolean;
  readonly uncertainty: boolean;
}

const SHAPES: readonly Shape[] = [
  { unlike: true, uncertainty: true },
  { unlike: false, uncertainty: true },
  { unlike: false, uncertainty: false },
];

function changeCells(change: Change, shape: Shape, unitFor: UnitFor, { paint }: TextStyle): readonly Cell[] {
  const { a, b, crossed, unlike } = change;
  const row = (b ?? a)?.row;
  if (row === undefined) return [];
  const printing = finer(a, b, unitFor);
  const colour =
    crossed === 'out' ? paint.bad : crossed === 'in' ? paint.good : (text: string): string => text;
  return [
    cell(positionText(row)),
    cell(valueText(a, printing)),
    cell(valueText(b, printing)),
    cell(deltaText(change, shape, printing)),
    painted(verdictsText(change, printing), colour),
    painted(shape.unlike && unlike.length > 0 ? `other ${unlike.join(', ')}` : '', paint.notice),
  ];
}

/** Both sides with the digits of the finer. */
function finer(a: StateValue | undefined, b: StateValue | undefined, unitFor: UnitFor): Printing {
  const both = [a, b].flatMap((side) => (side === undefined ? [] : [printingOf(side.row, unitFor)]));
  const [first] = both;
  if (first === undefined) throw new RangeError('a change has at least one side');
  return { unit: first.unit, decimals: Math.max(...both.map(({ decimals }) => decimals)) };
}

function valueText(side: StateValue | undefined, printing: Printing): string {
  const judged = side?.row.routes[0];
  return judged === undefined ? '' : readingText(judged, printing);
}

/** `+0.0011 ±0.00024`. */
function deltaText(
  { delta, expanded }: Change,
  { uncertainty }: Shape,
  { unit, decimals }: Printing,
): string {
  if (delta === null) return '';
  if (delta.n === 0n) return 'no change';
  const sign = delta.n < 0n ? '−' : '+';
  const u =
    !uncertainty || expanded === null || expanded === 0 ? '' : ` ±${formatUncertainty(expanded, unit)}`;
  return `${sign}${formatNumber(absolute(delta), unit, decimals)}${u}`;
}

function verdictsText({ a, b, moved }: Change, printing: Printing): string {
  const text = (side: StateValue | undefined): string =>
    side === undefined ? '' : verdictText(side.row, printing);
  const [before, after] = [a?.row.judgement.verdict, b?.row.judgement.verdict];
  const limit = moved === null ? '' : moved === 'toward' ? ', nearer its limit' : ', away from its limit';
  if (a === undefined || b === undefined) return text(a ?? b);
  if (before === null || after === null) return text(b);
  return before === after ? `${text(b)}${limit}` : `${before} → ${text(b)}`;
}

function limitLines(limits: readonly LimitChange[], unitFor: UnitFor): readonly string[] {
  if (limits.length === 0) return [];
  const lines = limits.map(({ row, band, side, a, b }) => {
    const printing = printingOf(row, unitFor);
    const text = (limit: LimitChange['a']): string =>
      limit === undefined ? 'none' : formatLimit(limit.amount, printing.unit, printing.decimals);
    const name = visible(`${row.characteristic.label} ${positionText(row)}`.trim());
    return `  ${name}: ${band} ${side} ${text(a)} → ${text(b)} ${printing.unit.name}`;
  });
  return ['limits changed', ...lines];
}

function concessionLines(concessions: readonly ConcessionChange[]): readonly string[] {
  if (concessions.length === 0) return [];
  const lines = concessions.map(({ concession, state }) => {
    const value = [
      concession.upTo && `up to ${concession.upTo.written}`,
      concession.downTo && `down to ${concession.downTo.written}`,
    ];
    const what = `${concession.measure.id} ${concession.positions.join(', ')} ${value.filter(Boolean).join(' and ')}`;
    return `  ${state}  ${visible(what)}: ${visible(concession.reason)}`;
  });
  return ['concessions', ...lines];
}

function foldedLines(changes: readonly Change[]): readonly string[] {
  const counts = SECTIONS.filter(({ folded }) => folded === true).flatMap(({ title, has }) => {
    const n = changes.filter(has).length;
    return n === 0 ? [] : [`${n} ${title}`];
  });
  return counts.length === 0 ? [] : [`${counts.join(', ')}: --all lists them`];
}
