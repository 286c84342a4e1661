import { ownCharacteristics } from './characteristic.ts';
import { decisionRule, document } from './document.ts';
import { directions, stations } from './grid.ts';
import { PATTERNS } from './patterns.ts';
import { about, amount, grade, type Schema, text, texts, words } from './scalars.ts';
import { list, map, mapShape, named, type Offered } from './shared.ts';

export const shopSchema = (offered: readonly Offered[]): Schema =>
  document(
    'shop',
    { title: 'Shop', description: 'Defaults for every engine in the folders below.' },
    {
      name: text(about('Name', 'What the shop is called.', 'Lower Mill engine shop')),
      decision_rule: decisionRule,
      grids: grids(offered),
      characteristics: ownCharacteristics,
      plan,
    },
    [],
  );

/** A grid serves every diameter of a part, so it is named by the diameter's id without its last word. */
const grids = (offered: readonly Offered[]): Schema => ({
  ...about(
    'Grids',
    'Where each part is measured, stated once; a flat list of readings then fills the grid.',
    {
      cylinder: { stations: { top: 0.5, middle: 2.5, bottom: 5.5 }, directions: ['thrust', 'axial'] },
    },
  ),
  type: 'object',
  additionalProperties: false,
  properties: Object.fromEntries(offered.flatMap(partOf)),
  patternProperties: { [PATTERNS.identifier]: mapShape({ stations, directions }, { minProperties: 1 }) },
});

function partOf({ id, label }: Offered): [string, Schema][] {
  const part = /^(.+)_(?:diameter|bore)$/.exec(id)?.[1];
  return part === undefined ? [] : [[part, { title: label, description: `The grid of every ${label}.` }]];
}

const plan: Schema = map(
  about('Plan', 'How the shop plans work on an engine.', { polish: 0.0002, hone_stock: 0.001 }),
  {
    steps: named(
      about(
        'Steps',
        'The sizes to which a part is ground or bored, where its limits print none; the first cut comes first.',
        { main_journals: ['0.010 under', '0.020 under'] },
      ),
      list(
        about('Sizes', 'How far under or over standard.', ['0.010 under', '0.020 under']),
        grade(about('Size grade', 'How far under or over standard.', '0.010 under')),
      ),
    ),
    polish: amount(about('Polish', 'What polishing takes off the diameter of a ground journal.', 0.0002)),
    hone_stock: amount(
      about('Hone stock', 'What boring leaves for the hone, on the diameter of a cylinder.', 0.001),
    ),
    weight_spread: amount(
      about('Weight spread', 'How much the pistons of one engine may differ in weight.', '4 g'),
    ),
    separate: words(
      about('Separate', 'Parts of which each is cut to a size of its own, instead of all to one.', [
        'cylinders',
      ]),
    ),
    required: texts(
      about('Required', 'Boxes of the page before closing up that somebody has to confirm.', [
        'second initials',
      ]),
    ),
  },
);
