import type { Characteristic } from './characteristic.ts';

/** What has to be said of a figure that is read off; the rest is usual. */
export type ReadFigure = Pick<
  Characteristic,
  'id' | 'label' | 'of' | 'family' | 'description' | 'usual' | 'source'
> &
  Partial<Characteristic>;

/** A figure that is read directly and comes from no others: a length unless it says otherwise. */
export const read = (about: ReadFigure): Characteristic => ({
  dependsOn: [],
  quantity: 'length',
  figure: 'other',
  formula: 'read directly',
  derivations: [],
  words: { above: 'over', below: 'under' },
  examples: [],
  ...about,
});

/** A size of one part, of which the least and the greatest of several readings are judged. */
export const readSize = (about: ReadFigure): Characteristic =>
  read({
    figure: 'size',
    formula: 'as read; the least and the greatest of the readings are both judged',
    words: { above: 'large', below: 'small' },
    ...about,
  });
