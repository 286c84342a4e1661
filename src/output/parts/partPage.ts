import type { Characteristic } from '../../characteristics/characteristic.ts';
import type { Finding } from '../../checks/finding.ts';
import { printingOf, readingText } from '../../checks/findings/readings.ts';
import type { Row } from '../../checks/judge/row.ts';
import { unitOfRow } from '../../checks/judge/session.ts';
import { titleOf } from '../../compare/parts/conflicts.ts';
import type { HeldBefore } from '../../compare/parts/heldBefore.ts';
import type { DatedStay } from '../../compare/parts/markedParts.ts';
import {
  characteristicsOf,
  type MeasuredPart,
  type MeasuredSitting,
  partTrend,
} from '../../compare/parts/measuredPart.ts';
import { followedIn, type TrendLine } from '../../compare/trend.ts';
import type { Engine } from '../../documents/assemble.ts';
import { shortName } from '../../layout/naming.ts';
import { formatNumber, headedWithUnit } from '../../quantity/format.ts';
import type { Page, PageCell, Section } from '../plan/page.ts';
import { outlookText, printingOfLine, rateText } from '../trend/trendWords.ts';
import { conflictLines } from './conflictLines.ts';
import { doneSection } from './doneToPart.ts';
import { heldSection } from './heldSection.ts';
import { hoursText } from './hoursText.ts';
import { whereNow } from './partsPage.ts';

/** Everything known of a part, over all engines of the shop. */
export function partPage(
  part: MeasuredPart,
  conflicts: readonly Finding[],
  held?: readonly HeldBefore[],
): Page {
  const { shelf } = part;
  return {
    title: titleOf(part),
    about: [
      ...(shelf?.bought === undefined ? [] : [`bought from ${shelf.bought}`]),
      ...(shelf === undefined || shelf.fits.length === 0 ? [] : [`fits ${shelf.fits.join(', ')}`]),
    ],
    answer: [`Now: ${whereNow(part)}.`],
    sections: [
      ...conflictLines(conflicts),
      ...staysSection(part),
      ...doneSection(part),
      ...characteristicsOf(part).map((each) => measuredSection(part, each)),
      ...trendsSection(part),
      ...heldSection(held),
    ],
    cautions: [],
  };
}

function staysSection({ stays, sittings }: MeasuredPart): readonly Section[] {
  if (stays.length === 0) return [];
  const ran = ({ sessions }: DatedStay): string =>
    hoursText(
      sittings.findLast(({ session, hours }) => hours !== undefined && sessions.includes(session))?.hours,
    );
  return [
    {
      title: 'Where it was',
      table: {
        columns: [
          { heading: 'engine', key: 'engine' },
          { heading: 'from', key: 'from' },
          { heading: 'until', key: 'until' },
          { heading: 'its hours by then', key: 'hours', align: 'right' },
        ],
        rows: stays.map((stay) => [
          engineCell(stay.of.engine),
          stay.from,
          stay.to ?? 'still there',
          ran(stay),
        ]),
      },
    },
  ];
}

const engineCell = ({ document: { name }, folder }: Engine): PageCell => ({
  text: name,
  value: name,
  engine: folder,
});

const FOLLOWED = {
  least: ', the least of each',
  greatest: ', the greatest of each',
  mean: ', the mean of each',
} as const;

function measuredSection({ sittings }: MeasuredPart, of: Characteristic): Section {
  const all = sittings
    .map((sitting) => ({
      sitting,
      rows: sitting.rows.filter(({ characteristic }) => characteristic.id === of.id),
    }))
    .filter(({ rows }) => rows.length > 0);
  const names = [...new Set(all.flatMap(({ rows }) => rows.map(({ position }) => shortName(position))))];
  const last = all.at(-1);
  const row = last?.rows[0];
  const unit = row === undefined || last === undefined ? undefined : unitOfRow(row, last.sitting.engine);
  const label = unit === undefined ? of.label : headedWithUnit(of.label, unit);
  return {
    title: `${label}${row === undefined || of.quantity === 'pass or fail' ? '' : FOLLOWED[followedIn(row)]}`,
    table: {
      columns: [
        { heading: 'day', key: 'day' },
        { heading: '', key: 'stage' },
        { heading: 'hours', key: 'hours', align: 'right' },
        ...names.map((name) => ({ heading: name, key: name, align: 'right' as const })),
        { heading: '', key: 'verdicts' },
      ],
      rows: all.map(({ sitting, rows }) => [
        sitting.session.date,
        sitting.isBench ? 'outside' : sitting.session.stage,
        hoursText(sitting.hours),
        ...names.map((name) => valueText(rows, name, sitting)),
        verdictsText(rows),
      ]),
    },
  };
}

function valueText(rows: readonly Row[], name: string, { engine }: MeasuredSitting): string {
  const row = rows.find(({ position }) => shortName(position) === name);
  const judged = row?.routes[0];
  if (row === undefined || judged === undefined) return '';
  const printing = printingOf(row, (each) => unitOfRow(each, engine));
  if (printing.outcomes !== undefined) return readingText(judged, printing);
  const { unit, decimals } = printing;
  return formatNumber(judged[followedIn(row)], unit, decimals);
}

/** What is not simply well: `2, 3 worn`. */
function verdictsText(rows: readonly Row[]): string {
  const reported = new Map<string, string[]>();
  for (const { judgement, position } of rows) {
    const { verdict } = judgement;
    if (verdict === null || verdict === 'ok') continue;
    reported.set(verdict, [...(reported.get(verdict) ?? []), shortName(position)]);
  }
  return [...reported].map(([verdict, at]) => `${at.join(', ')} ${verdict}`.trim()).join('; ');
}

/** Of lines with three readings or more. */
function trendsSection(part: MeasuredPart): readonly Section[] {
  const lines = characteristicsOf(part).flatMap((each) => {
    const trend = partTrend(part, each);
    return (trend?.lines ?? [])
      .filter(({ points }) => points.length > 2)
      .map((line) => `${trendText(line)}: ${reportedOf(line, trend?.axis ?? 'date', part)}`);
  });
  return lines.length === 0 ? [] : [{ title: 'Trends', lines }];
}

const trendText = ({ row }: TrendLine): string =>
  [row.characteristic.label, shortName(row.position)].filter(Boolean).join(' ');

function reportedOf(line: TrendLine, axis: 'hours' | 'date', { sittings }: MeasuredPart): string {
  const engine = sittings.at(-1)?.engine;
  if (engine === undefined) return '';
  const printing = printingOfLine(line, (row) => unitOfRow(row, engine));
  return [rateText(line, axis, printing), outlookText(line, axis, printing)].filter(Boolean).join('; ');
}
