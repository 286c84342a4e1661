import { renderToStaticMarkup } from 'preact-render-to-string';
import type { Element } from '../page/element.ts';
import { letOut, type Written } from './language.ts';

/** A page as it is handed over: its elements were made of escaped texts. */
export const writtenHtml = (page: Element): Written =>
  letOut(`<!DOCTYPE html>\n${renderToStaticMarkup(page)}\n`);
