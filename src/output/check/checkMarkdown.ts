import { type Markdown, markdownList, markdownTable, md } from '../escape/markdown.ts';
import type { EngineView, WholeView } from './view/engineView.ts';
import type { FindingsView, FindingView } from './view/findingsView.ts';
import type { QuietView } from './view/quietView.ts';
import type { RowView, ValueView } from './view/rowView.ts';
import type { SessionView, TroubleView } from './view/sessionView.ts';
import type { TableView } from './view/tableView.ts';

/** Where an engine stands, its sessions, or what is wrong with it; none where nothing of it is shown. */
export function engineBlocks(view: EngineView): readonly Markdown[] {
  const { whole, trouble, notJudged } = view;
  const unjudged = notJudged.map((path) => md`**${path}: not judged**, since it has problems`);
  if (whole !== undefined) return [headingBlock(view), ...wholeBlocks(whole, unjudged)];
  if (trouble !== undefined) return [headingBlock(view), ...unjudged, ...troubleBlocks(trouble)];
  return view.answer === undefined || unjudged.length === 0 ? [] : [headingBlock(view), ...unjudged];
}

/** Findings as a list, each with its place. */
export const findingsBlocks = ({ shown, folded }: FindingsView): readonly Markdown[] => [
  ...(shown.length === 0 ? [] : [markdownList(shown.map(findingItem))]),
  ...paragraph(folded),
];

const headingBlock = ({ name, folder }: EngineView): Markdown =>
  folder === '.' ? md`## ${name}` : md`## ${name} (${folder})`;

const wholeBlocks = (view: WholeView, unjudged: readonly Markdown[]): readonly Markdown[] => [
  md`${view.rule}`,
  ...(view.hasNoSession ? [md`no session yet`] : []),
  ...unjudged,
  ...view.sessions.flatMap(sessionBlocks),
  ...listBlock('Closed', view.closed),
  ...listBlock('Still open', view.open),
];

const troubleBlocks = ({ tables, findings, more }: TroubleView): readonly Markdown[] => [
  ...tables.flatMap(tableBlocks),
  ...findingsBlocks(findings),
  ...paragraph(more),
];

function sessionBlocks(view: SessionView): readonly Markdown[] {
  const { title, answer, steppedBack } = view;
  return [
    ...(title === undefined ? [] : [md`### ${title.name}${title.beside}`]),
    ...(answer === undefined ? [] : [md`**${answer.text}**`, md`${answer.standing}`]),
    ...view.tables.flatMap(tableBlocks),
    ...quietBlock(view.quiet),
    ...quietBlock(view.lastKnown),
    ...paragraph(view.leftOut),
    ...(view.tightened.length === 0 ? [] : [markdownList(view.tightened)]),
    ...findingsBlocks({ ...view.findings, folded: '' }),
    ...paragraph(view.counts),
    ...paragraph(view.findings.folded),
    ...paragraph(steppedBack.heading),
    ...(steppedBack.readings.length === 0 ? [] : [markdownList(steppedBack.readings)]),
  ];
}

const tableBlocks = ({ heading, limits, rows }: TableView): readonly Markdown[] => [
  limits === '' ? md`**${heading}**` : md`**${heading}** ${limits}`,
  markdownTable(['', 'reading', 'verdict', 'notes'], rows.flatMap(rowsCells)),
];

function rowsCells(view: RowView): readonly (readonly (string | Markdown)[])[] {
  const [judged, ...others] = view.values;
  const verdict = [view.verdict, view.near].filter(Boolean).join(', ');
  const where = [view.group, view.where].filter(Boolean).join(': ');
  const notes = judged === undefined ? [view.instead] : [...judged.notes, view.limits, ...detailOf(judged)];
  return [
    [where, judged?.reading ?? '', emphasised(view, verdict), notes.filter(Boolean).join('; ')],
    ...others.map((other) => ['', other.reading, other.agreement, detailOf(other).join('; ')]),
  ];
}

const detailOf = ({ uncertainty, from }: ValueView): readonly string[] =>
  uncertainty === '' ? [] : [uncertainty, from];

const emphasised = ({ given }: RowView, verdict: string): string | Markdown =>
  given === 'out' ? md`**${verdict}**` : verdict;

const findingItem = ({ severity, message, code, place, limitPlace, known }: FindingView): Markdown => {
  const limit =
    limitPlace === undefined ? '' : `, limit ${limitPlace.path}:${limitPlace.line}:${limitPlace.column}`;
  // As one text: a host makes a picture of a line between two colons, such as :100: or :1234:.
  const where = `${place.path}:${place.line}:${place.column}${limit}`;
  return md`**${severity}** ${message} (${code}, ${where}${known === true ? ', known' : ''})`;
};

const quietBlock = (views: readonly QuietView[]): readonly Markdown[] =>
  views.length === 0
    ? []
    : [
        markdownTable(
          ['', 'from the least to the greatest', ''],
          views.map(({ name, range, word }) => [name, range, word]),
        ),
      ];

const listBlock = (title: string, texts: readonly string[]): readonly Markdown[] =>
  texts.length === 0 ? [] : [md`**${title}**`, markdownList(texts)];

const paragraph = (text: string): readonly Markdown[] => (text === '' ? [] : [md`${text}`]);
