import { describe, expect, it } from 'vitest';
import { heldFigures } from '../../../src/output/plan/handover/heldFigures.ts';
import { jobWords } from '../../../src/output/plan/jobWords.ts';
import { unitNamed } from '../../../src/quantity/units.ts';
import { contextOf, jobCalled, jobsIn } from '../../plan/planOf.ts';
import { ENGINE, type Files, limitsOf, REGISTER, sessionOf } from '../../shopOf.ts';

/** A head that is out of flat by 8 thou. */
const head = (limits: string, reading: string): Files => ({
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(`head_thickness: { ${limits} }\nhead_flatness: { wear: { max: 0.004 } }`),
  'e/session.yaml': sessionOf(
    'teardown',
    `${reading}\n- { measure: head_flatness, at: { all: 0.008 } }\n- { measure: head_flatness, at: { all: 0.008 } }`,
  ),
});

const THICKNESS = (read: string): string => `- { measure: head_thickness, with: mic, at: { all: ${read} } }`;

describe('a head that is to be surfaced says what may still be cut', () => {
  it.each([
    [
      'as much as it takes',
      'new: 3.990 to 4.000, least_thickness: 3.960',
      THICKNESS('3.9800'),
      ['head thickness all: 3.9800 in, 0.0200 in may still be cut (last min 3.9600)'],
    ],
    [
      'by its wear limit',
      'new: 3.990 to 4.000, wear: { min: 3.970 }',
      THICKNESS('3.9800'),
      ['head thickness all: 3.9800 in, 0.0100 in may still be cut (wear min 3.9700)'],
    ],
    ['and of one that was not measured nothing', 'least_thickness: 3.960', '', []],
    ['and of one without a least nothing', 'new: 3.970 to 4.000', THICKNESS('3.9800'), []],
  ])('%s', (_, limits, reading, said) => {
    const { engine } = contextOf(head(limits, reading));
    const words = jobWords(jobCalled('surface cylinder head', head(limits, reading)), [], engine, () =>
      unitNamed('in'),
    );
    expect(words.cuts.flatMap(({ answer }) => answer)).toEqual(said);
  });

  it.each([
    [
      'less than it takes',
      THICKNESS('3.9650'),
      'head thickness all: 3.9650 in, 0.0050 in may still be cut (last min 3.9600)',
    ],
    [
      'nothing',
      THICKNESS('3.9600'),
      'head thickness all: 3.9600 in, nothing may be cut any more (last min 3.9600)',
    ],
  ])('and is renewed where that is %s', (_, reading, left) => {
    const files = head('new: 3.990 to 4.000, least_thickness: 3.960', reading);
    const { engine } = contextOf(files);
    const job = jobCalled('renew cylinder head', files);
    expect(jobsIn(files).filter(({ operation }) => operation === 'surface')).toEqual([]);
    expect(jobWords(job, [], engine, () => unitNamed('in')).cuts.flatMap(({ answer }) => answer)).toEqual([
      left,
      'less than it is out (0.008 in): renewed, and not surfaced',
    ]);
  });

  it('asks the machine shop for no thickness of a new one', () => {
    const files = head('new: 3.990 to 4.000, least_thickness: 3.960', THICKNESS('3.9800'));
    const { engine, registry } = contextOf(files);
    expect(heldFigures(jobCalled('surface cylinder head', files), engine, registry)).toEqual([
      'hold head thickness at least 3.96 in',
    ]);
  });
});
