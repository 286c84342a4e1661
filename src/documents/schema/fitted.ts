import { NAMED_AXES } from '../../layout/axis.ts';
import { CONDITIONS } from '../session/partChanges.ts';
import { note, source } from './document.ts';
import { PATTERNS } from './patterns.ts';
import { about, choice, grade, type Schema, word } from './scalars.ts';
import { mapShape, named, type Properties } from './shared.ts';

const identity: Properties = {
  mark: word(about('Mark', 'The mark or number stamped on the part.', 'K4471')),
  code: word(about('Code', "The maker's or supplier's code.", 'A12-10')),
  condition: choice(
    about(
      'Condition',
      'used is judged by the wear limit, new and reground by the limits of new parts.',
      'new',
    ),
    CONDITIONS,
  ),
  size: grade(about('Size grade', 'std, or how far under or over standard size.', '0.010 under')),
};

const outside: Schema = grade(
  about(
    'Outside',
    'Of shells for a housing that was bored out: how much larger they are outside. `size` is what they take from the journal.',
    '0.020 over',
  ),
);

const half = (which: string): Schema =>
  grade(about(`${which} half`, `The size grade of the ${which.toLowerCase()} shell.`, '0.011 under'));

const atOnePosition: Schema = {
  anyOf: [
    grade(about('Size grade', 'The size grade at this position.', '0.010 under')),
    mapShape(
      { ...identity, upper: half('Upper'), lower: half('Lower'), outside, note },
      { minProperties: 1 },
    ),
  ],
  errorMessage: 'write a size grade such as 0.010 under, or { lower: 0.011 under }',
};

/** Of a part that has several places of one size. */
const GRADED = NAMED_AXES.flatMap(({ isGraded, label }) => (isGraded ? [label] : []));

const gradeOfFamily = (family: string): [string, Schema] => [
  family,
  grade(
    about(
      `Size at each ${family.replaceAll('_', ' ')}`,
      `The size grade of every ${family.replaceAll('_', ' ')} of this part.`,
      '0.010 under',
    ),
  ),
];

const fittedPart: Schema = mapShape(
  {
    ...identity,
    ...Object.fromEntries(GRADED.map(gradeOfFamily)),
    thrust_journal: grade(
      about('Thrust faces', 'How much wider a crankshaft is between its thrust faces.', '0.010 over'),
    ),
    outside,
    at: named(
      about('At', 'Positions that differ from the rest.', { 3: { lower: '0.011 under' } }),
      atOnePosition,
    ),
    source,
    note,
  },
  { minProperties: 1 },
);

const part = (title: string): Schema => ({ title, description: `The ${title.toLowerCase()} in the engine.` });

/** What is in the engine: it moves nominal sizes and chooses the band that decides. */
export const fitted: Schema = {
  ...about('Fitted', 'The parts in the engine, with their marks, condition and size grades.', {
    crankshaft: { mark: 'K4471', condition: 'reground', main: '0.010 under', crankpin: 'std' },
  }),
  type: 'object',
  additionalProperties: false,
  properties: {
    crankshaft: part('Crankshaft'),
    main_shells: part('Main bearing shells'),
    rod_shells: part('Rod bearing shells'),
    rods: part('Connecting rods'),
    pistons: part('Pistons'),
    rings: part('Piston rings'),
    block: part('Block'),
    camshaft: part('Camshaft'),
    head: part('Cylinder head'),
  },
  patternProperties: { [PATTERNS.identifier]: fittedPart },
};
