import type { Row } from '../../checks/judge/row.ts';
import type { Part } from '../../layout/part.ts';

/** What is done to an engine, in the order of work: nothing that cuts before what shows whether it is worth it. */
export const OPERATIONS = [
  'measure',
  'measure again',
  'clean',
  'crack test',
  'straighten',
  'line bore',
  'surface',
  'bore',
  'resize',
  'grind',
  'renew',
  'choose',
  'find the cause',
  'weigh and balance',
  'wash',
] as const;

export type Operation = (typeof OPERATIONS)[number];

/** Those that take metal off, or are handed to a machine shop. */
export const MACHINING: readonly Operation[] = [
  'crack test',
  'straighten',
  'line bore',
  'surface',
  'bore',
  'resize',
  'grind',
];

/** Of parts that are brought back otherwise than by renewing them. */
const BY_PART: Readonly<Record<string, Operation>> = { main_housing: 'line bore', rod_housing: 'resize' };
const BY_CHARACTERISTIC: Readonly<Record<string, Operation>> = {
  crankshaft_runout: 'straighten',
  crankshaft_end_play: 'choose',
};

/** What brings back a part whose figure is out or worn; journals and bores have their cuts. */
export function remedyOf({ characteristic }: Row): Operation {
  const { id, of, figure, derivations, isAssemblyFigure } = characteristic;
  const own = BY_CHARACTERISTIC[id] ?? (figure === 'clearance' ? undefined : BY_PART[of ?? '']);
  if (own !== undefined) return own;
  if (figure === 'clearance' && derivations.length > 0) return 'choose';
  return isAssemblyFigure === true || of === undefined ? 'find the cause' : 'renew';
}

/** `grind main journals`: what a job is called, and what a customer agrees to. */
export const jobName = (operation: Operation, { label, plural, family }: Part): string =>
  `${operation} ${family.isSingle ? label : plural}`;
