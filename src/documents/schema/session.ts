import { REMEDIES } from '../session/observations.ts';
import { STAGES } from '../session/stage.ts';
import { by, document, note, photos } from './document.ts';
import { fitted } from './fitted.ts';
import { accepted, concessions, position } from './planning/concessions.ts';
import { handedOverAndConfirmed } from './planning/handedOver.ts';
import { readingDefinitions } from './points.ts';
import { conditions, day, readings, temperature } from './reading.ts';
import {
  about,
  amount,
  choice,
  date,
  grade,
  type Schema,
  text,
  texts,
  word,
  wordOrWords,
} from './scalars.ts';
import { list, mapShape, measure, type Offered } from './shared.ts';
import { study } from './study.ts';
import { tightened } from './tightening.ts';

export const sessionSchema = (offered: readonly Offered[]): Schema =>
  document(
    'session',
    { title: 'Session', description: 'One sitting at the bench.' },
    {
      stage: choice(
        about('Stage', 'The stage of the job; it chooses the band that decides.', 'teardown'),
        STAGES,
      ),
      date: date(about('Date', 'The day of the session.', '2026-02-03')),
      by,
      hours: amount(about('Hours', 'Running hours or another count of service, for trends.', 11840)),
      hours_from: amount(
        about(
          'Hours from',
          'What the old meter showed when the present one began at 0: from here on hours count on from it.',
          11840,
        ),
      ),
      temperature,
      conditions,
      uses: texts(
        about('Uses', 'Sessions whose readings serve for what this one did not measure.', [
          '2026-02-03-teardown',
        ]),
      ),
      fitted,
      readings,
      checked,
      study,
      replaced: changed(
        'Replaced',
        'Parts exchanged for others; a trend starts a new line.',
        { part: 'main shells', at: [1, 2] },
        'std',
      ),
      machined: changed(
        'Machined',
        'Parts machined, and the size made: it holds from there on. A trend starts a new line.',
        { part: 'main journals', size: '0.010 under' },
        '0.010 under',
      ),
      found,
      tightened,
      concessions,
      accepted,
      ...handedOverAndConfirmed,
      imported,
      photos,
    },
    ['stage', 'date'],
    { ...readingDefinitions, measure: measure(about('Characteristic', 'Its id.', 'cylinder_bore'), offered) },
  );

export const checked: Schema = list(
  about('Checked', 'The check of an instrument on its standard before measuring.', [
    { instrument: 'mic-3-4', standard: 3, read: 3.0001 },
  ]),
  mapShape(
    {
      instrument: word(about('Instrument', 'Its name in the register.', 'mic-3-4')),
      standard: amount(about('Standard', 'The true size of the standard.', '3.0000 in')),
      read: amount(about('Read', 'What the instrument showed.', '3.0001 in')),
      by,
      date: day,
      note,
    },
    { required: ['instrument', 'standard', 'read'] },
  ),
);

export const changed = (title: string, description: string, example: unknown, size: string): Schema =>
  list(
    about(title, description, [example]),
    mapShape(
      {
        part: word(about('Part', 'Which part.', 'main shells')),
        at: position,
        size: grade(about('Size grade', 'std, or how far under or over standard size it is now.', size)),
        by,
        date: day,
        note,
      },
      { required: ['part'] },
    ),
  );

export const found: Schema = list(
  about('Found', 'What was seen and has no number.', [
    { on: 'main 3 shell lower', is: 'wiped to copper', do: 'renew' },
  ]),
  mapShape(
    {
      on: wordOrWords(
        about(
          'On',
          'The part it was seen on, by any of its names, or another thing such as an oil pump.',
          'main 3 shell lower',
        ),
      ),
      is: text(about('Is', 'What was seen.', 'wiped to copper')),
      do: choice(about('Do', 'What is to be done about it.', 'renew'), REMEDIES),
      depth: amount(
        about(
          'Depth',
          'How deep a score or a pit goes, where it was measured: a plan cuts below it.',
          0.0015,
        ),
      ),
      by,
      date: day,
      note,
      photos,
    },
    { required: ['on', 'is'] },
  ),
);

/** Kept by the program, so that rows of a spreadsheet come in once. */
const imported: Schema = list(
  about('Imported', 'Rows of spreadsheets that readings came from; they are not imported twice.', [
    { file: 'bores.csv', rows: 24, sha256: '0'.repeat(64) },
  ]),
  mapShape(
    {
      file: text(about('File', 'The name of the file.', 'bores.csv')),
      rows: {
        ...about('Rows', 'How many rows below the headings, from the first.', 24),
        type: 'integer',
        minimum: 1,
        errorMessage: 'write how many rows, as a whole number',
      },
      sha256: {
        ...about('SHA-256', 'Of the headings and those rows.', '0'.repeat(64)),
        type: 'string',
        pattern: '^[0-9a-f]{64}$',
        errorMessage: 'leave it as it was written',
      },
    },
    { required: ['file', 'rows', 'sha256'] },
  ),
);
