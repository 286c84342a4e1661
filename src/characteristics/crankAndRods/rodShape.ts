import { familyOf } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { journalTaper } from '../form.ts';
import { type ReadFigure, read, readSize } from '../readFigure.ts';

const CYLINDER = familyOf('cylinder');

/** Distances of the ends tell the length that a limit counts in. */
const BAR_NOTE =
  'It counts for a length of the bar: give the stations their distance, and the limit its `per:`, such as 1 in or 100 mm. A figure that is written directly is for the length of its limit.';

const barAtItsEnds = (about: Pick<ReadFigure, 'id' | 'label' | 'description'>): Characteristic =>
  read({
    of: 'rod',
    family: CYLINDER,
    usualGrid: { stations: ['front', 'rear'], directions: [] },
    usual: 'dial indicator',
    source: 'common practice, no source',
    ...about,
  });

const outOfTrue = (
  about: Pick<ReadFigure, 'id' | 'label' | 'description' | 'source'> & { readonly read: string },
): Characteristic => {
  const { read: input, ...said } = about;
  return read({
    of: 'rod',
    family: CYLINDER,
    figure: 'taper',
    note: BAR_NOTE,
    usual: 'dial indicator',
    formula: 'at one end of the bar − at the other, without a sign, for the length that the limit names',
    derivations: [
      {
        route: 'one end of the bar − the other',
        inputs: [input],
        compute: ([ends], choice) => ends && journalTaper(ends, choice),
      },
    ],
    onlyWithLimits: true,
    examples: [
      {
        unit: 'in',
        given: { [input]: { stations: ['front', 'rear'], rows: [['0.0120'], ['0.0102']] } },
        least: '0.0018',
        greatest: '0.0018',
        source: 'worked by hand, invented readings',
      },
    ],
    ...said,
  });
};

/** Whether a rod is long enough, straight and wide enough. */
export const rodShape: readonly Characteristic[] = [
  readSize({
    id: 'rod_centre_distance',
    label: 'rod centre distance',
    of: 'rod',
    dependsOn: ['rod_bolt', 'small_end_bush'],
    family: CYLINDER,
    description: 'From the middle of the big end to that of the small end, in a fixture.',
    usual: 'height gauge',
    words: { above: 'long', below: 'short' },
    source: 'TM 5-3805-260-24: 7.900 ± .001 in',
  }),
  barAtItsEnds({
    id: 'rod_bar_height',
    label: 'rod bar height',
    description:
      'Height of a bar in the small end, at both its ends, the rod upright on an arbor in the big end: what is uneven is bend.',
  }),
  outOfTrue({
    id: 'rod_bend',
    label: 'rod bend',
    description: 'How far the small end is out of parallel with the big end, seen along the engine.',
    read: 'rod_bar_height',
    source: 'TM 9-2815-220-24, WP 0143-8: .0005 in per inch of bearing width with a new bush, .0010 used',
  }),
  barAtItsEnds({
    id: 'rod_bar_offset',
    label: 'rod bar offset',
    description:
      'How far a bar in the small end stands to the side, at both its ends, the rod on an arbor in the big end: what is uneven is twist.',
  }),
  outOfTrue({
    id: 'rod_twist',
    label: 'rod twist',
    description: 'How far the small end is turned about the length of the rod against the big end.',
    read: 'rod_bar_offset',
    source: 'TM 5-6115-593-34, table 1-2: twist .020 in without a bushing, .010 with it',
  }),
  readSize({
    id: 'rod_big_end_width',
    label: 'rod big end width',
    of: 'rod',
    family: CYLINDER,
    description: 'Width of the big end of a rod along the crankpin.',
    usual: 'micrometer',
    words: { above: 'wide', below: 'narrow' },
    source: 'common practice, no source',
  }),
  readSize({
    id: 'crankpin_width',
    label: 'crankpin width',
    of: 'crankpin',
    family: familyOf('crankpin'),
    description: 'Width of a crankpin between its cheeks.',
    usual: 'inside micrometer',
    words: { above: 'wide', below: 'narrow' },
    source: 'TM 5-4320-302-14, p. 6-145: 34.0 to 34.039 mm',
  }),
];
