import { revisionMarkdown } from '../../diff/revision.ts';
import { writtenMarkdown } from '../../escape/markdown.ts';
import type { Writer } from '../../formats.ts';
import { trendMarkdown } from '../trendMarkdown.ts';
import type { ShownTrend } from './shownTrend.ts';

export const markdown: Writer<ShownTrend> = ({ view, found, revision, unitFor }, { style }) => {
  const read = revision === undefined ? [] : [revisionMarkdown(revision)];
  return writtenMarkdown([...read, ...trendMarkdown(view, found, unitFor, style)]);
};
