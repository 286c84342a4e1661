import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import type { OpenedDocument } from '../../documents/opened.ts';

/** A document of which nothing can be taken, not even what it is: that is its problem. */
export const withoutText = (path: string, problem: Diagnostic): OpenedDocument => ({
  path,
  source: { path: problem.place.path, text: '', place: () => problem.place },
  kind: undefined,
  root: undefined,
  problems: [problem],
});
