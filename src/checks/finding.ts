import { comparePlaces, compareText, type Place } from '../diagnostic/place.ts';

export type Severity = 'error' | 'warning' | 'remark';

/** Every finding and how much it weighs. The codes are public; the wording of messages may change. */
export const SEVERITIES = {
  'reading/out': 'error',
  'reading/undecided': 'warning',
  'reading/missing': 'warning',
  'reading/worn': 'remark',
  'reading/off-target': 'remark',
  'reading/marginal': 'remark',
  'method/disagree': 'warning',
  'turning/jump': 'warning',
  'instrument/unknown': 'warning',
  'instrument/assumed': 'remark',
  'limits/no-distance': 'warning',
  'session/unmeasured': 'remark',
} as const satisfies Record<string, Severity>;

export type FindingCode = keyof typeof SEVERITIES;

/** A problem with the engine, or with how it was measured; never with a document. */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  /** With the numbers in it. */
  readonly message: string;
  readonly measure: string | undefined;
  readonly position: string | undefined;
  readonly place: Place;
  readonly limitPlace: Place | undefined;
}

export const finding = (
  code: FindingCode,
  place: Place,
  message: string,
  about: {
    readonly measure?: string;
    readonly position?: string;
    readonly limitPlace?: Place | undefined;
    readonly severity?: Severity;
  } = {},
): Finding => ({
  code,
  severity: about.severity ?? SEVERITIES[code],
  message,
  measure: about.measure,
  position: about.position,
  place,
  limitPlace: about.limitPlace,
});

const WEIGHT: Readonly<Record<Severity, number>> = { error: 0, warning: 1, remark: 2 };

/** The worst first, then in reading order. */
export const sortFindings = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort(
    (a, b) =>
      WEIGHT[a.severity] - WEIGHT[b.severity] ||
      comparePlaces({ ...a.place, column: 0 }, { ...b.place, column: 0 }) ||
      compareText(a.code, b.code) ||
      a.place.column - b.place.column,
  );
