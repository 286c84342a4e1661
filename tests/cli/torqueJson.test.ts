import { readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { torqueSchema } from '../../src/output/schema/torqueSchema.ts';
import { call } from './call.ts';
import { benchFolder } from './calling.ts';

const ROOT = join(import.meta.dirname, '../..');

/** Fields may be added within a version, but not without the schema saying so. */
const closedSchema = (): object =>
  JSON.parse(JSON.stringify(torqueSchema()), (_, value: unknown) =>
    typeof value === 'object' && value !== null && 'required' in value
      ? { ...value, additionalProperties: false }
      : value,
  );
const FILES: Readonly<Record<string, string>> = {
  'shop.yaml': 'kind: shop\nunits: { length: mm, torque: N m }\n',
  'engine.yaml': 'kind: engine\nname: Pump\nlayout: { mains: 1 }\n',
  'torque/head.yaml': `kind: torque
joint: head
fasteners: { count: 4, thread: M10x1.5, grade: 10.9 }
order: [2, 3, 1, 4]
friction: { thread: 0.12, head: 0.12, head_diameter: 14 }
wrench: { length: 400 }
adapter: { length: 100 }
run_on: 2
passes:
  - { to: 20 }
  - { loosen: fully, reversed: true }
  - { to: 40, fasteners: [1, 2] }
  - { turn: 85 to 95 deg }
  - { stretch: 0.1 to 0.2 }
  - { check: 50, at_most: 70, note: the next day }
source: Invented.
`,
};

const validate = new Ajv({ strict: true, strictRequired: false }).compile(closedSchema());

/** Every torque document below a folder: the folder of its engine, its name, and which it is for a title. */
const cardsIn = (folder: string): readonly (readonly [string, string, string])[] =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((path) => /(^|\/)torque\/[^/]+\.yaml$/.test(path))
    .map((path) => [
      join(folder, path),
      join(ROOT, folder, dirname(dirname(path))),
      path.replace(/^.*\/(.+)\.yaml$/, '$1'),
    ]);

async function printed(engine: string, words: readonly string[]): Promise<unknown> {
  const { out, err, exit } = await call(engine, ['torque', ...words, '--format', 'json']);
  expect(err).toBe('');
  const card: { readonly exit?: unknown } = JSON.parse(out);
  expect(card.exit).toBe(exit);
  return card;
}

const bench = benchFolder();

describe('a card in JSON is as its schema says', () => {
  const cards = [...cardsIn('examples'), ...cardsIn('tests/cases')];

  test('and there are cards of examples and of cases to look at', () => {
    expect(cardsIn('examples').length).toBeGreaterThan(3);
    expect(cardsIn('tests/cases').length).toBeGreaterThan(8);
  });

  test.each(cards)('%s', async (_, engine, name) => {
    validate(await printed(engine, [name]));
    expect(validate.errors).toBe(null);
  });

  test('with every kind of pass, an adapter, a run-on torque and stated friction', async () => {
    bench.put(FILES);
    const card = await printed(bench.folder(), ['head']);
    validate(card);
    expect(validate.errors).toBe(null);
    expect(card).toMatchObject({
      order_from: 'maker',
      passes: [
        { kind: 'to', setting_N_m: expect.anything(), load: { by_friction_N: expect.any(Number) } },
        { kind: 'loosen', reversed: true, angle_deg: null },
        { kind: 'to', fasteners: ['2', '1'] },
        { kind: 'turn', angle_deg: { least: 85, greatest: 95 } },
        { kind: 'stretch', stretch_mm: { least: 0.1, greatest: 0.2 } },
        { kind: 'check', at_most_N_m: 70, note: 'the next day' },
      ],
    });
  });
});
