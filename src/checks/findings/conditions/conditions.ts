import { alike, likewiseAt } from '../../alike.ts';
import { type Finding, type FindingKind, finding } from '../../finding.ts';
import type { Row } from '../../judge/row.ts';
import type { Route } from '../../value/route.ts';
import { statedIn } from '../../value/statedConditions.ts';
import { named } from '../readings.ts';
import { unstatedFindings, unstatedKinds } from './unstated.ts';

export const CONDITIONS: FindingKind = {
  code: 'method/conditions',
  severity: 'remark',
  means:
    'Two ways of measuring the same thing were taken under different conditions: dry or oiled, with the oil pump or without, caps tightened or not. Or one figure is worked out from readings whose conditions differ: an opening at 0.050 in of lift and a closing at 1 mm give no duration, and none is worked out.',
  matters: 'A difference between them may come from the conditions, and their agreement may be chance.',
  usually: 'Measure both under the conditions that the manual asks for.',
  example:
    'main bearing clearance 1 was measured with bearings oiled (bearing bore − journal) and dry (read directly, strip): measure both alike',
};

export const conditionKinds: readonly FindingKind[] = [CONDITIONS, ...unstatedKinds];

export const conditionFindings = (rows: readonly Row[]): readonly Finding[] => [
  ...unlikeConditions(rows),
  ...unstatedFindings(rows),
];

/** Rows whose routes were not taken alike; said once for each pair of ways and what differs, at its first row. */
function unlikeConditions(rows: readonly Row[]): readonly Finding[] {
  const unlike = rows.flatMap((row) => {
    const [judged, ...others] = row.routes;
    return others.flatMap(({ route }) => {
      const text = judged && difference(judged.route, route);
      return text === undefined ? [] : [{ row, route, text }];
    });
  });
  return alike(unlike, ({ row, text }) => `${row.characteristic.id} ${text}`).map(
    ([{ row, route, text }, ...others]) =>
      finding(
        CONDITIONS,
        route.place,
        `${named(row)} was measured with ${text}: measure both alike${likewiseAt(others.map((each) => each.row.position))}`,
        { measure: row.characteristic.id, position: row.position },
      ),
  );
}

/** `bearings oiled (bearing bore − journal) and dry (read directly)`; what only one of them states is not known to differ. */
function difference(a: Route, b: Route): string | undefined {
  const [ofA, ofB] = [statedIn(a), statedIn(b)];
  const unlike = [...ofA].flatMap(([what, how]) => {
    const other = ofB.get(what);
    if (other === undefined || [...how].some((each) => other.has(each))) return [];
    return [
      `${what.replaceAll('_', ' ')} ${[...how].join(' or ')} (${waysName(a)}) and ${[...other].join(' or ')} (${waysName(b)})`,
    ];
  });
  return unlike.length === 0 ? undefined : unlike.join('; ');
}

const waysName = ({ name, with: instruments, block }: Route): string =>
  block === undefined ? name : `${name}, ${instruments.join(' and ')}`;
