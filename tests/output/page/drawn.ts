import { renderToStaticMarkup } from 'preact-render-to-string';
import { draw, type Picture } from '../../../src/output/page/pictures/pictures.ts';

/** A mark as a reader of the SVG finds it. */
export interface Mark {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
}

/** Every element of a picture, read back from its markup. */
export function marksOf(picture: Picture): readonly Mark[] {
  const markup = renderToStaticMarkup(draw(picture));
  return [...markup.matchAll(/<([a-z]+)((?: [\w-]+="[^"]*")*)(?:\/>|>([^<]*))/g)].map(
    ([, name = '', attributes = '', text = '']) => ({
      name,
      attributes: Object.fromEntries(
        [...attributes.matchAll(/ ([\w-]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, value]),
      ),
      text,
    }),
  );
}

/** Those of a class, by a number of theirs. */
export const placesOf = (picture: Picture, name: string, attribute: string): readonly number[] =>
  marksOf(picture)
    .filter(({ attributes }) => attributes.class?.split(' ').includes(name))
    .map(({ attributes }) => Number(attributes[attribute]));

export const pointsOf = (picture: Picture, name: string): readonly (readonly [number, number])[] =>
  (
    marksOf(picture).find(({ attributes }) => attributes.class?.split(' ').includes(name))?.attributes
      .points ?? ''
  )
    .split(' ')
    .filter(Boolean)
    .map((point) => {
      const [x = Number.NaN, y = Number.NaN] = point.split(',').map(Number);
      return [x, y] as const;
    });
