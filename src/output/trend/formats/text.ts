import { revisionText } from '../../diff/revision.ts';
import { writtenLines } from '../../escape/line.ts';
import type { Writer } from '../../formats.ts';
import { trendLines } from '../trendText.ts';
import type { ShownTrend } from './shownTrend.ts';

export const text: Writer<ShownTrend> = ({ view, found, revision, unitFor }, { style }) => {
  const read = revision === undefined ? [] : [revisionText(revision, style), ''];
  return writtenLines([...read, ...trendLines(view, found, unitFor, style)]);
};
