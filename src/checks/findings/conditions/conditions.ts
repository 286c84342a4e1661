import type { Position } from '../../../layout/position.ts';
import { type Finding, type FindingKind, finding } from '../../finding.ts';
import type { JudgedRoute, Row } from '../../judge/row.ts';
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
  example: 'main bearing clearance 1: bearings oiled (bearing bore − journal) and dry (read directly, strip)',
};

export const conditionKinds: readonly FindingKind[] = [CONDITIONS, ...unstatedKinds];

export const conditionFindings = (rows: readonly Row[]): readonly Finding[] => [
  ...unlikeConditions(rows),
  ...unstatedFindings(rows),
];

/** Rows whose routes were not taken alike; said once for each pair of ways and what differs, at its first row. */
function unlikeConditions(rows: readonly Row[]): readonly Finding[] {
  const groups = new Map<string, { row: Row; other: JudgedRoute; text: string; positions: Position[] }>();
  for (const row of rows) {
    const [judged, ...others] = row.routes;
    if (judged === undefined) continue;
    for (const other of others) {
      const text = difference(judged.route, other.route);
      if (text === undefined) continue;
      const key = `${row.characteristic.id} ${judged.route.name} ${other.route.name} ${text}`;
      const group = groups.get(key) ?? { row, other, text, positions: [] };
      group.positions.push(row.position);
      groups.set(key, group);
    }
  }
  return [...groups.values()].map(({ row, other, text, positions }) => {
    const also =
      positions.length === 1
        ? ''
        : `; likewise at ${positions
            .slice(1)
            .map(({ name }) => name)
            .join(', ')}`;
    return finding(CONDITIONS, other.route.place, `${named(row)}: ${text}${also}`, {
      measure: row.characteristic.id,
      position: row.position,
    });
  });
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
