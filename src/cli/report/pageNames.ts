import { sha256 } from '../../shell/process/digest.ts';

/** The board itself. */
export const INDEX = 'index.html';

/** Where the page of an engine lies, from the board. */
export const enginePage = (folder: string): string => `${folder === '.' ? 'sheet' : folder}.html`;

/**
 * Where that of a part lies: `parts/main_shells-A12-10.html`. A mark of other signs, which no disk need tell apart from one of
 * these, has a digest behind it.
 */
export function partPage(name: string, mark: string): string {
  const isPlain = /^[a-z]+(?: [a-z]+)*$/.test(name) && /^[A-Z\d](?:[A-Z\d.-]{0,40}[A-Z\d])?$/.test(mark);
  const words = `${name.replaceAll(' ', '_')}-${mark}`;
  if (isPlain) return `parts/${words}.html`;
  const shown = words.replace(/[^A-Za-z\d.-]+/g, '-').slice(0, 40);
  return `parts/${shown}_${sha256(`${name}\n${mark}`).slice(0, 12)}.html`;
}
