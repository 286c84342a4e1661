import { OPERATIONS } from '../../documents/planning/operations.ts';
import { URGENCIES } from '../../plan/work/urgency.ts';
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
  whole,
} from './parts.ts';

const position = { position: text, at: coordinates };

const cutAnswer: Schema = { enum: ['step', 'beyond the last step', 'not provable'] };

const definitions: Readonly<Record<string, Schema>> = {
  place: object({ path: text, line: whole, column: whole, end_line: whole, end_column: whole }),
  reason: object(
    {
      measure: text,
      ...position,
      unit: text,
      least: orNull(number),
      greatest: orNull(number),
      verdict: { enum: [...VERDICTS, null] },
      past: described(
        'the limit that it lies beyond',
        orNull(object({ side: { enum: ['min', 'max'] }, band: text, limit: number })),
      ),
    },
    'A value that asks for a job.',
  ),
  found: object(
    { on: text, is: text, do: orNull(text), depth: orNull(number), place: ref('place') },
    'What was seen and has no number.',
  ),
  step: object(
    {
      size: text,
      least: number,
      greatest: number,
      aim: number,
      over: described('what it leaves beyond a clean surface', number),
    },
    'A size to which a part can be ground or bored.',
  ),
  cut: object(
    {
      at: described('what is cut to one step', list(object(position))),
      deciding: described('the place that needs the most', object(position)),
      answer: cutAnswer,
      steps_from: described('assumed: the usual ones, since nothing states any', {
        enum: ['limits', 'shop', 'assumed'],
      }),
      reach: described('the size at which that place is clean all round', orNull(number)),
      step: orNull(ref('step')),
      next: orNull(ref('step')),
      terms: described(
        'what the reach is added up from',
        list(object({ words: text, amount: number, times: number, assumed: { type: 'boolean' } })),
      ),
    },
    'What a part is ground or bored to.',
  ),
  decider: object(
    { instruments: list(text), U: described('expanded uncertainty that they would reach', number) },
    'Instruments of the register that would decide.',
  ),
  job: object({
    name: text,
    title: described('with the places', text),
    operation: { enum: OPERATIONS },
    urgency: { enum: URGENCIES },
    part: orNull(text),
    serves: described('the jobs that bring it with them', orNull(text)),
    why: list(ref('reason')),
    found: list(ref('found')),
    suspects: described(
      'readings that may be slips of the pen, to be measured again before anything is cut',
      list(object({ measure: text, ...position, why: text })),
    ),
    unmeasured: described(
      'figures that have limits and no value, and where they had one before work ended it; also the crack test of a crankshaft that was ground since',
      list(object({ measure: text, at: list(object(position)) })),
    ),
    cuts: list(ref('cut')),
    steps_left: described(
      'of a crankshaft or block that is renewed all the same: the steps that would clean it up',
      list(object({ part: text, answer: cutAnswer, steps: list(text) })),
    ),
    deciders: described(
      'of what is measured again, in the order of why; null where nothing registered decides',
      list(orNull(ref('decider'))),
    ),
    follows: described('what must be done or looked at because of it', list(text)),
  }),
};

/** What `tenths plan --format json` prints. */
export const planSchema = (): Schema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'tenths plan',
  ...object({
    format: { const: 'tenths.plan' },
    version: { const: 1 },
    exit: { enum: [0, 1, 2] },
    engine: text,
    path: text,
    session: described('that leaves the engine so', text),
    unit: described('of lengths', text),
    answer: described(
      'documents that were not taken, then what must be done, should be, and may be',
      list(text),
    ),
    jobs: described('in the order of work', list(ref('job'))),
    seen_before: described(
      'what the engine showed before it was taken apart: measured again after the rebuild, and no job',
      list(ref('reason')),
    ),
    cautions: list(text),
  }),
  definitions,
});
