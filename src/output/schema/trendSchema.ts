import { UNLIKENESSES } from '../../compare/unlike.ts';
import {
  coordinates,
  described,
  list,
  number,
  object,
  orNull,
  readAt,
  ref,
  type Schema,
  text,
} from './parts.ts';

const side = orNull({ enum: ['min', 'max'] });

/** Running hours as a number, a day as text. */
const x: Schema = { anyOf: [number, text] };

const definitions: Readonly<Record<string, Schema>> = {
  interval: object({ lower: number, upper: number }, 'Two-sided, 95 %.'),
  point: object({
    x,
    value: described('of the readings the one that is followed', number),
    u: described('standard uncertainty', number),
    session: text,
    date: text,
    commit: described('the commit that holds it, where the session was removed since', orNull(text)),
  }),
  correction: object(
    {
      position: text,
      at: coordinates,
      session: text,
      date: text,
      was: number,
      is: described('null where the session has no such reading any more', orNull(number)),
      commit: text,
    },
    'A value that a commit held and that its session states otherwise since; no line uses it.',
  ),
  outlook: object(
    {
      kind: {
        enum: ['one reading', 'two readings', 'no span', 'no trend', 'no limit', 'away', 'beyond', 'reached'],
      },
      side,
      x: orNull(x),
      lower: orNull(x),
      upper: orNull(x),
      far: described('farther ahead than the readings reach back', orNull({ type: 'boolean' })),
    },
    'x, lower and upper only where a limit is reached: by Fieller, 95 %.',
  ),
  line: object(
    {
      position: text,
      at: coordinates,
      label: orNull(text),
      unit: text,
      started_by: described('what ended the line before it', orNull(text)),
      followed: { enum: ['least', 'mean', 'greatest'] },
      unlike: described('not like for like', list({ enum: UNLIKENESSES })),
      limits: object({ min: orNull(number), max: orNull(number) }),
      points: list(ref('point')),
      slope: described('for an hour, or a day', orNull(number)),
      slope_half_width: described('95 %; null for two readings', orNull(number)),
      last: described('where the line lies at the last reading', orNull(ref('interval'))),
      next: described('where a next reading will lie', orNull(object({ x, lower: number, upper: number }))),
      outlook: ref('outlook'),
    },
    'One part at one position; numbers are in `unit`.',
  ),
};

/** What `tenths trend --format json` prints. */
export const trendSchema = (): Schema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'tenths trend',
  ...object({
    format: { const: 'tenths.trend' },
    version: { const: 2 },
    tool: object({ name: { const: 'tenths' }, version: text }),
    exit: { enum: [0, 2] },
    at: readAt(),
    engine: described('of a part the last that it was in', object({ path: text, name: text })),
    part: described('that is followed; null where an engine is', orNull(object({ name: text, mark: text }))),
    measure: text,
    by: { enum: ['hours', 'date'] },
    without_hours: described('sessions without hours, where others have them', list(text)),
    lines: list(ref('line')),
    corrected: described('with --history', list(ref('correction'))),
  }),
  definitions,
});
