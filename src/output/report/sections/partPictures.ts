import { named, printingOf, readingText } from '../../../checks/findings/readings.ts';
import { type EngineReport, type StateReport, unitsFor } from '../../../checks/judge/report.ts';
import type { JudgedRoute, Row } from '../../../checks/judge/row.ts';
import type { Part } from '../../../layout/part.ts';
import { formatNumber } from '../../../quantity/format.ts';
import { compare, type Fraction } from '../../../quantity/fraction.ts';
import { numberIn } from '../../check/rowJson.ts';
import { verdictText } from '../../check/view/rowView.ts';
import type { BoreField, BoreMapPicture } from '../../page/pictures/boreMap.ts';
import type { JournalPicture } from '../../page/pictures/journal.ts';
import type { Picture } from '../../page/pictures/pictures.ts';

/** Of bores that were gone over a map each, of journals a profile each; none of what was read at one place. */
export const partPictures = (
  rows: readonly Row[],
  report: EngineReport,
  state: StateReport,
): readonly Picture[] => rows.flatMap((row) => pictureOf(row, report, state) ?? []);

function pictureOf(
  row: Row,
  report: EngineReport,
  state: StateReport,
): BoreMapPicture | JournalPicture | undefined {
  const [judged] = row.routes;
  const { figure, of } = row.characteristic;
  const part = of === undefined ? undefined : report.registry.parts.find(of);
  if (figure !== 'size' || judged === undefined || part === undefined) return undefined;
  const { stations, directions } = judged.route.grid;
  if (stations.length < 2) return undefined;
  if (isBored(part) && directions.length > 1) return boreMap(row, judged, report, state);
  return isGround(part) ? journal(row, judged, report) : undefined;
}

const isBored = ({ sized }: Part): boolean => sized?.made === 'over' && sized.fits === undefined;

const isGround = ({ sized }: Part): boolean => sized?.made === 'under' && sized.liesIn === undefined;

function boreMap(row: Row, judged: JudgedRoute, report: EngineReport, state: StateReport): BoreMapPicture {
  const { unit, decimals } = printingOf(row, unitsFor(report.engine));
  const { new: fresh, wear } = row.limits.bands;
  const { deciding } = row.judgement;
  const { grid } = judged.route;
  const isOut = (amount: Fraction): boolean =>
    (deciding.max !== undefined && compare(amount, deciding.max.amount) > 0) ||
    (deciding.min !== undefined && compare(amount, deciding.min.amount) < 0);
  const field = (amount: Fraction): BoreField => ({
    value: numberIn(amount, unit),
    text: formatNumber(amount, unit, decimals),
    isOut: isOut(amount),
  });
  const least = numberIn(judged.least, unit);
  return {
    kind: 'bore map',
    ...reported(row, report),
    stations: grid.stations.map(({ name }, index) => name ?? `${index + 1}`),
    directions: grid.directions.map((name, index) => name ?? `${index + 1}`),
    fields: grid.rows.map((each) => each.map((value) => value && field(value.amount))),
    fresh: fresh?.max === undefined ? least : numberIn(fresh.max.amount, unit),
    worn: wear?.max === undefined ? numberIn(judged.greatest, unit) : numberIn(wear.max.amount, unit),
    margin: [
      `greatest ${formatNumber(judged.greatest, unit, decimals)}`,
      `least ${formatNumber(judged.least, unit, decimals)}`,
      ...formTexts(row, report, state),
    ],
  };
}

/** Taper and out of round of the same part at the same place, as they are judged. */
const formTexts = (row: Row, { engine }: EngineReport, { rows }: StateReport): readonly string[] =>
  rows.flatMap((each) => {
    const { figure, of } = each.characteristic;
    const [judged] = each.routes;
    if (judged === undefined || of !== row.characteristic.of || each.position !== row.position) return [];
    if (figure !== 'taper' && figure !== 'out of round') return [];
    return [`${figure} ${readingText(judged, printingOf(each, unitsFor(engine)))}`];
  });

function journal(row: Row, judged: JudgedRoute, report: EngineReport): JournalPicture {
  const { unit, decimals } = printingOf(row, unitsFor(report.engine));
  const { grid } = judged.route;
  const text = (amount: Fraction): string => formatNumber(amount, unit, decimals);
  const { min } = row.judgement.deciding;
  return {
    kind: 'journal',
    ...reported(row, report),
    stations: grid.stations.flatMap(({ name }, index) => {
      const read = (grid.rows[index] ?? []).flatMap((value) => value?.amount ?? []).sort(compare);
      const [least, greatest] = [read[0], read.at(-1)];
      if (least === undefined || greatest === undefined) return [];
      return [
        {
          name: name ?? `${index + 1}`,
          least: numberIn(least, unit),
          greatest: numberIn(greatest, unit),
          text: [...new Set([text(least), text(greatest)])].join(' to '),
        },
      ];
    }),
    limits:
      min === undefined
        ? []
        : [{ value: numberIn(min.amount, unit), text: `${min.band} min ${text(min.amount)}` }],
  };
}

const reported = (row: Row, { engine }: EngineReport) => ({
  title: named(row),
  description: verdictText(row, printingOf(row, unitsFor(engine))) || 'without limits',
});
