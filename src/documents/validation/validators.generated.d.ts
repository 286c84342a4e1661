/** One of ajv's errors, with the schema that refused (the build asks for `verbose`, and for no messages). */
export interface SchemaError {
  /** A JSON pointer. */
  readonly instancePath: string;
  readonly keyword: string;
  readonly params: Readonly<Record<string, unknown>>;
  /** The value of the keyword that refused. */
  readonly schema: unknown;
  /** The schema that the keyword stands in; the words only editors show are left out. */
  readonly parentSchema: Readonly<Record<string, unknown>>;
  readonly data: unknown;
}

export interface Validator {
  (data: unknown): boolean;
  /** Of the last call; null when it said yes. */
  readonly errors?: readonly SchemaError[] | null;
}

export const shop: Validator;
export const engine: Validator;
export const limits: Validator;
export const instruments: Validator;
export const session: Validator;
export const torque: Validator;
export const stock: Validator;
export const part: Validator;
