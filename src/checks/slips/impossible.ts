import { isNeverBelowZero } from '../../characteristics/belowZero.ts';
import { namedAt } from '../../layout/naming.ts';
import { decimalsFor, formatAmount } from '../../quantity/format.ts';
import type { Unit } from '../../quantity/units.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import { amountText, named, printingOf } from '../findings/readings.ts';
import type { JudgedRoute, Row } from '../judge/row.ts';
import { allowsBelowZero } from './fits.ts';

type UnitFor = (row: Pick<Row, 'characteristic'>) => Unit;

export const IMPOSSIBLE: FindingKind = {
  code: 'reading/impossible',
  severity: 'error',
  means:
    'No part can have this value: a runout, a gap or a running clearance is below zero, a cylinder holds more pressure than it is given, or a piston or journal is not smaller than its bore; and no limit allows a value below zero.',
  matters: 'One of the readings behind it is wrong, so nothing that is worked out from it can be used.',
  usually:
    'Check the sign, whether two lists were exchanged, and whether the gauge was set wrongly; then measure again. Where the parts are pressed together, write limits below zero.',
  example:
    'crankshaft runout 2: -0.0200 in is below zero, which is impossible; check the sign, and the zero of the gauge',
};

export const impossibleKinds: readonly FindingKind[] = [IMPOSSIBLE];

/** Values that no part can have, whatever its limits are; one finding where all that was measured of it are so. */
export function impossibleFindings(rows: readonly Row[], unitFor: UnitFor): readonly Finding[] {
  const measured = rows.filter(({ routes }) => routes.length > 0);
  const found = measured.flatMap((row) => impossible(row, unitFor) ?? []);
  const ids = new Set(found.map(({ row }) => row.characteristic.id));
  return [...ids].flatMap((id) => {
    const own = found.filter(({ row }) => row.characteristic.id === id);
    const isAll = own.length === measured.filter(({ characteristic }) => characteristic.id === id).length;
    return isAll && own.length >= FEWEST_ALIKE ? alike(own) : own.map(alone);
  });
}

const FEWEST_ALIKE = 3;

interface Impossible {
  readonly row: Row;
  readonly why: string;
  readonly help: string | undefined;
}

const LOOK_FOR = 'check the sign, and the zero of the gauge';
const LOOK_AT_GAUGES = 'check both gauges: were they exchanged?';

function impossible(row: Row, unitFor: UnitFor): Impossible | undefined {
  const [judged] = row.routes;
  if (judged === undefined || !isNeverBelowZero(row.characteristic)) return undefined;
  const { why, help } = reasonOf(row, judged, unitFor);
  if (why === undefined || allowsBelowZero(row.characteristic, row.limits.bands)) return undefined;
  return { row, why, help };
}

type Reason = { readonly why: string | undefined; readonly help: string | undefined };

function reasonOf(row: Row, judged: JudgedRoute, unitFor: UnitFor): Reason {
  const { inputs } = judged.route;
  if (inputs.length === 0) return { why: belowZero(row, judged, unitFor), help: LOOK_FOR };
  const isOfGauges = inputs.every(({ characteristic }) => characteristic.quantity === 'pressure');
  return isOfGauges
    ? { why: below(row, judged, unitFor), help: LOOK_AT_GAUGES }
    : { why: notSmaller(row, judged, unitFor), help: undefined };
}

/** Unlike two sizes, two pressures may be equal: a cylinder that loses nothing. */
const below = (row: Row, judged: JudgedRoute, unitFor: UnitFor): string | undefined => {
  const why = belowZero(row, judged, unitFor);
  return why && `${why} (${inputsText(judged, unitFor)})`;
};

function alone({ row, why, help }: Impossible): Finding {
  const fact = `${named(row)}: ${why}`;
  return { ...about([row], help === undefined ? fact : `${fact}; ${help}`), fact };
}

function alike(all: readonly Impossible[]): readonly Finding[] {
  const [first] = all;
  if (first === undefined) return [];
  const { row, why, help } = first;
  const lists = [...new Set(row.routes[0]?.route.inputs.map(({ characteristic }) => characteristic.label))];
  const question =
    lists.length === 0 ? help : `are ${lists.join(' and ')} exchanged, or was a gauge set wrongly?`;
  const where = namedAt('at', row.position);
  const fact = `${row.characteristic.label}: impossible at all ${all.length} positions, ${where} ${why}`;
  const rows = all.map((each) => each.row);
  return [{ ...about(rows, question === undefined ? fact : `${fact}; ${question}`), fact }];
}

const about = (rows: readonly Row[], message: string): Finding => {
  const [first, ...more] = rows;
  if (first === undefined) throw new RangeError('a finding about nothing');
  return finding(IMPOSSIBLE, first.place, message, {
    measure: first.characteristic.id,
    ...(more.length === 0 ? { position: first.position } : {}),
    covers: rows.map(({ characteristic, position }) => ({ measure: characteristic.id, at: position })),
  });
};

const belowZero = (row: Row, judged: JudgedRoute, unitFor: UnitFor): string | undefined =>
  judged.least.n >= 0n
    ? undefined
    : `${amountText(judged, printingOf(row, unitFor))} is below zero, which is impossible`;

/** Of two sizes at rest with each other one is in the other with nothing between them: no shaft turns so. */
function notSmaller(row: Row, judged: JudgedRoute, unitFor: UnitFor): string | undefined {
  if (judged.mean.n > 0n || row.characteristic.figure === 'out of round') return undefined;
  const { unit, decimals } = printingOf(row, unitFor);
  return `${amountText(judged, { unit, decimals })} is not above zero, which is impossible (${inputsText(judged, unitFor)})`;
}

const inputsText = ({ route }: JudgedRoute, unitFor: UnitFor): string =>
  route.inputs
    .map(({ characteristic, position, measured, lastDigit }) => {
      const unit = unitFor({ characteristic });
      const amount = formatAmount(measured.mean.amount, unit, decimalsFor(lastDigit, unit));
      return `${namedAt(characteristic.label, position)} ${amount}`;
    })
    .join(', ');
