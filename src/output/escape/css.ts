/** Text of a document as a string of a style sheet: nothing but letters and digits stands for itself. */
export const cssString = (text: string): string =>
  `"${[...text].map((each) => (/[A-Za-z0-9 ]/.test(each) ? each : codeOf(each))).join('')}"`;

/** The blank ends the number; one that is meant stands behind it. */
const codeOf = (character: string): string => `\\${(character.codePointAt(0) ?? 0).toString(16)} `;
