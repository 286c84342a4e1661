import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { characteristics } from '../../src/characteristics/registry.ts';
import { type Files, reportOf } from '../shopOf.ts';

const examples = fileURLToPath(new URL('../../examples/', import.meta.url));

/** The documents of one engine of the example shop, of the shop, and of its families. */
function filesOf(engine: string): Files {
  const own = readdirSync(`${examples}engines/${engine}`, { recursive: true, encoding: 'utf8' });
  const paths = [
    'shop.yaml',
    'instruments.yaml',
    ...readdirSync(`${examples}limits`).map((name) => `limits/${name}`),
    ...own.filter((name) => name.endsWith('.yaml')).map((name) => `engines/${engine}/${name}`),
  ];
  return Object.fromEntries(paths.map((path) => [path, readFileSync(examples + path, 'utf8')]));
}

/** What the sessions of an engine read, or work out from what they read. */
const carriedBy = (engine: string): ReadonlySet<string> =>
  new Set(
    reportOf(filesOf(engine)).sessions.flatMap(({ rows }) =>
      rows.flatMap(({ characteristic, routes }) => (routes.length > 0 ? [characteristic.id] : [])),
    ),
  );

/** What one engine cannot have, and who has it. */
const NOT_OF_THE_SIX: Readonly<Record<string, readonly string[]>> = {
  'it is bored in the block, without liners: the drainage pump has wet ones': [
    ...['upper_belt', 'lower_belt', 'flange'].flatMap((belt) => [
      `liner_${belt}_outside_diameter`,
      `liner_${belt}_outside_out_of_round`,
      `liner_${belt}_outside_taper`,
      `block_${belt}_bore`,
      `block_${belt}_out_of_round`,
      `block_${belt}_taper`,
      `liner_${belt}_fit`,
    ]),
    'counterbore_depth',
    'counterbore_depth_spread',
    'counterbore_depth_step',
    'liner_flange_thickness',
    'liner_protrusion',
    'liner_protrusion_spread',
    'liner_protrusion_step',
  ],
  'six in line are balanced without bobweights: the drainage pump is a vee': [
    'oil_allowance',
    'balance_factor',
    'bobweight',
  ],
};

/** What no engine of the shop has. */
const OF_NONE: Readonly<Record<string, readonly string[]>> = {
  'no block has a plate under its liners': ['spacer_plate_thickness', 'spacer_gasket_thickness'],
  'each valve has one spring': ['inner_valve_spring_free_length', 'inner_valve_spring_squareness'],
  'the camshaft is driven by gears': ['timing_chain_length', 'timing_chain_slack'],
  'the six has ignition, and no pump engine names its injection': ['injection_timing'],
  'a skirt is oval and tapered by design, and is read at its gauge point alone': [
    'piston_out_of_round',
    'piston_taper',
  ],
  'the housings of the mains are read at one station': ['main_housing_taper'],
};

const ids = characteristics.map(({ id }) => id);
const six = carriedBy('generator-set-6');
const others = new Set(
  ['drainage-pump-8', 'reservoir-pump-2', 'site-four-generator'].flatMap((engine) => [...carriedBy(engine)]),
);

describe('the generator set of the example shop', () => {
  it('carries every figure of the list, but for those that it cannot have and for which a reason stands here', () => {
    const reasons = [...Object.values(NOT_OF_THE_SIX), ...Object.values(OF_NONE)].flat();
    expect(new Set(reasons).size).toBe(reasons.length);
    expect(ids.filter((id) => !six.has(id)).sort()).toEqual([...reasons].sort());
  });

  it.each(Object.entries(NOT_OF_THE_SIX))('%s, which carries them', (_, figures) => {
    expect(figures.filter((id) => !others.has(id))).toEqual([]);
  });

  it.each(Object.entries(OF_NONE))('and none carries what nothing here has: %s', (_, figures) => {
    expect(figures.filter((id) => six.has(id) || others.has(id))).toEqual([]);
  });

  it('says how many in the page about the shop', () => {
    const page = readFileSync(`${examples}README.md`, 'utf8');
    expect(page).toContain(`${six.size} characteristics of ${ids.length}`);
  });
});
