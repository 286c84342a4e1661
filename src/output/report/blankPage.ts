import type { BlankBlock, BlankSheet } from '../bench/blankSheet.ts';
import { type Block, type Column, type Fact, items, type Sheet, section, type TableBlock } from './sheet.ts';

/** The blank sheet of a session, with boxes for a pencil. */
export const blankPage = (
  { engine, stage, cautions, blocks }: BlankSheet,
  facts: readonly Fact[],
): Sheet => ({
  title: engine,
  about: `blank sheet: ${stage}`,
  facts,
  status: undefined,
  verdict: '',
  reasons: [],
  sections: [
    ...section('Session', items('blanks', ['date', 'by', 'hours', 'temperature of the parts'])),
    ...section('Readings, in the order of the bench', blocks.map(readings)),
    ...section('Seen, and to be done', items('blanks', ['', '', '', ''])),
  ],
  cautions: [MANUAL_FIRST, ...cautions],
});

const MANUAL_FIRST = "The maker's manual comes first: its limits, its order and places of measuring.";

/** Where a part is read at one place, and all by the same limits, boxes beside each other are enough. */
function readings(block: BlankBlock): Block {
  const { heading, places, rows } = block;
  const isOnePlace = places.length === 1 && rows.every(({ limits }) => limits === '');
  return isOnePlace
    ? { kind: 'fields', title: heading, notes: notesOf(block), names: rows.map(({ position }) => position) }
    : blankTable(block);
}

const notesOf = ({ limits, instrument, how, caution }: BlankBlock): readonly string[] => [
  [limits, `with ${instrument ?? '____________'}`].filter(Boolean).join('; '),
  ...(how === undefined ? [] : [how]),
  ...(caution === undefined ? [] : [`Caution: ${caution}`]),
];

function blankTable(block: BlankBlock): TableBlock {
  const { heading, places, rows } = block;
  const hasLimits = rows.some(({ limits }) => limits !== '');
  return {
    kind: 'table',
    title: heading,
    notes: notesOf(block),
    columns: [
      { title: '', align: 'left' },
      ...places.map((title): Column => ({ title, align: 'left', isRoom: true })),
      ...(hasLimits ? [{ title: 'limits', align: 'left' } as const] : []),
    ],
    rows: rows.map(({ position, limits }) => [
      position,
      ...places.map(() => ''),
      ...(hasLimits ? [limits] : []),
    ]),
    folded: undefined,
  };
}
