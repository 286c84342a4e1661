import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import type { Texts } from '../../shell/discover/loadEngines.ts';

/** The texts of documents that have diagnostics. */
export const textsWith = (diagnostics: readonly Diagnostic[], texts: Texts): Texts =>
  new Map(
    diagnostics.flatMap(({ place: { path } }) => {
      const text = texts.get(path);
      return text === undefined ? [] : [[path, text] as const];
    }),
  );
