// What the schemas of the outputs are put together from.

export type Schema = Readonly<Record<string, unknown>>;

export const described = (description: string, schema: Schema): Schema => ({ description, ...schema });
export const orNull = (schema: Schema): Schema => ({ anyOf: [schema, { type: 'null' }] });
export const ref = (name: string): Schema => ({ $ref: `#/definitions/${name}` });
export const list = (items: Schema): Schema => ({ type: 'array', items });
export const whole: Schema = { type: 'integer', minimum: 0 };
export const number: Schema = { type: 'number' };
export const text: Schema = { type: 'string' };

/** A position's name along each axis: `{ cylinder: "3", ring: "top" }`. */
export const coordinates: Schema = { type: 'object', additionalProperties: text };

/** Every key is always there; fields may be added within a version, so others are allowed. */
export const object = (properties: Readonly<Record<string, Schema>>, description = ''): Schema => ({
  ...(description === '' ? {} : { description }),
  type: 'object',
  properties,
  required: Object.keys(properties),
});

/** The same with keys that are there only where they say something. */
export const withOptional = (schema: Schema, properties: Readonly<Record<string, Schema>>): Schema => ({
  ...schema,
  properties: { ...(schema.properties as object), ...properties },
});

export const VERDICTS = ['ok', 'off target', 'worn', 'undecided', 'out', 'accepted', 'missing', 'left out'];

/** The commit whose documents a result is of, where it is not of those on disk. */
export const readAt = (): Schema =>
  described(
    'The commit that was read; null for the working tree.',
    orNull(object({ revision: text, commit: text })),
  );
