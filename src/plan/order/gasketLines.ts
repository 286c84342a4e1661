import type { GasketFit } from '../fit/otherFits.ts';
import { workBefore } from '../fit/thickness/workBefore.ts';
import type { PlanContext } from '../work/context.ts';
import type { Job } from '../work/job.ts';
import type { OrderLine } from './orderLine.ts';
import { thicknessCalled, thicknessText } from './thicknessText.ts';

/** The head gasket that is chosen by the pistons, one for each head, until it is fitted. */
export function gasketLines(
  context: PlanContext,
  fit: GasketFit | undefined,
  jobs: readonly Job[],
): readonly OrderLine[] {
  if (fit?.gasket === undefined || fit.inPlace !== undefined || fit.isStated) return [];
  const { gasket, count, free } = fit;
  const line = {
    what: thicknessCalled('gaskets', count),
    count,
    for: `${fit.rows[0]?.characteristic.label} ${fit.position.name}`,
  } as const;
  const after = jobs.find(isBored) ?? fit.rows.flatMap((row) => workBefore(row, jobs, context) ?? [])[0];
  if (after !== undefined)
    return [
      {
        ...line,
        code: undefined,
        size: 'by plan --fit',
        onShelf: 0,
        when: 'after measuring',
        waitsFor: `measure it again after ${after.name}`,
      },
    ];
  const size = gasket.thickness === undefined ? '' : thicknessText(gasket.thickness, context.engine);
  return [{ ...line, code: gasket.code, size, onShelf: Math.min(free, count), when: 'now' }];
}

/** A bored cylinder takes a new piston. */
const isBored = ({ operation, part }: Job): boolean => operation === 'bore' && part?.boredInto === undefined;
