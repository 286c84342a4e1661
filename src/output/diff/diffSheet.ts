import type { EngineDiff } from '../../compare/diff.ts';
import {
  type Block,
  type Column,
  items,
  type Sheet,
  type SheetSection,
  section,
  table,
} from '../report/sheet.ts';
import { type Comparison, notComparedText, type Sides, sidesText } from './comparison.ts';
import { diffView, NOTHING_MEASURED, type SectionView } from './diffView.ts';

/** A comparison as a page: a section for each kind of change of each engine, the worst first. */
export function diffSheet(
  { sides, engines, notCompared }: Comparison,
  options: { readonly all: boolean },
): Sheet {
  const [only] = engines;
  const isOne = engines.length === 1 && only !== undefined;
  return {
    title: isOne ? only.name : 'What changed',
    about: sidesText(sides),
    facts: [],
    status: undefined,
    verdict: engines.length + notCompared.length === 0 ? 'nothing changed' : '',
    reasons: notCompared.map(notComparedText),
    sections: engines.flatMap((each) =>
      engineSections(each, sides, options.all, isOne ? '' : `${each.name}: `),
    ),
    cautions: [],
  };
}

function engineSections(
  engine: EngineDiff,
  sides: Sides,
  all: boolean,
  before: string,
): readonly SheetSection[] {
  const { warmth, sections, counted } = diffView(engine, sides, all);
  const isEmpty = sections.length === 0 && counted === '';
  const rest = [warmth, counted, isEmpty ? NOTHING_MEASURED : ''].filter(Boolean);
  return [
    ...sections.flatMap((each) => section(`${before}${each.title}`, sectionBlocks(each))),
    ...section(`${before}${sections.length === 0 ? 'compared' : 'beside these'}`, items('list', rest)),
  ];
}

const sectionBlocks = (view: SectionView): readonly Block[] =>
  'texts' in view
    ? items('list', view.texts)
    : view.groups.flatMap(({ heading, rows }) =>
        table(
          heading,
          COLUMNS,
          rows.map(({ where, before, after, change, verdicts, unlike }) => [
            where,
            before,
            after,
            change,
            verdicts,
            unlike,
          ]),
        ),
      );

const figures = (title: string): Column => ({ title, align: 'right' });

const COLUMNS: readonly (string | Column)[] = [
  'position',
  figures('before'),
  figures('after'),
  figures('change'),
  'verdict',
  'not like for like',
];
