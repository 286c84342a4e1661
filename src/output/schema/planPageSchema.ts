import { described, list, number, object, ref, type Schema, text } from './parts.ts';

/** What `tenths plan` prints with `--for`, `--fit`, `--order` or `--closing` and `--format json`. */
export const planPageSchema = (): Schema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'tenths plan, a page',
  ...object({
    format: { const: 'tenths.plan-page' },
    version: { const: 2 },
    exit: { enum: [0, 1, 2] },
    page: { enum: ['customer', 'machine-shop', 'fit', 'order', 'closing'] },
    engine: text,
    path: text,
    session: described('that leaves the engine so', text),
    unit: described('of lengths', text),
    title: text,
    answer: list(text),
    sections: list(
      object({
        title: text,
        values: described(
          'what stands in a table or in lines as values: lengths in the unit of the page, keys ending in _g in grams',
          list({ type: 'object', additionalProperties: ref('value') }),
        ),
        lines: list(text),
        boxes: described('to be ticked by hand', list(text)),
      }),
    ),
    cautions: list(text),
  }),
  definitions,
});

const textOrNumber = { anyOf: [text, number, { type: 'null' }] };

const definitions: Readonly<Record<string, Schema>> = {
  value: {
    anyOf: [
      textOrNumber,
      object({ least: number, greatest: number }),
      object({ upper: textOrNumber, lower: textOrNumber }, 'Of the two halves of a bearing.'),
    ],
  },
};
