import { STAGES } from '../../session/stage.ts';
import { by, document, note, source } from '../document.ts';
import { fitted } from '../fitted.ts';
import { readingDefinitions } from '../points.ts';
import { conditions, readings, temperature } from '../reading.ts';
import { about, choice, date, type Schema, text, texts, word } from '../scalars.ts';
import { changed, checked, found } from '../session.ts';
import { list, mapShape, measure, type Offered } from '../shared.ts';

/** A part that lies on the shelf or at the bench, in no engine. */
export const partSchema = (offered: readonly Offered[]): Schema =>
  document(
    'part',
    {
      title: 'Part',
      description:
        'A part by its mark: where it comes from, where it lies, and what was read of it outside an engine.',
    },
    {
      part: word(about('Part', 'What it is.', 'crankshaft')),
      mark: word(about('Mark', 'What is stamped on it here; a casting number is no mark.', 'K4471')),
      fits: texts(
        about(
          'Fits',
          'Engines that it fits, by name: limits and layout of the first count for what is read.',
          ['Quay crane'],
        ),
      ),
      bought: text(about('Bought', 'From whom, and when.', 'an invented dealer, 2015')),
      from: list(
        about('From', 'Engines that it came out of, and when.', [
          { engine: 'Quay crane', date: '2019-05-20' },
        ]),
        mapShape(
          {
            engine: text(about('Engine', 'By its name, or its folder.', 'Quay crane')),
            date: date(about('Date', 'The day on which it came out.', '2019-05-20')),
            note,
          },
          { required: ['engine', 'date'] },
        ),
      ),
      lies: text(about('Lies', 'Where it is now.', 'rack 3, upright')),
      reserved: word(
        about('Reserved', 'The job, or the engine, that has it: it is offered to no other.', 2417),
      ),
      fitted,
      inspections: list(
        about('Inspections', 'What was read and done outside an engine, a sitting each.', [
          { date: '2019-06-04', machined: [{ part: 'crankpins', size: '0.010 under' }] },
        ]),
        inspection,
      ),
      source,
    },
    ['part', 'mark'],
    {
      ...readingDefinitions,
      measure: measure(about('Characteristic', 'Its id.', 'crankpin_diameter'), offered),
    },
  );

const inspection: Schema = mapShape(
  {
    date: date(about('Date', 'The day of it.', '2019-06-04')),
    stage: choice(
      about(
        'Stage',
        'It chooses the band that decides, as in a session; service where nothing is said.',
        'machined',
      ),
      STAGES,
    ),
    by,
    temperature,
    conditions,
    checked,
    readings,
    machined: changed(
      'Machined',
      'What was machined, and the size made.',
      { part: 'crankpins', size: '0.010 under' },
      '0.010 under',
    ),
    found,
    note,
  },
  { required: ['date'] },
);
