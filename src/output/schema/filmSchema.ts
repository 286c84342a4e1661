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
  VERDICTS,
  whole,
} from './parts.ts';

const spread = (): Schema => object({ least: number, greatest: number });

const figures: Readonly<Record<string, Schema>> = {
  l_d: number,
  theory: { enum: ['finite', 'short'] },
  doubts: list({ enum: ['beyond the charts', 'short theory off'] }),
  sommerfeld: number,
  eccentricity: number,
  attitude_deg: number,
  film_um: described('the least film thickness', number),
  film_um_other_theory: orNull(number),
  film_um_trumpler: described('what a published criterion asks of a design', number),
  oil_L_min: number,
  oil_by_pressure_L_min: described('of that what the supply drives through', orNull(number)),
  torque_Nm: number,
  friction_W: number,
  rise_degC: number,
  viscosity_mPas: number,
};

const measured: Readonly<Record<string, Schema>> = {
  clearance_mm: described('diametral, at 20 °C', number),
  clearance_U_mm: described('expanded uncertainty, 95 %', number),
  warmer_by_mm: described('how much more it is in the warm engine, where that is known', number),
  ...figures,
  spread: object(
    { film_um: spread(), oil_L_min: spread(), friction_W: spread(), rise_degC: spread() },
    'Over the uncertainty of the clearance.',
  ),
};

const definitions: Readonly<Record<string, Schema>> = {
  film: object({
    position: text,
    at: coordinates,
    verdict: orNull({ enum: VERDICTS }),
    ...measured,
    before: described('as the last teardown found it', orNull(object({ date: text, ...measured }))),
  }),
  what_if: object({
    measure: text,
    limits: list(object({ band: text, side: { enum: ['min', 'max'] }, clearance_mm: number })),
    films: list(object({ clearance_mm: number, ...figures })),
  }),
  demand: object({
    bearings: whole,
    oil_L_min: object({ value: number, least: number, greatest: number }),
    most: object({ measure: text, position: text, at: coordinates }),
    pump_L_min: orNull(number),
  }),
};

/** What `tenths film --format json` prints. */
export const filmSchema = (): Schema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'tenths film',
  ...object({
    format: { const: 'tenths.film' },
    version: { const: 1 },
    tool: object({ name: { const: 'tenths' }, version: text }),
    exit: { enum: [0, 2] },
    at: readAt(),
    engine: object({ path: text, name: text }),
    speed_rpm: number,
    oil: orNull(text),
    inlet_degC: number,
    supply_kPa: orNull(number),
    bearings: list(
      object({
        measure: text,
        lacking: described('what the engine document has to state before there is a film', list(text)),
        diameter_mm: orNull(number),
        length_mm: orNull(number),
        load_N: orNull(number),
        load_from: orNull({ enum: ['stated', 'gas', 'inertia'] }),
        films: list(ref('film')),
      }),
    ),
    what_if: orNull(ref('what_if')),
    demand: orNull(ref('demand')),
    assumed: list(text),
    caution: text,
  }),
  definitions,
});
