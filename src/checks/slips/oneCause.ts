import type { Finding, Reading } from '../finding.ts';
import { readingKinds } from '../findings/readings.ts';
import { spreadKinds } from '../findings/spread.ts';
import { gradeKinds } from '../grades/gradeFindings.ts';
import type { JudgedRoute, Row } from '../judge/row.ts';
import { IMPOSSIBLE, impossibleKinds } from './impossible.ts';

const OF_A_VALUE: ReadonlySet<string> = new Set(
  [...readingKinds, ...spreadKinds, ...impossibleKinds, ...gradeKinds].map(({ code }) => code),
);

/** What follows from readings is not said again of each: missing readings and limits that cannot be worked out are. */
const STAYS: ReadonlySet<string> = new Set(['reading/missing', 'limits/formula']);

/**
 * One finding for one cause: what is said of readings that a slip explains, and of what is worked out from them, goes into
 * the finding of the slip. That is an error where one of them was.
 */
export function oneFindingForOneCause(
  findings: readonly Finding[],
  rows: readonly Row[],
): readonly Finding[] {
  const causes = findings.filter(({ covers }) => covers !== undefined);
  if (causes.length === 0) return findings;
  const causeOf = new Map<Finding, Finding>();
  // A slip of a session and what its value means in the state explain each other: one of the two has to stay.
  const isOf = (one: Finding | undefined, cause: Finding): boolean =>
    one !== undefined && (one === cause || isOf(causeOf.get(one), cause));
  for (const each of findings) {
    const cause = causes.find((one) => !isOf(one, each) && isEffect(each, one, rows));
    if (cause !== undefined) causeOf.set(each, cause);
  }
  const effectsOf = (cause: Finding): readonly Finding[] =>
    findings.filter((each) => causeOf.get(each) === cause).flatMap((each) => [each, ...effectsOf(each)]);
  return findings
    .filter((each) => !causeOf.has(each))
    .map((each) => (each.covers === undefined ? each : withEffects(each, effectsOf(each))));
}

function isEffect(effect: Finding, { covers = [] }: Finding, rows: readonly Row[]): boolean {
  const { code } = effect;
  if (!OF_A_VALUE.has(code) || STAYS.has(code)) return false;
  const isCovered = ({ measure, at }: Reading): boolean =>
    covers.some((each) => each.measure === measure && each.at === at);
  const about = readingsOf(effect);
  return (
    about.length > 0 && about.every((reading) => isCovered(reading) || isDerived(reading, code, covers, rows))
  );
}

/** What a finding is about, of one reading or of several. */
export const readingsOf = ({ covers, measure, at }: Finding): readonly Reading[] =>
  covers ?? (measure === undefined || at === undefined ? [] : [{ measure, at }]);

function isDerived(
  { measure, at }: Reading,
  code: string,
  from: readonly Reading[],
  rows: readonly Row[],
): boolean {
  const row = rows.find(({ characteristic, position }) => characteristic.id === measure && position === at);
  const routes = code === 'method/disagree' ? row?.routes : row?.routes.slice(0, 1);
  return routes?.some(({ route }) => comesFrom(route, from)) === true;
}

const comesFrom = ({ inputs }: JudgedRoute['route'], readings: readonly Reading[]): boolean =>
  inputs.some(
    (route) =>
      readings.some(({ measure, at }) => route.characteristic.id === measure && route.position === at) ||
      comesFrom(route, readings),
  );

/** Begins what follows from it. */
const AS_READ = '; as read, ';

/** What is impossible speaks for itself; of a slip the gravest that follows from it is said beside it. */
function withEffects(cause: Finding, effects: readonly Finding[]): Finding {
  const grave = effects.filter(({ severity }) => severity === 'error');
  const shown = grave.find(({ code }) => code === IMPOSSIBLE.code) ?? grave[0];
  if (shown === undefined || cause.code === IMPOSSIBLE.code) return cause;
  const others = (cause.covers ?? []).length > 1 ? andMore(grave.length - 1) : '';
  return {
    ...cause,
    code: shown.code === IMPOSSIBLE.code ? shown.code : cause.code,
    severity: shown.severity,
    message: cause.message.includes(AS_READ)
      ? cause.message
      : `${cause.message}${AS_READ}${factOf(shown, cause)}${others}`,
    limitPlace: cause.limitPlace ?? shown.limitPlace,
  };
}

/** What was found, without the name that both begin with where they are about one reading. */
function factOf({ message, fact = message, measure, at }: Finding, cause: Finding): string {
  if (measure !== cause.measure || at !== cause.at) return fact;
  return fact.slice(fact.slice(0, sameBeginning(fact, cause.message)).lastIndexOf(': ') + 1).trimStart();
}

function sameBeginning(one: string, other: string): number {
  let length = 0;
  while (length < one.length && one[length] === other[length]) length += 1;
  return length;
}

const andMore = (count: number): string => (count === 0 ? '' : `, and ${count} more`);
