import type { Engine } from '../../documents/assemble.ts';
import { notTakenText } from '../../plan/closing/openTexts.ts';

/** Stands before the answer of every page that is made without what a document says. */
export const afterNotTaken = ({ broken }: Engine, answer: readonly string[]): readonly string[] => [
  ...broken.map((each) => `NOT ALL IS KNOWN: ${notTakenText(each)}; this page is made without it`),
  ...answer,
];
