import { join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { planPageSchema } from '../../src/output/schema/planPageSchema.ts';
import { planSchema } from '../../src/output/schema/planSchema.ts';
import { atTheBench } from './bench.ts';
import { call } from './call.ts';

const ROOT = join(import.meta.dirname, '../..');

/** Fields may be added within a version, but not without the schema saying so. */
const closed = (schema: object): object =>
  JSON.parse(JSON.stringify(schema), (_, value: unknown) =>
    typeof value === 'object' && value !== null && 'required' in value
      ? { ...value, additionalProperties: false }
      : value,
  );

const ajv = new Ajv({ strict: true, strictRequired: false });
const validate = ajv.compile(closed(planSchema()));
const validatePage = ajv.compile(closed(planPageSchema()));

const asked = new Map<string, ReturnType<typeof call>>();

/** What a plan says of a shop; nothing changes there, so that every call is made once. */
function planOf(folder: string, words: readonly string[]): ReturnType<typeof call> {
  const key = [folder, ...words].join(' ');
  const answer = asked.get(key) ?? call(join(ROOT, folder), ['plan', ...words, '--format', 'json']);
  asked.set(key, answer);
  return answer;
}

describe('a plan in JSON is as its schema says', () => {
  test.each([
    ['examples', ['generator-set-6', '--session', 'teardown']],
    ['examples', ['drainage-pump-8', '--session', 'teardown']],
    ['examples', ['reservoir-pump-2', '--session', 'trial']],
    ['examples', ['generator-set-6']],
    ['tests/cases/plan/teardown', []],
  ])('%s %j', async (folder, words) => {
    const { out, err, exit } = await planOf(folder, words);
    expect(err).toBe('');
    const printed: { readonly exit?: unknown } = JSON.parse(out);
    expect(printed.exit).toBe(exit);
    validate(printed);
    expect(validate.errors).toBe(null);
  });
});

describe('a crankshaft that is renewed all the same', () => {
  const jobOf = (journal: string, found: string) => {
    // What is read alike a second time is no slip of the pen.
    const read = `{ measure: main_journal_diameter, at: { 1: ${journal}, 2: 2.9985, 3: 2.9985 } }`;
    const twice = `${read}, ${read}`;
    return atTheBench(
      {
        'saw/engine.yaml': 'kind: engine\nname: Saw\nlayout: { cylinders: 2, mains: 3, crankpins: 2 }\n',
        'saw/limits.yaml':
          'kind: limits\nsource: Invented.\nlimits: { main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 }, last_size: 2.9680 } }\n',
        'saw/s.yaml': `kind: session\nstage: teardown\ndate: 2026-02-03\nfound: [{ on: crankshaft, is: bent, do: renew }${found}]\nreadings: [${twice}]\n`,
      },
      async (folder) => {
        const printed: { jobs: { name: string }[] } = JSON.parse(
          (await call(folder, ['plan', 'saw', '--format', 'json'])).out,
        );
        validate(printed);
        expect(validate.errors).toBe(null);
        return printed.jobs.find(({ name }) => name === 'renew crankshaft');
      },
    );
  };

  test.each([
    ['a step is left', '2.9960', '', { answer: 'step', steps: ['0.010 under'] }],
    ['none is left', '2.9670', '', { answer: 'beyond the last step', steps: [] }],
    [
      'none is proven',
      '2.9960',
      ', { on: main journal 2, is: scored, do: machine }',
      { answer: 'not provable', steps: [] },
    ],
  ])('says that %s', async (_, journal, found, left) => {
    expect(await jobOf(journal, found)).toMatchObject({
      steps_left: [{ part: 'main_journal', ...left }],
    });
  });
});

describe('a page in JSON is as its schema says', () => {
  test.each(
    [['--fit'], ['--for', 'customer'], ['--for', 'machine-shop'], ['--order'], ['--closing']].flatMap(
      (page) =>
        [
          ['examples', ['generator-set-6', '--session', 'teardown', ...page]],
          ['tests/cases/plan/pages', page],
        ] as const,
    ),
  )('%s %j', async (folder, words) => {
    const { out, err, exit } = await planOf(folder, words);
    expect(err).toBe('');
    const printed: { readonly exit?: unknown } = JSON.parse(out);
    expect(printed.exit).toBe(exit);
    validatePage(printed);
    expect(validatePage.errors).toBe(null);
  });
});

describe('a page in JSON holds values', () => {
  const sections = async (...words: readonly string[]) => {
    const { out } = await planOf('examples', ['generator-set-6', ...words]);
    const { unit, sections }: Printed = JSON.parse(out);
    expect(unit).toBe('in');
    return sections.flatMap(({ values }) => values);
  };

  test('of shells and pistons what each is, and what comes of it', async () => {
    const values = await sections('--session', 'machined', '--fit');
    expect(values).toContainEqual({
      position: '1',
      halves: { upper: 'M6-10-C', lower: 'M6-10-C' },
      walls: { upper: 0.0985, lower: 0.0985 },
      clearance: { least: expect.any(Number), greatest: expect.any(Number) },
      from_aim: expect.any(Number),
    });
    const [third] = values.filter(({ piston, position }) => piston !== undefined && position === '3');
    expect(third).toMatchObject({ piston: 'P3', diameter: 3.8917, weight_g: 1183 });
    const { bore, diameter, clearance } = third as Readonly<Record<string, Ends & number>>;
    expect((clearance?.least ?? 0) + (clearance?.greatest ?? 0)).toBeCloseTo(
      2 * (Number(bore) - Number(diameter)),
      3,
    );
  });

  test('of work the sizes to make, and of an order how many of what', async () => {
    expect(await sections('--session', 'teardown', '--for', 'machine-shop')).toContainEqual({
      at: '1 to 7',
      size: '0.010 under',
      least: 2.752,
      greatest: 2.753,
      aim: 2.7525,
    });
    expect(await sections('--session', 'teardown', '--order')).toContainEqual(
      expect.objectContaining({ to_order: 2, what: 'ring sets', part_number: 'K6-20', in_stock: 4 }),
    );
    expect(await sections('--session', 'teardown', '--for', 'customer')).toContainEqual(
      expect.objectContaining({ number: 1, agreed: '2026-04-10' }),
    );
  });
});

interface Ends {
  readonly least: number;
  readonly greatest: number;
}

interface Printed {
  readonly unit: string;
  readonly sections: readonly { readonly values: readonly Readonly<Record<string, unknown>>[] }[];
}
