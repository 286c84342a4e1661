import { UNLIKENESSES } from '../../compare/unlike.ts';
import { BAND_NAMES } from '../../documents/limits/bands.ts';
import {
  coordinates,
  described,
  list,
  number,
  object,
  orNull,
  ref,
  type Schema,
  text,
  VERDICTS,
} from './parts.ts';

const side = object(
  {
    kind: { enum: ['session', 'revision', 'worktree'] },
    name: text,
    commit: described('null where it is no commit', orNull(text)),
  },
  'What is compared.',
);

const definitions: Readonly<Record<string, Schema>> = {
  side,
  value: object({
    written: described('as typed; empty for a derived value', list(text)),
    value: described('the mean', number),
    least: number,
    greatest: number,
    verdict: described('null where no limit decides', { enum: [...VERDICTS, null] }),
    session: described('the path of the session it was measured in', text),
    date: text,
    route: text,
    with: list(text),
  }),
  row: object(
    {
      measure: text,
      position: text,
      at: coordinates,
      state: { enum: ['same', 'within', 'real', 'appeared', 'disappeared'] },
      crossed: described(
        'out: from ok, off target or worn to out or accepted; in: back; what is undecided is neither',
        { enum: ['out', 'in', null] },
      ),
      a: orNull(ref('value')),
      b: orNull(ref('value')),
      unit: text,
      delta: described('b less a, of the means', orNull(number)),
      U: described(
        'of the difference, expanded to 95 %; errors that both share have cancelled',
        orNull(number),
      ),
      toward: described(
        'a real change: true towards the deciding limit that it lies nearest to, false away from it',
        { enum: [true, false, null] },
      ),
      unlike: described('not like for like', list({ enum: UNLIKENESSES })),
    },
    'One characteristic at one position; numbers are in `unit`.',
  ),
  limit: object(
    {
      measure: text,
      position: text,
      at: coordinates,
      band: { enum: BAND_NAMES },
      side: { enum: ['min', 'max'] },
      a: orNull(number),
      b: orNull(number),
      unit: text,
      a_degC: described('At which it holds.', orNull(number)),
      b_degC: orNull(number),
    },
    'A limit that is not the same on both sides, of what both measured.',
  ),
  concession: object({
    state: { enum: ['opened', 'closed'] },
    measure: text,
    positions: list(text),
    at: list(coordinates),
    up_to: orNull(text),
    down_to: orNull(text),
    reason: text,
    session: text,
  }),
  engine: object({
    path: text,
    name: text,
    rows: list(ref('row')),
    limits: list(ref('limit')),
    concessions: list(ref('concession')),
    rewritten: described('of two revisions of an engine', list(ref('rewritten'))),
  }),
  rewritten: object(
    {
      state: described('whether the session is on both sides, or on one', {
        enum: ['edited', 'new', 'gone'],
      }),
      session: text,
      readings: list(
        object({
          measure: text,
          position: text,
          at: coordinates,
          a: described('as typed, what is not the same; empty where there is none', list(text)),
          b: list(text),
        }),
      ),
    },
    'A session whose readings are not the same on both sides, and were measured anew by later ones.',
  ),
};

/** What `tenths diff --format json` prints. */
export const diffSchema = (): Schema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'tenths diff',
  ...object({
    format: { const: 'tenths.diff' },
    version: { const: 2 },
    tool: object({ name: { const: 'tenths' }, version: text }),
    exit: { enum: [0, 1, 2] },
    a: ref('side'),
    b: ref('side'),
    engines: described(
      'Without an engine named, those of two revisions that something changed for.',
      list(ref('engine')),
    ),
    not_compared: described(
      'Engines of which a document has a problem on one side or both: the exit code is 2.',
      list(object({ path: text, sides: described('their names', list(text)) })),
    ),
  }),
  definitions,
});
