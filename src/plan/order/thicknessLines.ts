import type { Engine } from '../../documents/assemble.ts';
import type { Job } from '../work/job.ts';
import { placesText } from '../work/placesText.ts';
import type { OrderLine } from './orderLine.ts';
import type { NeededThickness } from './thicknesses.ts';
import { thicknessCalled, thicknessText } from './thicknessText.ts';

/** Shims and buckets for what is adjusted, as many of one thickness as there are places that need it. */
export const thicknessLines = (
  job: Job,
  needed: readonly NeededThickness[],
  engine: Engine,
): readonly OrderLine[] => needed.flatMap((each) => lineFor(job, each, engine) ?? []);

function lineFor(
  { name }: Job,
  { list, positions, answer }: NeededThickness,
  engine: Engine,
): OrderLine | undefined {
  const count = positions.length;
  const line = {
    what: thicknessCalled(list, count),
    code: undefined,
    count,
    onShelf: 0,
    when: 'now',
    for: `${name} ${placesText(positions, engine.document.layout)}`,
  } as const;
  switch (answer.kind) {
    case 'take':
      return { ...line, size: thicknessText(answer.thickness, engine), code: answer.code, onShelf: count };
    case 'get':
      return { ...line, size: `about ${thicknessText(answer.thickness, engine)}` };
    case 'get at least':
      return { ...line, size: `at least ${thicknessText(answer.thickness, engine)}` };
    case 'read again':
      return {
        ...line,
        size: 'by plan --fit',
        when: 'after measuring',
        waitsFor: `measure it again after ${answer.after.name}`,
      };
    case 'none lowers it':
      return undefined;
  }
}
