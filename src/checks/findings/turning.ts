import type { SessionDocument } from '../../documents/session/session.ts';
import { median, medianAbsoluteDeviation } from '../../measurement/sample.ts';
import { subtractValues } from '../../measurement/value.ts';
import { toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { Row } from '../judge/row.ts';
import type { Route } from '../value/route.ts';
import { uncertaintyOf } from '../value/routes.ts';
import { printingOf } from './readings.ts';
import { stepsOf } from './steps.ts';

const JUMP: FindingKind = {
  code: 'turning/jump',
  severity: 'warning',
  means:
    'Turning torque rose by much more with this step than with similar steps: by more than their spread, the error of the wrench and a tenth of their median explain.',
  matters:
    'A tight bore, a dragging bearing or a ring whose ends touch is cheap to find before the next part goes in.',
  usually: 'Take the part out again and look; turn the engine over after each step.',
  example: 'turning torque rose by 3.8 lbf ft with piston 3; with similar steps (piston …) by 0.8 lbf ft',
};

export const turningKinds: readonly FindingKind[] = [JUMP];

const TURNING = 'turning_torque';

export const isTurningTorque = ({ characteristic }: Pick<Row, 'characteristic'>): boolean =>
  characteristic.id === TURNING;

/** The rise in turning torque that a step brought. */
interface Rise {
  readonly row: Row;
  /** Alike but for digits: `piston 1` and `piston 2` are like steps. */
  readonly kind: string;
  readonly amount: number;
  /** What the wrench alone could make of it: expanded uncertainty of the rise, and the wrench's error. */
  readonly allowance: number;
}

/** A robust standard deviation from the median absolute deviation of a normal sample. */
const TO_DEVIATION = 1.4826;
/** Three deviations alone cry wolf in a quarter of sound engines, so a tenth of the median is allowed as well. */
const SHARE_OF_MEDIAN = 0.1;
const FEWEST_LIKE_RISES = 4;
/** Rises are doubles: one exactly at its allowance is within it. */
const ROUNDING = 1e-9;

/** Steps whose rise stands out from those of like steps: a tight bore, a dragging bearing. */
export function turningFindings(
  session: SessionDocument,
  rows: readonly Row[],
  unitFor: (row: Row) => Unit,
): readonly Finding[] {
  const rises = risesOf(
    stepsOf(session, TURNING).map((step) =>
      rows.find(({ characteristic, position }) => characteristic.id === TURNING && position === step),
    ),
  );
  return rises.flatMap((rise) => {
    const like = rises.filter((each) => each.kind === rise.kind);
    const others = like.filter((each) => each !== rise).map((each) => each.amount);
    if (like.length < FEWEST_LIKE_RISES) return [];
    const usual = median(others);
    const spread = 3 * TO_DEVIATION * medianAbsoluteDeviation(others);
    const allowed = Math.max(spread, rise.allowance, SHARE_OF_MEDIAN * Math.abs(usual));
    return rise.amount - usual > allowed * (1 + ROUNDING) ? [jump(rise, usual, unitFor)] : [];
  });
}

/** Between neighbouring steps alone: over a step that was not read two parts' drag would pass for one's. */
function risesOf(rows: readonly (Row | undefined)[]): readonly Rise[] {
  return rows.flatMap((row, index) => {
    const [before, after] = [rows[index - 1]?.routes[0]?.route, row?.routes[0]?.route];
    if (row === undefined || before === undefined || after === undefined) return [];
    const rise = subtractValues(after.measured.mean, before.measured.mean);
    const { expanded } = uncertaintyOf({ least: rise, mean: rise, greatest: rise });
    return [
      {
        row,
        kind: row.position.name.replace(/\d+/g, '#'),
        amount: toNumber(rise.amount),
        // Two readings of a scale may each be half a division off.
        allowance: Math.max(expanded, wrenchError(after), toNumber(after.lastDigit)),
      },
    ];
  });
}

/** The wrench's largest error at the reading, from its standard uncertainty. */
const wrenchError = ({ measured }: Route): number =>
  Math.max(
    0,
    ...[...measured.mean.terms]
      .filter(([source]) => source.startsWith('largest error'))
      .map(([, term]) => Math.abs(term.u) * Math.sqrt(3)),
  );

function jump({ row, amount, kind }: Rise, usual: number, unitFor: (row: Row) => Unit): Finding {
  const { unit, decimals } = printingOf(row, unitFor);
  const text = (base: number): string => formatAmountOf(base, unit, decimals);
  const message = `turning torque rose by ${text(amount)} with ${row.position.name}; with similar steps (${kind.replace('#', '…')}) by ${text(usual)}`;
  return finding(JUMP, row.place, message, {
    measure: row.characteristic.id,
    position: row.position,
  });
}

/** Of a rise, which is a double: a ratio of torques never decides by its last digit. */
function formatAmountOf(base: number, unit: Unit, decimals: number): string {
  return `${(base / toNumber(unit.factor)).toFixed(Math.max(1, decimals))} ${unit.name}`;
}
