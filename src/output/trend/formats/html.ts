import type { Writer } from '../../formats.ts';
import { sheetHtml } from '../../page/page.ts';
import { trendSheet } from '../trendSheet.ts';
import type { ShownTrend } from './shownTrend.ts';

export const html: Writer<ShownTrend> = ({ view, found, revision, unitFor }, context) =>
  sheetHtml(trendSheet(view, found, revision, unitFor, context.style), context);
