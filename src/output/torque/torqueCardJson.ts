import { toNumber } from '../../quantity/fraction.ts';
import type { CardPass, TighteningCard } from '../../torque/card.ts';
import type { AmountRange } from '../../torque/sequence.ts';
import { revisionJson } from '../diff/revision.ts';
import type { CardOrigin } from './cardView.ts';

/** Torques in N m, angles in degrees, lengths in mm, loads in newtons; twelve digits. */
export const torqueCardJson = (card: TighteningCard, origin: CardOrigin, exit: number) => ({
  format: 'tenths.torque',
  version: 1,
  exit,
  engine: origin.engine,
  path: origin.path,
  at: revisionJson(origin.revision),
  joint: card.joint.sequence.joint,
  order: card.joint.sequence.order,
  order_from: card.joint.orderFrom,
  thread: card.joint.thread?.designation ?? null,
  grade: card.joint.strength?.grade ?? card.joint.grade ?? null,
  lubricant: card.joint.lubricant ?? null,
  reuse: card.joint.reuse,
  before: card.joint.sequence.before,
  passes: card.passes.map(passJson),
  after: card.joint.sequence.after,
  assumptions: card.assumptions,
  comparisons: card.comparisons,
  doubts: card.doubts,
  cautions: card.cautions.map(({ text }) => text),
  source: card.joint.source,
});

function passJson({ pass, action, atFastener, setting, reversed, fasteners, note, load }: CardPass) {
  return {
    pass,
    kind: action.kind,
    torque_N_m: spanJson(atFastener),
    setting_N_m: spanJson(setting),
    at_most_N_m:
      action.kind === 'check' && action.atMost !== undefined ? shortened(toNumber(action.atMost)) : null,
    angle_deg: spanJson('angle' in action ? action.angle : undefined),
    stretch_mm: spanJson('stretch' in action ? action.stretch : undefined, STEPS_IN_A_MILLIMETRE),
    reversed,
    fasteners: fasteners ?? null,
    note: note ?? null,
    load:
      load === undefined
        ? null
        : {
            N: shortened(load.loadN),
            least_N: shortened(load.leastN),
            greatest_N: shortened(load.greatestN),
            percent_of_proof: load.percent === undefined ? null : shortened(load.percent),
            by_friction_N: load.byFrictionN === undefined ? null : shortened(load.byFrictionN),
            beyond_yield: load.beyondYield,
          },
  };
}

const STEPS_IN_A_MILLIMETRE = 1e7;

const spanJson = (span: AmountRange | undefined, step = 1) =>
  span === undefined
    ? null
    : {
        least: shortened(toNumber(span.least) / step),
        greatest: shortened(toNumber(span.greatest) / step),
      };

const shortened = (value: number): number => Number(value.toPrecision(12));
