import { ownCharacteristics } from './characteristic.ts';
import { decisionRule, document } from './document.ts';
import { directions, stations } from './grid.ts';
import { PATTERNS } from './patterns.ts';
import { about, type Schema, text } from './scalars.ts';
import { mapShape, type Offered } from './shared.ts';

export const shopSchema = (offered: readonly Offered[]): Schema =>
  document(
    'shop',
    { title: 'Shop', description: 'Defaults for every engine in the folders below.' },
    {
      name: text(about('Name', 'What the shop is called.', 'Lower Mill engine shop')),
      decision_rule: decisionRule,
      grids: grids(offered),
      characteristics: ownCharacteristics,
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
