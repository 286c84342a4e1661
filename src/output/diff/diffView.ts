import type { Change } from '../../compare/change.ts';
import { type EngineDiff, newsOf } from '../../compare/diff.ts';
import type { EngineState } from '../../compare/state.ts';
import { shortName } from '../../layout/naming.ts';
import { headedWithUnit } from '../../quantity/format.ts';
import { positionText } from '../check/view/rowView.ts';
import { type Sides, sidesText } from './comparison.ts';
import { type DiffSection, foldedText, groupsOf, sectionsOf } from './diffSections.ts';
import {
  concessionText,
  deltaText,
  limitChangeText,
  positionWord,
  printingOfChange,
  REWRITTEN,
  rewrittenTexts,
  sideText,
  unlikeText,
  verdictsText,
  warmthText,
} from './diffWords.ts';

/** What a comparison says of one engine, the worst first: every format that people read is written from it. */
export interface DiffView {
  readonly name: string;
  readonly sides: string;
  readonly warmth: string;
  readonly sections: readonly SectionView[];
  /** What is not shown: `12 within their uncertainty`. */
  readonly counted: string;
  /** Something was measured on both sides. */
  readonly hasChanges: boolean;
}

export type SectionView =
  | { readonly title: string; readonly texts: readonly string[] }
  | { readonly title: string; readonly groups: readonly GroupView[] };

/** The changes of one characteristic. */
export interface GroupView {
  readonly heading: string;
  /** What is alike in all of them of how they are unlike. */
  readonly unlike: string;
  readonly rows: readonly ChangeView[];
}

export interface ChangeView {
  /** `main bearing clearance 3 centre, in`. */
  readonly named: string;
  readonly where: string;
  readonly shortWhere: string;
  readonly before: string;
  readonly after: string;
  readonly change: string;
  readonly changeAlone: string;
  readonly verdicts: string;
  readonly unlike: string;
  readonly tone: 'good' | 'bad' | 'notice' | 'plain';
}

export const NOTHING_MEASURED = 'nothing measured on either side';

export function diffView({ name, diff, unitFor }: EngineDiff, sides: Sides, all: boolean): DiffView {
  const sections = sectionsOf(diff);
  return {
    name,
    sides: sidesText(sides),
    warmth: warmthText(diff.changes),
    sections: [
      ...sections.filter(({ folded }) => all || !folded).map((each) => sectionView(each, unitFor, all)),
      ...listView(REWRITTEN, diff.rewritten.flatMap(rewrittenTexts)),
      ...listView(
        'limits changed',
        diff.limits.map((each) => limitChangeText(each, unitFor)),
      ),
      ...(['opened', 'closed'] as const).flatMap((state) =>
        listView(
          `concessions ${state}`,
          diff.concessions.filter((each) => each.state === state).map(concessionText),
        ),
      ),
    ],
    counted: all ? '' : foldedText(sections),
    hasChanges: diff.changes.some(({ delta }) => delta !== null),
  };
}

const listView = (title: string, texts: readonly string[]): readonly SectionView[] =>
  texts.length === 0 ? [] : [{ title, texts }];

function sectionView(
  { title, listed, changes }: DiffSection,
  unitFor: EngineState['unitFor'],
  all: boolean,
): SectionView {
  const groups = groupsOf(changes);
  return listed && !all
    ? {
        title,
        texts: groups.map(([label, group]) => `${label}  ${group.map(positionWord).join(', ')}`.trimEnd()),
      }
    : { title, groups: groups.map(([label, group]) => groupView(label, group, unitFor)) };
}

function groupView(label: string, group: readonly Change[], unitFor: EngineState['unitFor']): GroupView {
  const rows = group.map((each) => changeView(each, label, unitFor));
  const [first] = group;
  const unit = first && printingOfChange(first, unitFor).unit;
  const [unlike = ''] = rows.map((each) => each.unlike);
  return {
    heading: unit === undefined ? label : headedWithUnit(label, unit),
    unlike: rows.every((each) => each.unlike === unlike) ? unlike : '',
    rows,
  };
}

function changeView(change: Change, label: string, unitFor: EngineState['unitFor']): ChangeView {
  const row = (change.b ?? change.a)?.row;
  const printing = printingOfChange(change, unitFor);
  const where = row === undefined ? '' : positionText(row);
  return {
    named: headedWithUnit(`${label} ${where}`, printing.unit),
    where,
    shortWhere: row === undefined ? '' : shortName(row.position),
    before: sideText(change.a, printing),
    after: sideText(change.b, printing),
    change: deltaText(change, printing),
    changeAlone: deltaText(change, printing, false),
    verdicts: verdictsText(change, printing),
    unlike: unlikeText(change.unlike),
    tone: toneOf(change),
  };
}

function toneOf(change: Change): ChangeView['tone'] {
  const news = newsOf(change);
  if (news === null) return 'plain';
  if (news === 'newly in') return 'good';
  return news === 'newly out' && change.b?.row.judgement.verdict === 'out' ? 'bad' : 'notice';
}
