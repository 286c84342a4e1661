import type { Writer } from '../../formats.ts';
import { sheetHtml } from '../../page/page.ts';
import { NO_LINKS } from '../../report/links.ts';
import { pageSheet } from '../../report/pageSheet.ts';
import type { ShownPage } from './shownPage.ts';

export const html: Writer<ShownPage> = ({ page }, context) =>
  sheetHtml(pageSheet(page, [], NO_LINKS), context);
