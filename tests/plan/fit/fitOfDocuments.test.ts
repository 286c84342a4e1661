import fc from 'fast-check';
import { expect, it } from 'vitest';
import { benchFolder } from '../../cli/calling.ts';
import { runs } from '../../propertyRuns.ts';
import { isShort } from './bestOf.ts';
import {
  bestCosts,
  type Choice,
  type Costs,
  costsOf,
  indexOf,
  randomShelf,
  shelfFiles,
} from './randomShelf.ts';

const bench = benchFolder();

/** What the page of `plan --fit` says of one place. */
interface Place {
  readonly halves?: { readonly upper: string; readonly lower: string } | null;
  readonly piston?: string;
  readonly take?: string | null;
}

interface Printed {
  readonly sections: readonly { readonly title: string; readonly values: readonly Place[] }[];
}

async function chosenBy(files: ReturnType<typeof shelfFiles>): Promise<Choice> {
  bench.put(files);
  const { out, err } = await bench.call('plan', 'e', '--fit', '--format', 'json');
  expect(err).toBe('');
  const { sections }: Printed = JSON.parse(out);
  const valuesOf = (title: string): readonly Place[] =>
    sections.find((section) => section.title.startsWith(title))?.values ?? [];
  const pistons = valuesOf('pistons').flatMap((place) => place.piston ?? []);
  const shims = valuesOf('shims').map(({ take }) => (take ? indexOf(take) : undefined));
  return {
    shells: valuesOf('main shells').map(({ halves }) =>
      halves ? [halves.upper, halves.lower].map(indexOf) : undefined,
    ),
    pistons: pistons.length === 0 ? undefined : pistons.map(indexOf),
    shims,
  };
}

it('a plan from documents chooses shells, pistons and shims that cost what the best do, found by trying all', async () => {
  const met = { served: 0, short: 0 };
  await fc.assert(
    fc.asyncProperty(randomShelf, async (shelf) => {
      const best = bestCosts(shelf);
      const chosen = costsOf(shelf, await chosenBy(shelfFiles(shelf)));
      for (const kind of ['shells', 'pistons', 'shims'] satisfies readonly (keyof Costs)[]) {
        met[isShort(best[kind]) ? 'short' : 'served'] += 1;
        if (best[kind] === undefined) expect(chosen[kind], kind).toBeUndefined();
        else expect(chosen[kind], kind).toBeCloseTo(best[kind], 9);
      }
    }),
    runs(400, 30),
  );
  expect(Math.min(met.served, met.short)).toBeGreaterThan(5);
});
