import { STAGES } from '../../documents/session/stage.ts';
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
  whole,
  withOptional,
} from './parts.ts';
import { rowDefinitions } from './rowSchema.ts';

const severity: Schema = { enum: ['error', 'warning', 'remark'] };

const session = () => ({
  name: text,
  path: text,
  stage: { enum: [...STAGES, null] },
  date: orNull(text),
  judged: described('False where the document has a problem.', { type: 'boolean' }),
  rows: list(ref('row')),
  findings: list(ref('finding')),
  tightened: list(ref('tightened')),
  stepped_back: described('Readings from before work on their part.', list(ref('stepped_back'))),
  counts: described('Rows by verdict.', { type: 'object', additionalProperties: whole }),
});

const definitions: Readonly<Record<string, Schema>> = {
  place: object(
    { path: text, line: whole, column: whole, end_line: whole, end_column: whole },
    'Counted from 1, the end exclusive; the path is relative to the working directory, with /.',
  ),
  revision: object({ revision: text, commit: text }, 'As it was asked for, and the commit that it names.'),
  diagnostic: object(
    { code: text, severity: { const: 'error' }, message: text, help: orNull(text), place: ref('place') },
    'A problem with a document. A document that has one is not judged.',
  ),
  finding: withOptional(
    object(
      {
        code: text,
        severity,
        message: text,
        measure: orNull(text),
        position: orNull(text),
        at: orNull(coordinates),
        place: ref('place'),
        limit_place: orNull(ref('place')),
      },
      'A problem with the engine, or with how it was measured.',
    ),
    { known: described('Only with --known: whether the run was told of it.', { type: 'boolean' }) },
  ),
  known: object(
    {
      findings: described('How many of the findings were known.', whole),
      gone: described('What was known and is no longer found.', list(ref('known_finding'))),
    },
    'Only with --known.',
  ),
  share: described('Only with --share: which it is, and what tenths gather needs.', {
    type: 'object',
  }),
  known_finding: object({
    code: text,
    engine: text,
    session: described('Its path, or `state` for the present state of the engine.', orNull(text)),
    measure: orNull(text),
    position: orNull(text),
  }),
  ...rowDefinitions,
  tightened: object(
    {
      sequence: text,
      path: text,
      joint: text,
      with: orNull(text),
      fasteners: described('null where it is not said', { enum: ['new', 'reused', null] }),
      passes: described('how many are logged; null where they are not', orNull(whole)),
    },
    'A joint that the session says was tightened.',
  ),
  stepped_back: object(
    {
      measure: text,
      position: text,
      at: coordinates,
      written: list(text),
      work: text,
      on: text,
      place: ref('place'),
    },
    'A reading from before work on its part: kept, and not judged.',
  ),
  last_known: object({
    measure: text,
    position: text,
    at: coordinates,
    unit: text,
    least: orNull(number),
    greatest: orNull(number),
    read_in: orNull(text),
    date: text,
  }),
  session: object(session()),
  state: object(
    {
      ...session(),
      run: described('The sessions since it last ran, the earliest first.', list(text)),
      last_known: described('What was measured once and holds no longer.', list(ref('last_known'))),
    },
    'The present state of the engine: of each value the latest that still holds.',
  ),
  engine: withOptional(
    object({
      path: text,
      name: orNull(text),
      judged: described('False where files that its verdicts stand on have errors.', {
        type: 'boolean',
      }),
      rule: { enum: ['simple', 'guarded', null] },
      state: described('null where sessions were asked for, or there is none.', orNull(ref('state'))),
      sessions: described('Those that were asked for.', list(ref('session'))),
    }),
    {
      faulty: described('Of an engine that is not judged: the files that have errors.', list(text)),
      view: described('Only with --share: for tenths gather alone.', { type: 'object' }),
    },
  ),
  follow_up: object({
    session: text,
    measure: text,
    position: text,
    at: coordinates,
    state: { enum: ['open', 'closed'] },
    closed_by: orNull(text),
  }),
};

/** What `tenths check --format json` prints. */
export const checkSchema = (): Schema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'tenths check',
  ...withOptional(
    object({
      format: { const: 'tenths.check' },
      version: { const: 2 },
      tool: object({ name: { const: 'tenths' }, version: text }),
      at: described('The commit that was checked; null for the working tree.', orNull(ref('revision'))),
      since: described('Only engines that changed after it are listed.', orNull(ref('revision'))),
      staged: described('What is staged in git was checked.', { type: 'boolean' }),
      strict: { type: 'boolean' },
      exit: { enum: [0, 1, 2] },
      diagnostics: list(ref('diagnostic')),
      findings: described(
        'Of no session: files that look like documents and were not read.',
        list(ref('finding')),
      ),
      engines: list(ref('engine')),
      follow_ups: list(ref('follow_up')),
      summary: object({
        engines: whole,
        sessions: whole,
        diagnostics: whole,
        errors: whole,
        warnings: whole,
        remarks: whole,
      }),
    }),
    { known: ref('known'), share: ref('share') },
  ),
  definitions,
});
