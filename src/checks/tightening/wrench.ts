import { didYouMean } from '../../diagnostic/suggestion.ts';
import {
  compare,
  divide,
  type Fraction,
  fraction,
  greatest,
  least,
  multiply,
} from '../../quantity/fraction.ts';
import { wrenchRatio } from '../../torque/adapter.ts';
import { exactly } from '../../torque/sequence.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import { overdue } from '../findings/overdue.ts';
import { spanText, statedTorque, type TighteningView } from './view.ts';

const WRENCH: FindingKind = {
  code: 'torque/wrench',
  severity: 'warning',
  means:
    'The wrench is not in the register, is not a torque wrench, or was used below 20 % of its range or beyond it.',
  matters:
    'A wrench is calibrated at 20, 60 and 100 % of its range (ISO 6789). Below 20 % its error is not known.',
  usually: 'Use a smaller wrench for small torques; register each with its range and largest error.',
  example: 'main caps: beam-150 was used at 15 lbf ft, 10 % of its range; use it from 30 lbf ft on',
};

export const wrenchKinds: readonly FindingKind[] = [WRENCH];

const LEAST_SHARE = fraction(20, 100);

/** What is to be said of the wrench that a joint was tightened with. */
export function wrenchFindings(view: TighteningView): readonly Finding[] {
  const { log, session, engine, wrench } = view;
  const joint = log.document.joint.sequence.joint;
  const torques = torquesOf(view);
  if (torques.length === 0) return [];
  if (log.with === undefined) {
    const message = `${joint}: no wrench is named, and the usual error of one is assumed: name it under with:`;
    return [finding(WRENCH, session.placeOf(log.span), message, { severity: 'remark' })];
  }
  const place = session.placeOf(log.with.span);
  if (wrench === undefined) {
    const help = didYouMean(log.with.name, engine.instruments.keys());
    const message = `${joint}: ${log.with.name} is not in the register of instruments${help === undefined ? '' : `: ${help}`}`;
    return [finding(WRENCH, place, message)];
  }
  if (wrench.type !== 'torque wrench') {
    return [finding(WRENCH, place, `${joint}: ${wrench.id} is a ${wrench.type}, not a torque wrench`)];
  }
  return [
    ...rangeFindings(torques, view).map((message) => finding(WRENCH, place, `${joint}: ${message}`)),
    ...[overdue(wrench, log.date ?? session.date, () => place) ?? []].flat(),
  ];
}

/** What the wrench showed: with an adapter in the sequence, less or more than the fastener got. */
function torquesOf({ log }: TighteningView): readonly Fraction[] {
  const { adapter, wrenchLength } = log.document.joint;
  const found =
    adapter === undefined || wrenchLength === undefined ? undefined : wrenchRatio(wrenchLength, adapter);
  const ratio = found !== undefined && 'ratio' in found ? found.ratio : fraction(1);
  const written = (log.passes ?? []).flatMap((pass) => {
    const stated = statedTorque(pass);
    const values =
      pass.action.kind === 'stretch'
        ? pass.torques
        : pass.action.kind === 'turn' || pass.action.kind === 'loosen'
          ? new Map()
          : pass.values;
    const single = [...values.values()].flatMap(
      ({ amount }: { readonly amount: Fraction | undefined }) => amount ?? [],
    );
    return [...(stated === undefined ? [] : [stated.least, stated.greatest]), ...single];
  });
  return written.map((torque) => multiply(torque, ratio));
}

function rangeFindings(torques: readonly Fraction[], { wrench, log }: TighteningView): readonly string[] {
  const range = wrench?.range;
  if (wrench === undefined || range === undefined) return [];
  const unit = log.document.joint.torqueUnit;
  const [low, high] = [least(torques), greatest(torques)];
  const from = greatest([range.from, multiply(range.to, LEAST_SHARE)]);
  const percent = (torque: Fraction): string => {
    const { n, d } = divide(multiply(torque, fraction(100)), range.to);
    return `${Number((Number(n) / Number(d)).toPrecision(3))} %`;
  };
  return [
    ...(compare(low, from) < 0
      ? [
          `${wrench.id} was used at ${spanText(exactly(low), unit)}, ${percent(low)} of its range; use it from ${spanText(exactly(from), unit)} on`,
        ]
      : []),
    ...(compare(high, range.to) > 0
      ? [
          `${wrench.id} was used at ${spanText(exactly(high), unit)}, beyond its range up to ${spanText(exactly(range.to), unit)}`,
        ]
      : []),
  ];
}
