/** A stretch of a formula's text: UTF-16 offsets, the end exclusive. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** Why a formula cannot be used, and where in its text. Plain data; nothing here is thrown. */
export interface FormulaProblem extends Stretch {
  readonly message: string;
  /** What to write instead. */
  readonly help?: string;
}

export function formulaProblem(at: Stretch, message: string, help?: string): FormulaProblem {
  const known = { message, start: at.start, end: at.end };
  return help === undefined ? known : { ...known, help };
}

/** Tells a problem from what was asked for. Neither a formula, a node nor a fraction has a message. */
export const isFormulaProblem = (result: object): result is FormulaProblem => 'message' in result;
