import { described, list, number, object, orNull, readAt, ref, type Schema, text } from './parts.ts';

const yesOrNo: Schema = { type: 'boolean' };
/** Passes are counted from 1. */
const counted: Schema = { type: 'integer', minimum: 1 };

const definitions: Readonly<Record<string, Schema>> = {
  span: object({ least: number, greatest: number }, 'One figure is both.'),
  load: object(
    {
      N: number,
      least_N: number,
      greatest_N: number,
      percent_of_proof: described('null where the grade has no proof load', orNull(number)),
      by_friction_N: described('what stated coefficients of friction come to', orNull(number)),
      beyond_yield: yesOrNo,
    },
    'The expected clamp load of one fastener: an estimate.',
  ),
  pass: object({
    pass: counted,
    kind: { enum: ['to', 'turn', 'loosen', 'stretch', 'check'] },
    torque_N_m: described('at the fastener, run-on torque added', orNull(ref('span'))),
    setting_N_m: described('what the wrench shows; null where no adapter changes it', orNull(ref('span'))),
    at_most_N_m: described('of a check', orNull(number)),
    angle_deg: described('null too where it is loosened fully', orNull(ref('span'))),
    stretch_mm: orNull(ref('span')),
    reversed: described('against the order', yesOrNo),
    fasteners: described('as they come in turn; null for all of them', orNull(list(text))),
    note: orNull(text),
    load: described('null where none can be estimated', orNull(ref('load'))),
  }),
};

/** What `tenths torque --format json` prints. */
export const torqueSchema = (): Schema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'tenths torque',
  ...object({
    format: { const: 'tenths.torque' },
    version: { const: 1 },
    exit: { enum: [0, 1, 2] },
    engine: text,
    path: described('of the torque document, within its engine', text),
    at: readAt(),
    joint: text,
    order: described('every fastener once', list(text)),
    order_from: { enum: ['maker', 'generated', 'listed'] },
    thread: orNull(text),
    grade: orNull(text),
    lubricant: orNull(text),
    reuse: { enum: ['once', 'allowed', 'unstated'] },
    before: described('to confirm before the first pass', list(text)),
    passes: list(ref('pass')),
    after: described('to confirm after the last pass', list(text)),
    assumptions: described('of the estimated loads', list(text)),
    comparisons: described('figures to hold the estimate against', list(text)),
    doubts: described('contradictions in the sequence, and torques beyond proof', list(text)),
    cautions: list(text),
    source: text,
  }),
  definitions,
});
