import { writtenMarkdown } from '../../escape/markdown.ts';
import type { Writer } from '../../formats.ts';
import { pageMarkdown } from '../pageMarkdown.ts';
import type { ShownPage } from './shownPage.ts';

export const markdown: Writer<ShownPage> = ({ page }) => writtenMarkdown(pageMarkdown(page));
