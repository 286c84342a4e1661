import type { TighteningCard } from '../../torque/card.ts';
import {
  type Block,
  type Column,
  items,
  type Sheet,
  type SheetSection,
  section,
  table,
} from '../report/sheet.ts';
import {
  type CardOrigin,
  type CardSection,
  cardView,
  type LoadSection,
  loadTable,
  type PassView,
} from './cardView.ts';
import { jointPicture } from './jointPicture.ts';

/** The tightening card as a page for the bench: one side of paper, with room to tick each pass. */
export function cardSheet(card: TighteningCard, origin: CardOrigin): Sheet {
  const { title, about, notes, joint, sections, source } = cardView(card, origin);
  const picture = jointPicture(joint);
  return {
    title,
    about,
    facts: [],
    status: undefined,
    verdict: '',
    reasons: [],
    sections: [
      ...section(
        'joint',
        items('text', notes),
        picture === undefined ? [] : [{ kind: 'pictures', pictures: [picture] }],
      ),
      ...sections.flatMap(cardSection),
    ],
    cautions: [source],
    isOneSide: true,
  };
}

const cardSection = (each: CardSection): readonly SheetSection[] => section(each.title, blocksOf(each));

function blocksOf(each: CardSection): readonly Block[] {
  switch (each.kind) {
    case 'boxes':
      return items('boxes', each.texts);
    case 'passes':
      return table('', PASS_COLUMNS, each.passes.flatMap(passRows));
    case 'loads':
      return loads(each);
    default:
      return items('list', each.texts);
  }
}

const PASS_COLUMNS: readonly (string | Column)[] = [
  'pass',
  'do',
  { title: 'amount', align: 'right' },
  { title: 'other units', align: 'right' },
  { title: 'done', align: 'left', isRoom: true },
];

const passRows = ({ pass, lines, asides }: PassView): readonly (readonly string[])[] => [
  ...lines.map(({ does, amount, converted }, index) => [
    index === 0 ? pass : '',
    does,
    amount,
    converted,
    '',
  ]),
  ...asides.map((text) => ['', text, '', '', '']),
];

function loads(section: LoadSection): readonly Block[] {
  const { heads, cells } = loadTable(section);
  return [...table('', heads, cells), ...items('list', section.texts)];
}
