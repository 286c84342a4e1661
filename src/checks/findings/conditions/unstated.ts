import type { Position } from '../../../layout/position.ts';
import { type Finding, type FindingKind, finding } from '../../finding.ts';
import type { Row } from '../../judge/row.ts';
import { statedIn } from '../../value/statedConditions.ts';
import { named } from '../readings.ts';

const UNSTATED: FindingKind = {
  code: 'method/unstated',
  severity: 'remark',
  means:
    'A session does not say under which condition a figure was read that depends on it: leak-down and crankcase pressure on the orifice, valve events on the lift, running oil pressure on speed and temperature, the load of a relief spring on its length, a chain on how many links were measured, compression on the altitude. Or a test failed, and no note says who tested and how. The figure is judged all the same.',
  matters:
    'Under another condition a sound engine reads another figure: the limit, the other cylinders and earlier sessions may be of another condition.',
  usually:
    'Write the condition into the block of the reading, such as `conditions: { orifice: 0.040 in }`. Of a failed test write who and how as its note. Where nobody knows it any more, read it again.',
  example: 'leak-down 1: orifice not stated; its limit and other readings may be of another; likewise at 2',
};

export const unstatedKinds: readonly FindingKind[] = [UNSTATED];

/** Once for each figure, at the first of its positions that does not say. */
export function unstatedFindings(rows: readonly Row[]): readonly Finding[] {
  const silent = rows.filter((row) => unstated(row).length > 0);
  const ids = new Set(silent.map(({ characteristic }) => characteristic.id));
  const conditions = [...ids].flatMap((id) => {
    const [first, ...more] = silent.filter(({ characteristic }) => characteristic.id === id);
    return first === undefined
      ? []
      : [
          about(
            first,
            more.map(({ position }) => position),
          ),
        ];
  });
  return [...conditions, ...rows.filter(isFailedByNobody).map(failedByNobody)];
}

const isFailedByNobody = ({ characteristic, judgement, routes: [judged] }: Row): boolean =>
  characteristic.quantity === 'pass or fail' &&
  judgement.verdict === 'out' &&
  judged?.route.notes.length === 0;

const failedByNobody = (row: Row): Finding =>
  finding(
    UNSTATED,
    row.place,
    `${named(row)}: no note says who tested it and how; write it beside the result`,
    {
      measure: row.characteristic.id,
      position: row.position,
    },
  );

function unstated({ characteristic, routes: [judged] }: Row): readonly string[] {
  if (judged === undefined || characteristic.under === undefined) return [];
  const stated = statedIn(judged.route);
  return characteristic.under.filter((condition) => !stated.has(condition));
}

function about(row: Row, more: readonly Position[]): Finding {
  const wanting = unstated(row).map((each) => each.replaceAll('_', ' '));
  const also = more.length === 0 ? '' : `; likewise at ${more.map(({ name }) => name).join(', ')}`;
  const message = `${named(row)}: ${wanting.join(' and ')} not stated; its limit and other readings may be of another${also}`;
  return finding(UNSTATED, row.place, message, {
    measure: row.characteristic.id,
    position: row.position,
  });
}
