import { described, list, object, orNull, type Schema, text } from './parts.ts';

/** What `tenths instruments`, `part` and `recall` print with `--format json`. */
export const pagesSchema = (): Schema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'tenths instruments, part and recall',
  ...object({
    format: { const: 'tenths.pages' },
    version: { const: 1 },
    tool: object({ name: { const: 'tenths' }, version: text }),
    exit: { enum: [0, 2] },
    about: described('the command', { enum: ['instruments', 'part', 'recall'] }),
    pages: list(
      object({
        title: text,
        about: list(text),
        answer: list(text),
        sections: list(
          object({
            title: text,
            table: orNull(object({ heading: list(text), rows: list(list(text)) })),
            lines: list(text),
          }),
        ),
        cautions: list(text),
      }),
    ),
  }),
});
