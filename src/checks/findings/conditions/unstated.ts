import { inOneSentence } from '../../../quantity/words.ts';
import { likewiseAt, type SaidOnce, saidOnce } from '../../alike.ts';
import { type Finding, type FindingKind, finding } from '../../finding.ts';
import type { Row } from '../../judge/row.ts';
import type { Route } from '../../value/route.ts';
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
  example:
    'leak-down 1: orifice not stated; limits and other readings may be of another orifice: write it under conditions; likewise at 2',
};

export const unstatedKinds: readonly FindingKind[] = [UNSTATED];

export const unstatedFindings = (rows: readonly Row[]): readonly Finding[] => [
  ...saidOnce(silentRows(rows), (row) => unstated(row).join()).map(about),
  ...rows.filter(isFailedByNobody).map(failedByNobody),
];

/** What is worked out from readings that do not say goes without saying. */
function silentRows(rows: readonly Row[]): readonly Row[] {
  const silent = rows.filter((row) => unstated(row).length > 0);
  const isSilent = (route: Route): boolean =>
    silent.some((row) => row.characteristic === route.characteristic && row.position === route.position);
  return silent.filter(({ routes: [judged] }) => judged?.route.inputs.some(isSilent) === false);
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

function about({ figures, likewise }: SaidOnce<Row>): Finding {
  const [{ characteristic, position, place }] = figures;
  const wanting = unstated(figures[0]).map((each) => each.replaceAll('_', ' '));
  const names = inOneSentence(wanting);
  const message = `${inOneSentence(figures.map(named))}: ${names} not stated; limits and other readings may be of another ${names}: write ${wanting.length === 1 ? 'it' : 'them'} under conditions${likewiseAt(likewise)}`;
  return finding(UNSTATED, place, message, { measure: characteristic.id, position });
}
