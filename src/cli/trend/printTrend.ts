import type { Row } from '../../checks/judge/row.ts';
import type { Trend } from '../../compare/trend.ts';
import { revisionMarkdown, revisionText } from '../../output/diff/revision.ts';
import { json, writtenJson } from '../../output/escape/json.ts';
import { writtenLines } from '../../output/escape/line.ts';
import { writtenMarkdown } from '../../output/escape/markdown.ts';
import { trendCsv } from '../../output/trend/trendCsv.ts';
import { trendJson } from '../../output/trend/trendJson.ts';
import { trendMarkdown } from '../../output/trend/trendMarkdown.ts';
import { trendSheet } from '../../output/trend/trendSheet.ts';
import { trendLines } from '../../output/trend/trendText.ts';
import { trendView } from '../../output/trend/trendView.ts';
import type { Unit } from '../../quantity/units.ts';
import type { World } from '../../shell/world.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { htmlPages } from '../format/htmlPages.ts';
import { printFormats } from '../format/outputs.ts';

/** A trend, of an engine or of a part, and what is said about it. */
interface FoundTrend {
  /** Of what it is: it heads the tables. */
  readonly name: string;
  readonly about: Parameters<typeof trendJson>[0];
  readonly found: Trend;
  /** What sessions changed and no part is called. */
  readonly unknown: readonly string[];
  readonly revision: Parameters<typeof trendJson>[2];
  readonly exit: 0 | 2;
  readonly unitFor: (row: Pick<Row, 'characteristic'>) => Unit;
}

export async function printTrend(
  { name, about, found, unknown, revision, exit, unitFor }: FoundTrend,
  choices: readonly FormatChoice[],
  world: World,
): Promise<void> {
  const html = await htmlPages(choices);
  const view = trendView(name, found, unknown, unitFor);
  const data = () => trendJson(about, found, revision, unitFor, exit);
  printFormats(choices, world, (format, style) => {
    if (format === 'json') return writtenJson(json`${data()}\n`);
    if (format === 'csv') return trendCsv(data());
    if (format === 'html') return html(trendSheet(view, found, revision, unitFor, style));
    if (format === 'markdown') {
      const read = revision === undefined ? [] : [revisionMarkdown(revision)];
      return writtenMarkdown([...read, ...trendMarkdown(view, found, unitFor, style)]);
    }
    const read = revision === undefined ? [] : [revisionText(revision, style), ''];
    return writtenLines([...read, ...trendLines(view, found, unitFor, style)]);
  });
}
