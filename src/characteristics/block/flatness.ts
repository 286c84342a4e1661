import { familyOf } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { type Grid, type Measured, summary, valuesOf } from '../grid.ts';
import { read } from '../readFigure.ts';

interface Face {
  /** What its ids begin with, and as tables say it. */
  readonly name: string;
  readonly of: string;
  readonly source: string;
}

/** Of a straightedge on a face: two lines each way along it, across it and on its diagonals. */
const LINES = { stations: ['first', 'second'], directions: ['along', 'across', 'diagonal'] };

/** How far a face is out of flat: over all lines, along, across, and within a length that its limit names. */
export const flatness = ({ name, of, source }: Face): readonly Characteristic[] => [
  read({
    id: `${name}_flatness`,
    label: `${name} flatness`,
    of,
    family: familyOf('bank'),
    grid: `${name}_flatness`,
    usualGrid: LINES,
    description: `Largest gap under a straightedge on the ${name}, along it, across it and on its diagonals.`,
    usual: 'feeler gauge',
    formula: 'as read; the greatest of the lines is judged',
    words: { above: 'out of flat', below: 'flat' },
    source,
  }),
  onLines(name, of, source, 'along'),
  onLines(name, of, source, 'across'),
  read({
    id: `${name}_flatness_in_span`,
    label: `${name} flatness in a span`,
    of,
    family: familyOf('bank'),
    isInLength: true,
    description: `Largest gap under a straightedge on the ${name} within the length that the limit names with \`per:\`, such as any 6 in: a straightedge of that length, moved about.`,
    usual: 'feeler gauge',
    words: { above: 'out of flat', below: 'flat' },
    source: 'service data of a diesel engine: .10 mm overall, .05 mm in any 152 mm',
  }),
];

const onLines = (name: string, of: string, source: string, way: 'along' | 'across'): Characteristic =>
  read({
    id: `${name}_flatness_${way}`,
    label: `${name} flatness ${way}`,
    of,
    family: familyOf('bank'),
    description: `Largest gap under a straightedge ${way} the ${name}: of its flatness the lines that are called ${way}.`,
    usual: 'feeler gauge',
    formula: `of the flatness the greatest of the lines ${way}`,
    derivations: [
      {
        route: `lines ${way}`,
        inputs: [`${name}_flatness`],
        compute: ([lines]) => lines && ofLines(lines, way),
      },
    ],
    words: { above: 'out of flat', below: 'flat' },
    onlyWithLimits: true,
    source,
    examples: [
      {
        unit: 'in',
        given: {
          [`${name}_flatness`]: {
            directions: ['along', 'across', 'diagonal'],
            rows: [
              ['0.005', '0.001', '0.004'],
              ['0.005', '0.001', '0.003'],
            ],
          },
        },
        least: way === 'along' ? '0.005' : '0.001',
        greatest: way === 'along' ? '0.005' : '0.001',
        source: 'worked by hand, invented readings',
      },
    ],
  });

/** Nothing where no line is called so: what was read across says nothing of what lies along. */
const ofLines = ({ directions, rows }: Grid, way: string): Measured | undefined =>
  summary(
    valuesOf({
      stations: [],
      directions: [way],
      rows: rows.map((row) => row.filter((_, column) => directions[column] === way)),
    }),
  );
