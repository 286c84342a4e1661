import type { Amount } from '../../documents/amount.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { slipsOfFigures } from '../../measurement/slips/figureSlips.ts';
import { misreadFigures } from '../../measurement/slips/misreadFigures.ts';
import { decimalsIn } from '../../measurement/slips/writtenNumber.ts';
import { compare, divide, fraction, multiply, parseDecimal, ZERO } from '../../quantity/fraction.ts';
import { type Finding, finding } from '../finding.ts';
import { sessionsBefore } from '../history/earlier.ts';
import { IMPLAUSIBLE } from './implausible.ts';
import { possibleValues } from './possibleValues.ts';
import type { SlipContext } from './slipContext.ts';

/** Hours only rise: fewer than an earlier session counted are a slip, or another meter. */
export function hoursFindings({ view: { engine, session } }: SlipContext): readonly Finding[] {
  const { hours } = session;
  const before = sessionsBefore(engine, session).findLast((each) => each.hours !== undefined);
  if (hours === undefined || before?.hours === undefined) return [];
  if (compare(hours.amount, before.hours.amount) >= 0) return [];
  const after = engine.sessions.find((each) => each.date > session.date && each.hours !== undefined);
  const message = `hours ${hours.written} are fewer than ${before.hours.written} of ${before.name}; possible: ${causes(hours, before.hours, after)}, another hour meter; no trend by hours can continue from here`;
  return [finding(IMPLAUSIBLE, session.placeOf(hours.span), message)];
}

/** What may have been meant lies between the sessions before and after, or within half as many hours again. */
function causes(hours: Amount, before: Amount, after: SessionDocument | undefined): string {
  const digits = /^\d+(?:\.\d+)?/.exec(hours.written)?.[0] ?? '';
  if (digits === '') return 'a slip of the pen';
  const number = { digits, unit: divide(hours.amount, parseDecimal(digits)), start: ZERO };
  const last = after?.hours?.amount ?? multiply(before.amount, fraction(3, 2));
  const slips = [...slipsOfFigures(number), ...misreadFigures(number, decimalsIn(digits))].filter(
    ({ intended }) => compare(intended, before.amount) >= 0 && compare(intended, last) <= 0,
  );
  return slips.length === 0 ? 'a slip of the pen' : possibleValues(slips);
}
