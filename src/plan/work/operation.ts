import { isOfOldSize } from '../../checks/grades/oldSize.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { Operation } from '../../documents/planning/operations.ts';
import type { Part } from '../../layout/part.ts';
import { isCracked } from './renewal/cracked.ts';

/** Those that take metal off, or are handed to a machine shop. */
export const MACHINING: readonly Operation[] = [
  'crack test',
  'straighten',
  'line bore',
  'surface',
  'bore',
  'resize',
  'grind',
  'machine',
];

/** The shop's own, at its bench and desk: they cut nothing and open nothing. */
export const OWN_WORK: readonly Operation[] = ['measure', 'measure again', 'state the size'];

/** Of parts that are brought back otherwise than by renewing them. */
const BY_PART: Readonly<Record<string, Operation>> = { main_housing: 'line bore', rod_housing: 'resize' };
const BY_CHARACTERISTIC: Readonly<Record<string, Operation>> = {
  crankshaft_runout: 'straighten',
  camshaft_runout: 'straighten',
  main_bore_alignment: 'line bore',
  deck_flatness: 'surface',
  deck_parallelism: 'surface',
  head_flatness: 'surface',
  ring_end_gap: 'renew',
  ring_free_gap: 'renew',
  ring_tension: 'renew',
  ring_width: 'renew',
  ring_radial_thickness: 'renew',
  ring_side_clearance: 'renew',
  valve_stem_clearance: 'renew',
  crankshaft_end_play: 'choose',
  liner_protrusion: 'adjust',
  liner_protrusion_spread: 'adjust',
  liner_protrusion_step: 'adjust',
  valve_lash_cold: 'adjust',
  valve_lash_hot: 'adjust',
  ignition_timing: 'adjust',
  injection_timing: 'adjust',
};

/** What brings back a part whose figure is out or worn; journals and bores have their cuts. */
export function remedyOf(row: Row, part: Part | undefined): Operation {
  if (isCracked(row)) return 'renew';
  if (part !== undefined && isChosenByFit(part) && isOfOldSize(row)) return 'choose';
  const { characteristic, judgement } = row;
  // A ring whose ends are too close is filed.
  if (characteristic.id === 'ring_end_gap' && judgement.past?.side === 'min') return 'adjust';
  // Cut again, the seat of a sunk valve sinks it deeper.
  if (characteristic.id === 'valve_recession' && judgement.past?.side === 'max') return 'renew';
  const { id, of, figure, derivations, isAssemblyFigure } = characteristic;
  const own = BY_CHARACTERISTIC[id] ?? BY_PART[of ?? ''];
  if (own !== undefined) return own;
  const isOfOneSize = part?.sized === undefined && isAssemblyFigure !== true;
  if (figure === 'clearance' && derivations.length > 0) return isOfOneSize ? 'renew' : 'choose';
  if (isAssemblyFigure === true || of === undefined) return 'find the cause';
  // A figure that is neither size nor form says that the part is not right, and not how it is put right.
  return figure === 'other' ? 'machine or renew' : 'renew';
}

/** Those of which `plan --fit` finds the size that fits: what is new of them is chosen. */
export const isChosenByFit = ({ id, sized }: Part): boolean =>
  sized?.liesIn !== undefined || id === 'piston' || id === 'thrust_washer';

/** `grind main journals`: what a job is called, and what a customer agrees to. */
export const jobName = (operation: Operation, { label, plural, family }: Part): string =>
  `${operation}${operation === 'state the size' ? ' of' : ''} ${family.isSingle ? label : plural}`;
