import { document, note, source } from '../document.ts';
import { about, amount, amountOrRange, grade, type Schema, texts, word } from '../scalars.ts';
import { list, mapShape, named, type Properties } from '../shared.ts';

/** What lies on the shelf. */
export const stockSchema = (): Schema =>
  document(
    'stock',
    { title: 'Stock', description: 'Parts on the shelf, from which a plan chooses.' },
    {
      shells: list(
        about('Shells', 'Bearing halves, by size, code and wall.', [
          { code: 'A12-10', fits: 'main shells', size: '0.010 under', wall: '0.0980 to 0.0982', count: 10 },
        ]),
        mapShape(
          {
            ...counted,
            fits: word(about('Fits', 'Which shells they are.', 'main shells')),
            size,
            class: word(about('Class', "Its letter, number or colour in the maker's table.", 'B')),
            wall: amountOrRange(
              about('Wall', 'How thick a half is at its middle: measured, or as it is sold.', 0.0982),
            ),
          },
          { required: ['code', 'fits', 'wall', 'count'] },
        ),
      ),
      pistons: list(
        about('Pistons', 'Each piston by its mark, measured at gauge height.', [
          { mark: 'P1', size: '0.020 over', diameter: 3.8918, weight: '880 g' },
        ]),
        mapShape(
          {
            mark: word(about('Mark', 'What is written or stamped on it.', 'P1')),
            size,
            diameter: amount(about('Diameter', 'As measured at gauge height.', 3.8918)),
            weight: amount(about('Weight', 'As weighed, for a set of one weight.', '880 g')),
            ran_in: word(
              about('Ran in', 'The cylinder that a used piston ran in: it is offered to no other.', 3),
            ),
            reserved: word(about('Reserved', 'The job that has it.', 2417)),
            for: engines,
            source,
            note,
          },
          { required: ['mark', 'diameter'] },
        ),
      ),
      thrust_washers: sizedList('Thrust washers', 'Sets of thrust washers, by size.', {
        code: 'T4-5',
        size: '0.005 over each',
        count: 2,
      }),
      rings: sizedList('Rings', 'Sets of rings for one cylinder, by size.', {
        code: 'K6-20',
        size: '0.020 over',
        count: 6,
      }),
      gaskets: thicknessList('Gaskets', 'Head gaskets, by how thick they are when tightened.', {
        code: 'H4-B',
        thickness: '1.65 mm',
        count: 1,
      }),
      liner_shims: thicknessList('Liner shims', 'Shims under the flanges of liners.', {
        code: 'S15',
        thickness: '0.15 mm',
        count: 8,
      }),
      lash_buckets: thicknessList('Lash buckets', 'Buckets or shims that set the valve lash.', {
        code: '42',
        thickness: '5.42 mm',
        count: 2,
      }),
      source,
    },
    [],
  );

const engines: Schema = texts(
  about('For', 'The engines that it fits, by name; every one where none is named.', ['Generator set 6']),
);

const size: Schema = grade(about('Size grade', 'std, or how far under or over standard.', '0.010 under'));

const HOW_MANY: Schema = {
  type: 'integer',
  minimum: 0,
  maximum: 10000,
  errorMessage: 'write how many, as a whole number',
};

const counted: Properties = {
  code: word(about('Code', "The maker's or supplier's code.", 'A12-10')),
  count: { ...about('Count', 'How many there are; of shells how many halves.', 10), ...HOW_MANY },
  reserved: named(about('Reserved', 'How many of them each job has.', { 2417: 4 }), HOW_MANY),
  for: engines,
  source,
  note,
};

const sizedList = (title: string, description: string, example: unknown): Schema =>
  list(about(title, description, [example]), mapShape({ ...counted, size }, { required: ['code', 'count'] }));

const thicknessList = (title: string, description: string, example: unknown): Schema =>
  list(
    about(title, description, [example]),
    mapShape(
      { ...counted, thickness: amount(about('Thickness', 'How thick it is.', '1.65 mm')) },
      { required: ['code', 'thickness', 'count'] },
    ),
  );
