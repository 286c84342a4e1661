import { described, list, object, orNull, type Schema, text } from './parts.ts';

/** What `tenths plan` prints with `--for`, `--fit`, `--order` or `--closing` and `--format json`. */
export const planPageSchema = (): Schema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'tenths plan, a page',
  ...object({
    format: { const: 'tenths.plan-page' },
    version: { const: 1 },
    exit: { enum: [0, 1, 2] },
    page: { enum: ['customer', 'machine-shop', 'fit', 'order', 'closing'] },
    engine: text,
    path: text,
    session: described('that leaves the engine so', text),
    title: text,
    answer: list(text),
    sections: list(
      object({
        title: text,
        table: orNull(object({ heading: list(text), rows: list(list(text)) })),
        lines: list(text),
        boxes: described('to be ticked by hand', list(text)),
      }),
    ),
    cautions: list(text),
  }),
});
