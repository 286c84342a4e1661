import type { Finding } from '../../checks/finding.ts';
import type { Diagnostic } from '../../diagnostic/diagnostic.ts';
import type { Place } from '../../diagnostic/place.ts';
import type { diagnosticJson, findingJson } from '../../output/check/checkJson.ts';
import type { placeJson } from '../../output/check/placeJson.ts';

export type DiagnosticJson = ReturnType<typeof diagnosticJson>;
export type FindingJson = ReturnType<typeof findingJson>;

/** What JSON says of a problem with a document, as the problem itself. */
export const diagnosticFrom = ({ code, message, help, place }: DiagnosticJson): Diagnostic => ({
  ...{ code, message, place: placeFrom(place) },
  ...(help === null ? {} : { help }),
});

/** A finding of no engine has no position. */
export const findingFrom = ({ code, severity, message, place, known }: FindingJson): Finding => ({
  ...{ code, severity, message, place: placeFrom(place) },
  ...{ measure: undefined, position: undefined, at: undefined, limitPlace: undefined },
  ...(known === undefined ? {} : { known }),
});

const placeFrom = ({ path, line, column, end_line, end_column }: ReturnType<typeof placeJson>): Place => ({
  ...{ path, line, column },
  ...{ endLine: end_line, endColumn: end_column },
});
