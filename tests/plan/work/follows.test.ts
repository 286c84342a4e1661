import { expect, it } from 'vitest';
import { AT_THE_SHOP, FOLLOWS } from '../../../src/plan/work/follows.ts';

it('whatever follows a job is said, first what the machine shop looks at', () => {
  for (const [operation, atTheShop] of Object.entries(AT_THE_SHOP)) {
    const all = FOLLOWS[operation as keyof typeof FOLLOWS] ?? [];
    expect(atTheShop, operation).not.toEqual([]);
    expect(all.slice(0, atTheShop.length)).toEqual(atTheShop);
    expect(all.length, operation).toBeGreaterThan(atTheShop.length);
  }
  expect(
    Object.values(FOLLOWS)
      .flat()
      .every((each) => each.length > 0),
  ).toBe(true);
});
