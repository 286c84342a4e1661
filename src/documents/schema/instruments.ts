import { INSTRUMENT_TYPES } from '../../measurement/instrument.ts';
import { document, note } from './document.ts';
import { PATTERNS } from './patterns.ts';
import {
  AMOUNT_ITEM,
  about,
  amount,
  date,
  flag,
  percentOrAmount,
  positiveNumber,
  type Schema,
  text,
  word,
} from './scalars.ts';
import { list, map, mapShape, named } from './shared.ts';

export const instrumentsSchema = (): Schema =>
  document(
    'instruments',
    { title: 'Instruments', description: 'The register of measuring instruments.' },
    {
      instruments: named(
        about('Instruments', 'Each instrument under the name that sessions call it by.', {
          'mic-3-4': { type: 'micrometer', resolution: '0.0001 in' },
        }),
        instrument,
        // A register that has just been begun holds nothing yet.
        { minProperties: 0 },
      ),
    },
    ['instruments'],
  );

const type: Schema = {
  ...about('Type', 'What kind of instrument it is.', 'micrometer'),
  anyOf: [{ type: 'string', pattern: PATTERNS.notBlank }, { enum: [...INSTRUMENT_TYPES] }],
  errorMessage: 'write what kind of instrument it is, such as micrometer or bore gauge',
};

const range: Schema = map(
  about('Range', 'What it can measure.', { from: '3 in', to: '4 in' }),
  {
    from: amount(about('From', 'The least it can measure.', '3 in')),
    to: amount(about('To', 'The greatest it can measure.', '4 in')),
  },
  { required: ['from', 'to'] },
);

const calibration: Schema = map(
  about('Calibration', 'What its certificate says.', { uncertainty: '0.00004 in', k: 2 }),
  {
    uncertainty: amount(about('Uncertainty', 'The expanded uncertainty on the certificate.', '0.00004 in')),
    k: positiveNumber(about('Coverage factor', 'The k that the certificate states.', 2)),
    certificate: word(about('Certificate', 'Its number.', 'C-2026-118')),
  },
  { required: ['uncertainty'] },
);

const error = (title: string, description: string, example: string): Schema =>
  amount(about(title, `${description}: shown minus true.`, example));

const certificates: Schema = list(
  about('Certificates', 'Its calibration certificates; a session is judged by the one in force on its day.', [
    { date: '2026-01-10', errors: [{ at: '3 in', as_found: '0.0001 in' }], uncertainty: '0.00004 in' },
  ]),
  mapShape(
    {
      date: date(about('Date', 'From this day on it counts.', '2026-01-10')),
      due: date(about('Due', 'The last day on which it counts.', '2027-01-10')),
      by: text(about('By', 'Who calibrated it.', 'an invented laboratory')),
      number: word(about('Number', 'Of the certificate.', 'C-2026-118')),
      errors: list(
        about('Errors', 'Its errors at some sizes; between two of them they lie on a straight line.', [
          { at: '3 in', as_found: '0.0003 in', as_left: '0 in' },
        ]),
        mapShape(
          {
            at: amount(about('At', 'The true size of the standard.', '3 in')),
            as_found: error('As found', 'Its error before anything was set', '0.0003 in'),
            as_left: error('As left', 'Its error when it went back, where it was set', '0 in'),
          },
          { required: ['at'], minProperties: 2 },
        ),
      ),
      uncertainty: amount(about('Uncertainty', 'The expanded uncertainty of its errors.', '0.00004 in')),
      k: positiveNumber(about('Coverage factor', 'The k that the certificate states.', 2)),
      note,
    },
    { required: ['date'] },
  ),
);

const marks: Schema = {
  ...about('Marks', 'The widths printed on a gauging strip.', ['0.002 in', '0.003 in']),
  type: 'array',
  minItems: 1,
  items: AMOUNT_ITEM,
  errorMessage: 'write a list such as [0.002 in, 0.003 in]',
};

const STUDY = about(
  'Study',
  "The path, from this register's folder, of a session that holds a gauge study of the instrument: its deviation of repeats (EV) counts.",
  'engines/pump/sessions/2026-01-12-gauges.yaml',
);

const repeatability: Schema = {
  ...about(
    'Repeatability',
    'One standard deviation of repeats, or the gauge study that found it.',
    '0.00005 in',
    {
      study: 'engines/pump/sessions/2026-01-12-gauges.yaml',
    },
  ),
  anyOf: [AMOUNT_ITEM, mapShape({ study: text(STUDY) }, { required: ['study'] })],
  errorMessage: 'write one standard deviation such as 0.00005 in, or `study: PATH`',
};

const instrument: Schema = mapShape(
  {
    type,
    range,
    resolution: amount(
      about(
        'Resolution',
        'The smallest step it shows, of feelers from leaf to leaf; without it, and without marks and repeatability, a step of the last digit written.',
        '0.0001 in',
      ),
    ),
    max_error: percentOrAmount(
      about(
        'Largest error',
        'The largest error it may have; for a wrench a percentage of the reading.',
        '0.0001 in',
        '4 %',
      ),
    ),
    repeatability,
    calibration,
    certificates,
    correct_readings: flag(
      about(
        'Correct readings',
        'Readings are corrected by the errors of the certificate in force; its uncertainty is then used in place of the largest error.',
        true,
      ),
    ),
    calibrated: date(about('Calibrated', 'The day it was last calibrated.', '2026-01-10')),
    due: date(about('Due', 'The last day on which its calibration counts.', '2027-01-10')),
    marks,
    material: text(about('Material', 'What it is made of, for expansion with temperature.', 'steel')),
    serial: word(about('Serial number', 'In quotes when it begins with 0.', 'M-0417')),
    note,
  },
  { required: ['type'] },
);
