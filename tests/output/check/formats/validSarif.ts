import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';

const { $schema, id, ...schema } = JSON.parse(
  readFileSync(new URL('../../../data/sarif-schema-2.1.0-rtm.5.json', import.meta.url), 'utf8'),
);

const ajv = new Ajv({
  allErrors: true,
  strict: false,
  // A pattern of it is none under the flag u.
  unicodeRegExp: false,
  formats: {
    uri: (text) => URL.canParse(text),
    'uri-reference': (text) => URL.canParse(text, 'file:///a/') && /^[\x21-\x7e]*$/.test(text),
    'date-time': /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/,
  },
});

const validate = ajv.compile(schema);

/** What the schema of OASIS has against a log. It is of draft 4; what it uses means the same in draft 7. */
export const validSarif = (log: unknown): readonly string[] =>
  validate(log)
    ? []
    : (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
