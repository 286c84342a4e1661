import fc from 'fast-check';
import { expect, it } from 'vitest';
import { runs } from '../../propertyRuns.ts';
import { reportOf } from '../../shopOf.ts';
import { filesOf, type RandomShop, randomShop } from '../randomShop.ts';

const STAGES = ['teardown', 'machined', 'trial', 'rebuild', 'service'];

/** The same things measured by the same instruments, with other figures. */
const otherFigures = (shop: RandomShop, seed: number): RandomShop => ({
  ...shop,
  stage: STAGES[seed % STAGES.length] ?? 'trial',
  blocks: shop.blocks
    .filter((_, index) => index === seed % shop.blocks.length || (seed >> index) % 3 !== 0)
    .map((block) => ({
      ...block,
      date: undefined,
      at: Object.fromEntries(
        Object.entries(block.at).map(([position, figures]) => [
          position,
          figures.map((tenths, index) => tenths + ((seed >> index) % 7) - 3),
        ]),
      ),
    })),
});

const seeds = fc.integer({ min: 1, max: 2 ** 20 });

it('the state is what the last session says, where that one measured all that the others did', () => {
  let differing = 0;
  fc.assert(
    fc.property(randomShop, fc.array(seeds, { minLength: 1, maxLength: 3 }), (shop, earlier) => {
      const files = filesOf(shop, 'in');
      const before = earlier.map((seed, index): [string, string] => [
        `e/before-${index}.yaml`,
        (filesOf(otherFigures(shop, seed), 'in')['e/session.yaml'] ?? '').replace(
          'date: 2026-02-03',
          `date: 2026-01-0${index + 1}`,
        ),
      ]);
      const { state, sessions } = reportOf({ ...files, ...Object.fromEntries(before) });
      const last = sessions.at(-1);
      expect(last?.session.date).toBe('2026-02-03');
      expect(state?.rows).toEqual(last?.rows);
      expect(state?.findings).toEqual(last?.findings);
      const first = sessions[0];
      if (JSON.stringify(first?.rows.map(texts)) !== JSON.stringify(last?.rows.map(texts))) differing += 1;
    }),
    runs(200, 25),
  );
  expect(differing).toBeGreaterThan(10);
});

const texts = ({
  characteristic,
  position,
  judgement,
}: NonNullable<ReturnType<typeof reportOf>['state']>['rows'][number]) => [
  characteristic.id,
  position.name,
  judgement.verdict,
];
