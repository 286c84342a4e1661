/** What these tests read of `check --format json`. */
export interface CheckOutput {
  readonly exit: number;
  readonly diagnostics: readonly Said[];
  readonly findings: readonly Said[];
  readonly engines: readonly {
    readonly path: string;
    readonly state: ShownSession | null;
    readonly sessions: readonly ShownSession[];
  }[];
}

export interface Said {
  readonly code: string;
  readonly severity: string;
  readonly message: string;
  readonly help?: string | null;
  readonly measure?: string | null;
  readonly position?: string | null;
  readonly place: Place;
  readonly limit_place?: Place | null;
  readonly known?: boolean;
}

interface Place {
  readonly path: string;
  readonly line: number;
  readonly column: number;
}

interface ShownSession {
  readonly path: string;
  readonly stage: string;
  readonly date: string;
  readonly judged: boolean;
  readonly findings: readonly Said[];
  readonly rows: readonly RowOutput[];
}

interface RowOutput {
  readonly measure: string;
  readonly position: string;
  readonly unit: string;
  readonly least: number | null;
  readonly mean: number | null;
  readonly greatest: number | null;
  readonly U: number | null;
  readonly verdict: string | null;
  readonly limits: {
    readonly min: { readonly value: number } | null;
    readonly max: { readonly value: number } | null;
  };
}

/** Where engines stand and their sessions, each with the engine's path and what formats call it. */
export const shownIn = ({ engines }: CheckOutput) =>
  engines.flatMap(({ path: engine, state, sessions }) => [
    ...(state === null ? [] : [{ ...state, engine, called: 'state' }]),
    ...sessions.map((each) => ({ ...each, engine, called: each.path })),
  ]);

export const saidIn = (output: CheckOutput): readonly Said[] => [
  ...output.diagnostics,
  ...output.findings,
  ...shownIn(output).flatMap(({ findings }) => findings),
];

export const placeText = ({ path, line, column }: Place): string => `${path}:${line}:${column}`;

/** All that is to be told of a finding or a problem, in a line. */
export const lineOf = ({ severity, code, place, message, help }: Said): string =>
  `${severity} ${code} ${placeText(place)} ${message}${help == null ? '' : `; ${help}`}`;
