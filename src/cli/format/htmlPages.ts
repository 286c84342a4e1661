import type { Written } from '../../output/escape/language.ts';
import type { Sheet } from '../../output/report/sheet.ts';
import { sha256Base64 } from '../../shell/process/digest.ts';
import type { FormatChoice } from './formatChoice.ts';

/** Makes a page of a sheet. What it takes is loaded only where a call asks for it. */
export async function htmlPages(choices: readonly FormatChoice[]): Promise<(sheet: Sheet) => Written> {
  if (!choices.some(({ format }) => format === 'html')) return notAsked;
  const { sheetHtml } = await import('../../output/page/page.ts');
  return (sheet) => sheetHtml(sheet, { digest: sha256Base64 });
}

const notAsked = (): never => {
  throw new Error('a page that was not asked for');
};
