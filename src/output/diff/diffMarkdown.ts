import type { Change } from '../../compare/change.ts';
import type { EngineDiff } from '../../compare/diff.ts';
import type { EngineState } from '../../compare/state.ts';
import { headedWithUnit } from '../../quantity/format.ts';
import { positionText } from '../check/view/rowView.ts';
import { type Markdown, markdownList, markdownTable, md } from '../escape/markdown.ts';
import { type Comparison, notComparedText, type Sides, sidesText } from './comparison.ts';
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

/** A comparison for a pull request or a note: a heading an engine, a table a section. */
export function diffMarkdown(
  { sides, engines, notCompared }: Comparison,
  options: { readonly all: boolean },
): readonly Markdown[] {
  if (engines.length + notCompared.length === 0) return [md`${sidesText(sides)}: nothing changed`];
  const blocks = engines.flatMap((each) => engineBlocks(each, sides, options.all));
  return [...blocks, ...notCompared.map((each) => md`${notComparedText(each)}`)];
}

function engineBlocks({ name, diff, unitFor }: EngineDiff, sides: Sides, all: boolean): readonly Markdown[] {
  const sections = sectionsOf(diff);
  const folded = all ? '' : foldedText(sections);
  const warmth = warmthText(diff.changes);
  return [
    md`### ${name}`,
    md`${sidesText(sides)}`,
    ...(warmth === '' ? [] : [md`${warmth}`]),
    ...sections
      .filter((each) => all || !each.folded)
      .flatMap((each) => [md`#### ${each.title}`, sectionBlock(each, unitFor, all)]),
    ...listBlock(REWRITTEN, diff.rewritten.flatMap(rewrittenTexts)),
    ...listBlock(
      'limits changed',
      diff.limits.map((each) => limitChangeText(each, unitFor)),
    ),
    ...(['opened', 'closed'] as const).flatMap((state) =>
      listBlock(
        `concessions ${state}`,
        diff.concessions.filter((each) => each.state === state).map(concessionText),
      ),
    ),
    ...(folded === '' ? [] : [md`${folded}`]),
  ];
}

const listBlock = (title: string, texts: readonly string[]): readonly Markdown[] =>
  texts.length === 0 ? [] : [md`#### ${title}`, markdownList(texts)];

function sectionBlock(
  { listed, changes }: DiffSection,
  unitFor: EngineState['unitFor'],
  all: boolean,
): Markdown {
  if (listed && !all) {
    return markdownList(
      groupsOf(changes).map(([label, group]) => `${label} ${group.map(positionWord).join(', ')}`.trim()),
    );
  }
  return markdownTable(
    ['', 'before', 'after', 'change', 'verdict', 'not like for like'],
    changes.map((change) => rowCells(change, unitFor)),
  );
}

function rowCells(change: Change, unitFor: EngineState['unitFor']): readonly string[] {
  const row = (change.b ?? change.a)?.row;
  const printing = printingOfChange(change, unitFor);
  const where = row === undefined ? '' : positionText(row);
  return [
    headedWithUnit(`${change.characteristic.label} ${where}`, printing.unit),
    sideText(change.a, printing),
    sideText(change.b, printing),
    deltaText(change, printing),
    verdictsText(change, printing),
    unlikeText(change.unlike),
  ];
}
