import type { Finding, Severity } from '../../../checks/finding.ts';
import type { Diagnostic } from '../../../diagnostic/diagnostic.ts';
import { diagnosticJson, findingJson } from '../checkJson.ts';
import type { placeJson } from '../placeJson.ts';
import type { EngineJson } from '../shownEngine.ts';

/** A finding, or a problem with a document, as formats for other programs take it: with whose it is. */
export interface Reported {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  /** Null for problems with documents, and for what is of no engine. */
  readonly engine: string | null;
  /** A session by its path, or `state` for where the engine stands. */
  readonly session: string | null;
  readonly measure: string | null;
  readonly position: string | null;
  readonly place: PlaceJson;
  readonly limit_place: PlaceJson | null;
  readonly isDiagnostic: boolean;
  /** Whether the run was told of it; undefined where it was told of nothing. */
  readonly known?: boolean;
  /** How far beyond its limit the value lies, in expanded uncertainties; what is no matter of degree stands above all. */
  readonly weight: number;
}

export type PlaceJson = ReturnType<typeof placeJson>;

export type ShownJson = EngineJson['sessions'][number];

/** Where an engine stands and the sessions that were asked for, each with what it is called. */
export const shownIn = ({ state, sessions }: EngineJson): readonly (readonly [string, ShownJson])[] => [
  ...(state === null ? [] : [['state', state] as const]),
  ...sessions.map((each) => [each.path, each] as const),
];

export const reportedOf = (engine: EngineJson): readonly Reported[] =>
  shownIn(engine).flatMap(([session, shown]) =>
    shown.findings.map((each) => ({
      ...each,
      engine: engine.path,
      session,
      isDiagnostic: false,
      weight: weightOf(each, shown),
    })),
  );

export const toldFinding = (finding: Finding): Reported => ({
  ...findingJson(finding),
  engine: null,
  session: null,
  isDiagnostic: false,
  weight: Number.POSITIVE_INFINITY,
});

export const toldDiagnostic = (problem: Diagnostic): Reported => {
  const { code, message, help, place } = diagnosticJson(problem);
  return {
    code,
    severity: 'error',
    message: help === null ? message : `${message}; ${help}`,
    engine: null,
    session: null,
    measure: null,
    position: null,
    place,
    limit_place: null,
    isDiagnostic: true,
    weight: Number.POSITIVE_INFINITY,
  };
};

function weightOf({ measure, position }: ShownJson['findings'][number], { rows }: ShownJson): number {
  const of = rows.filter((row) => row.measure === measure && row.position === position && row.past !== null);
  const weights = of.map(({ past, U }) => (past?.by ?? 0) / (U || Number.MIN_VALUE));
  return weights.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...weights);
}
