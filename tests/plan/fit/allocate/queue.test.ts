import fc from 'fast-check';
import { expect, it } from 'vitest';
import { Queue } from '../../../../src/plan/fit/allocate/queue.ts';
import { runs } from '../../../propertyRuns.ts';

it('a queue gives the first of what is in it, whenever it is asked, and in the end nothing', () => {
  fc.assert(
    fc.property(fc.array(fc.option(fc.integer({ min: 0, max: 20 }), { freq: 3 })), (steps) => {
      const queue = new Queue<number>((a, b) => a < b);
      const inside: number[] = [];
      for (const step of [...steps, ...steps.map(() => null)]) {
        if (step === null) {
          inside.sort((a, b) => a - b);
          expect(queue.next()).toBe(inside.shift());
        } else {
          queue.add(step);
          inside.push(step);
        }
      }
      expect(queue.next()).toBeUndefined();
    }),
    runs(1_000),
  );
});
