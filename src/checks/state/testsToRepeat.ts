import type { Registry } from '../../characteristics/registry.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import type { Part } from '../../layout/part.ts';
import { type Finding, finding } from '../finding.ts';
import type { Row } from '../judge/row.ts';
import { UNMEASURED } from '../judge/session.ts';

/** Tests of a run, after which their part was machined or a journal of it ground: heat of grinding cracks, and a cut may open what was closed. */
export function testsToRepeat(
  rows: readonly Row[],
  run: readonly SessionDocument[],
  { parts }: Registry,
): readonly Finding[] {
  const [last] = run.slice(-1);
  const asked = rows.flatMap(({ characteristic: { id, label, of, outcomes }, routes: [judged] }) => {
    const readIn = judged === undefined ? -1 : run.indexOf(judged.route.readIn);
    const tested = parts.find(of ?? '');
    if (outcomes === undefined || tested === undefined || readIn < 0) return [];
    const isGroundOn = (part: Part): boolean =>
      part.sized?.made === 'under' && parts.within(tested).includes(part);
    const since = run.slice(readIn + 1).flatMap(({ partChanges }) => partChanges);
    const machined = since.find(
      (each) => each.how === 'machined' && each.parts.some(({ part }) => part === tested || isGroundOn(part)),
    );
    const isRenewed = since.some(
      (each) => each.how === 'replaced' && each.parts.some(({ part }) => parts.within(part).includes(tested)),
    );
    if (machined === undefined || isRenewed) return [];
    return [[id, `${label} of ${run[readIn]?.date}: ${machined.name} machined since; test again`] as const];
  });
  return last === undefined
    ? []
    : [...new Map(asked)].map(([measure, message]) =>
        finding(UNMEASURED, last.start, message, {
          measure,
          severity: last.stage === 'rebuild' ? 'warning' : 'remark',
        }),
      );
}
