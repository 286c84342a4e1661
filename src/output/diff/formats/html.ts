import type { Writer } from '../../formats.ts';
import { sheetHtml } from '../../page/page.ts';
import { diffSheet } from '../diffSheet.ts';
import type { ShownDiff } from './shownDiff.ts';

export const html: Writer<ShownDiff> = (shown, context) => sheetHtml(diffSheet(shown, shown), context);
