import type { Family } from '../../layout/family.ts';
import { withArticle } from '../../quantity/words.ts';
import type { Characteristic } from '../characteristic.ts';
import { readSize } from '../readFigure.ts';

interface Spring {
  /** The id of its part, which the ids of its figures begin with. */
  readonly name: string;
  readonly label: string;
  readonly family: Family;
}

/** What a spring is measured for off the engine: how long it is and whether it stands upright. */
export const springSizes = ({ name, label, family }: Spring): readonly Characteristic[] => [
  freeLength({ name, label, family }),
  readSize({
    id: `${name}_squareness`,
    label: `${label} squareness`,
    of: name,
    description: `How far ${withArticle(label)} that stands on a plate leans away from a square at its top, the worst way round.`,
    family,
    usual: 'feeler gauge',
    words: { above: 'leaning', below: 'upright' },
    source: 'common practice, no source',
  }),
];

export const freeLength = ({ name, label, family }: Spring): Characteristic =>
  readSize({
    id: `${name}_free_length`,
    label: `${label} free length`,
    of: name,
    description: `Length of ${withArticle(label)} under no load.`,
    family,
    usual: 'caliper',
    words: { above: 'long', below: 'short' },
    source: 'TM 10-4320-344-24, p. 4-5, and TM 9-6115-464-34, p. 1-15',
  });
