import { writtenMarkdown } from '../../escape/markdown.ts';
import type { Writer } from '../../formats.ts';
import { diffMarkdown } from '../diffMarkdown.ts';
import type { ShownDiff } from './shownDiff.ts';

export const markdown: Writer<ShownDiff> = (shown) => writtenMarkdown(diffMarkdown(shown, shown));
