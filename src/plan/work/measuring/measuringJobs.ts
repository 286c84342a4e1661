import type { Row } from '../../../checks/judge/row.ts';
import { isDue, unmeasuredOf } from '../../closing/unmeasured.ts';
import type { PlanContext } from '../context.ts';
import { deciderOf, instrumentsAgain } from '../instruments.ts';
import { type Job, plain } from '../job.ts';
import { jobName } from '../operation.ts';
import type { Suspect } from '../suspects.ts';

/** What was left out, and what nobody can decide yet. */
export function measuringJobs(rows: readonly Row[], context: PlanContext): readonly Job[] {
  const [undecided, missing] = (['undecided', 'missing'] as const).map((verdict) =>
    rows.filter(({ judgement }) => judgement.verdict === verdict),
  );
  return [
    ...measuring('measure', missing ?? [], context, {
      unmeasured: unmeasuredOf(context).filter((each) => isDue(each, context)),
    }),
    ...measuring('measure again', undecided ?? [], context, {
      suspects: context.suspects.filter(isReadAgain),
    }),
    ...statingJobs(context),
  ];
}

/** What came back ground and fits another size than is stated wants no micrometer, but its size written down. */
function statingJobs({ suspects, registry: { parts } }: PlanContext): readonly Job[] {
  const unstated = suspects.filter(({ settledBy }) => settledBy === 'size');
  const ids = new Set(unstated.map(({ row }) => row.characteristic.of));
  return [...ids].flatMap((id): readonly Job[] => {
    const part = parts.find(id ?? '');
    if (part === undefined) return [];
    const operation = 'state the size';
    const own = unstated.filter(({ row }) => row.characteristic.of === id);
    const again = own.map((each) => ({ ...each, instruments: [] }));
    return [
      {
        ...plain,
        name: jobName(operation, part),
        operation,
        part,
        urgency: 'must',
        rows: [],
        suspects: again,
      },
    ];
  });
}

function measuring(
  operation: 'measure' | 'measure again',
  rows: readonly Row[],
  context: PlanContext,
  {
    suspects = [],
    unmeasured = [],
  }: Pick<Job, 'unmeasured'> & { readonly suspects?: PlanContext['suspects'] },
): readonly Job[] {
  const deciders = operation === 'measure' ? [] : rows.map((row) => deciderOf(row, context));
  const job = { ...plain, name: operation, operation, part: undefined, urgency: 'must' as const };
  const again = suspects.map((each) => ({ ...each, instruments: instrumentsAgain(each.row, context) }));
  return rows.length + suspects.length + unmeasured.length === 0
    ? []
    : [{ ...job, rows, deciders, suspects: again, unmeasured }];
}

/** Itself, rather than worked out from what was. */
const isReadAgain = ({ why, settledBy }: Suspect): boolean => why !== undefined && settledBy !== 'size';
