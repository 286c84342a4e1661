import type { EngineDiff } from '../../compare/diff.ts';
import { type Markdown, markdownList, markdownTable, md } from '../escape/markdown.ts';
import { type Comparison, notComparedText, type Sides, sidesText } from './comparison.ts';
import { diffView, NOTHING_MEASURED, type SectionView } from './diffView.ts';

/** A comparison for a pull request or a note: a heading an engine, a table a section. */
export function diffMarkdown(
  { sides, engines, notCompared }: Comparison,
  options: { readonly all: boolean },
): readonly Markdown[] {
  if (engines.length + notCompared.length === 0) return [md`${sidesText(sides)}: nothing changed`];
  const blocks = engines.flatMap((each) => engineBlocks(each, sides, options.all));
  return [...blocks, ...notCompared.map((each) => md`${notComparedText(each)}`)];
}

function engineBlocks(engine: EngineDiff, sides: Sides, all: boolean): readonly Markdown[] {
  const { name, sides: about, warmth, sections, counted } = diffView(engine, sides, all);
  const isEmpty = sections.length === 0 && counted === '';
  return [
    md`### ${name}`,
    ...[about, warmth].filter(Boolean).map((each) => md`${each}`),
    ...sections.flatMap((each) => [md`#### ${each.title}`, sectionBlock(each)]),
    ...[counted, isEmpty ? NOTHING_MEASURED : ''].filter(Boolean).map((each) => md`${each}`),
  ];
}

const sectionBlock = (section: SectionView): Markdown =>
  'texts' in section
    ? markdownList(section.texts)
    : markdownTable(
        ['', 'before', 'after', 'change', 'verdict', 'not like for like'],
        section.groups.flatMap(({ rows }) =>
          rows.map(({ named, before, after, change, verdicts, unlike }) => [
            named,
            before,
            after,
            change,
            verdicts,
            unlike,
          ]),
        ),
      );
