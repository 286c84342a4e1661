import type { Characteristic } from '../../characteristics/characteristic.ts';
import { type CrackingWork, crackingWork } from '../../checks/state/workSinceTest.ts';
import type { PlanContext } from '../work/context.ts';
import { isCrackTest } from '../work/renewal/cracked.ts';

export interface UntestedShaft {
  readonly characteristic: Characteristic;
  readonly work: CrackingWork;
}

const isTest = (each: Characteristic): boolean => each.of === 'crankshaft' && isCrackTest(each);

/** The box of the page before closing up, which may be ticked in place of a reading. */
export const CRACK_TESTED = 'crankshaft crack tested after';

export const boxOfTest = ({ work }: UntestedShaft): string => `${CRACK_TESTED} ${work.kind}`;

/** A crankshaft that was worked on as may crack it, where no session of its run speaks of a test: those are asked for again. */
export function untestedShaft({ engine, registry, state }: PlanContext): UntestedShaft | undefined {
  const { layout } = engine.document;
  const { parts } = registry;
  const characteristic = registry.all.find(isTest);
  const shaft = parts.find('crankshaft');
  const [position] = characteristic === undefined ? [] : layout.positionsOf(characteristic.family);
  if (characteristic === undefined || shaft === undefined || position === undefined) return undefined;
  const opened = state.run[0]?.date ?? '';
  const read = [...state.rows, ...state.lastKnown.filter(({ date }) => date >= opened).map(({ row }) => row)];
  if (read.some((row) => isTest(row.characteristic))) return undefined;
  const work = crackingWork(state.run, shaft, position, { parts, layout });
  return work && { characteristic, work };
}
