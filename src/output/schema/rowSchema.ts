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
  whole,
} from './parts.ts';

const numbers = {
  least: orNull(number),
  mean: orNull(number),
  greatest: orNull(number),
  u: described('The combined standard uncertainty.', orNull(number)),
  U: described('The uncertainty expanded to 95 %.', orNull(number)),
};

const verdict = described('Null where no limit decides.', { enum: [...VERDICTS, null] });
/** What `tenths check` prints of one characteristic at one position. */
export const rowDefinitions: Readonly<Record<string, Schema>> = {
  band: object({ min: orNull(number), max: orNull(number) }),
  limit: object({ value: number, band: { enum: BAND_NAMES }, place: ref('place') }),
  route: object({
    route: text,
    with: list(text),
    ...numbers,
    en: orNull(number),
    verdict,
    taken: described('Readings that were converted to another temperature.', list(ref('taken'))),
  }),
  taken: object(
    {
      measure: text,
      position: text,
      at: coordinates,
      from_degC: number,
      to_degC: number,
      by: described('What that adds to the reading.', number),
      unit: text,
    },
    'A reading, the temperature it was taken at and the one it is judged at.',
  ),
  row: object(
    {
      measure: text,
      position: text,
      at: coordinates,
      label: orNull(text),
      half: described('Of shells whose halves are of different sizes.', { enum: ['upper', 'lower', null] }),
      unit: text,
      decimals: whole,
      written: described('As typed; empty for a derived value.', list(text)),
      ...numbers,
      dof: described('Null where it is infinite.', orNull(number)),
      route: orNull(text),
      routes: described('The judged one first.', list(ref('route'))),
      bands: {
        type: 'object',
        properties: Object.fromEntries(BAND_NAMES.map((name) => [name, ref('band')])),
      },
      graded: described(
        'The service size for which the limits hold, and whether they are stated for it or moved to it; null for standard.',
        orNull(
          object({
            size: text,
            rule: { enum: ['stated', 'moved'] },
            assumed: described('Nothing states it of the part itself.', { type: 'boolean' }),
          }),
        ),
      ),
      limits: object({ min: orNull(ref('limit')), max: orNull(ref('limit')) }, 'The sides that decide.'),
      limits_degC: described(
        'At which the limits hold and readings met them; null where nothing states it: then 20.',
        orNull(number),
      ),
      hot: described(
        'An estimate of a fit in the running engine, by expansion alone; null where none can be made.',
        orNull(
          object({
            least: number,
            mean: number,
            greatest: number,
            by: described('How much more it is than at 20 degC.', number),
            U: number,
            at: described('The parts and how warm they are.', list(text)),
          }),
        ),
      ),
      probability: described('That the value lies inside, under the guarded rule.', orNull(number)),
      marginal: { type: 'boolean' },
      past: orNull(object({ side: { enum: ['min', 'max'] }, by: number })),
      verdict,
      may_still_be_cut: described(
        'Of a head or a block: how far its least place lies above the least that its limits allow; 0 where nothing may be cut any more, null where no limit says it.',
        orNull(number),
      ),
      left_out: described('Why it was left out on purpose; null where it was not.', orNull(text)),
      read_in: described(
        'The session that the judged value is of; the latest of its readings.',
        orNull(text),
      ),
      place: ref('place'),
    },
    'One characteristic at one position; numbers are in `unit`.',
  ),
};
