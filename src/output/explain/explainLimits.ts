import { formatLimit, limitNumber, type Printing } from '../../checks/findings/readings.ts';
import { type SessionOfEngine, statedCondition } from '../../checks/judge/condition.ts';
import type { JudgingOptions, Row } from '../../checks/judge/row.ts';
import { decidingOrder, type SideLimit } from '../../checks/judge/sideLimit.ts';
import { sideAcross } from '../../checks/judge/verdict.ts';
import type { Place } from '../../diagnostic/place.ts';
import type { DecisionRule } from '../../documents/engine/shop.ts';
import { BAND_NAMES, type BandName } from '../../documents/limits/bands.ts';
import { sizeText } from '../check/sizeText.ts';
import { warmthText } from '../check/warmthText.ts';
import type { Line } from '../escape/line.ts';
import { type Cell, cell, layTable } from '../terminal/table.ts';

const LEFT = { align: 'left' } as const;

export const placeText = ({ path, line, column }: Place): string => `${path}:${line}:${column}`;

/** The bands with where each stands, and where their figures come from. */
export function limitLines(row: Row, printing: Printing): readonly Line[] {
  const { bands, inForce } = row.limits;
  const rows = BAND_NAMES.flatMap((name) =>
    (['min', 'max'] as const).flatMap((side): readonly (readonly Cell[])[] => {
      const limit = bands[name]?.[side];
      return limit === undefined
        ? []
        : [[cell(name), cell(side), cell(workedNumber(limit, printing)), cell(placeText(limit.place))]];
    }),
  );
  if (rows.length === 0) return ['  none'];
  const named = BAND_NAMES.filter((name) => bands[name] !== undefined);
  return [
    ...layTable(rows, [LEFT, LEFT, LEFT, LEFT]),
    ...[...sizeText(row, printing.unit), ...warmthText(row)].map((text) => `  ${text}`),
    ...sourceLines(named, inForce.sources),
  ];
}

/** A formula is shown with its numbers in it, and what it comes to in their unit where that is another. */
function workedNumber(limit: SideLimit, printing: Printing): string {
  const { amount, written, unit } = limit;
  const number = limitNumber(limit, printing);
  if (unit === undefined) return number;
  return unit.name === printing.unit.name
    ? `${number} = ${written}`
    : `${number}, in ${unit.name} ${formatLimit(amount, unit, printing.decimals)} = ${written}`;
}

/** One line where all bands have one source, else a line for each source. */
function sourceLines(
  names: readonly BandName[],
  sources: Readonly<Partial<Record<BandName, string>>>,
): readonly string[] {
  const stated = [...new Set(names.flatMap((name) => sources[name] ?? []))];
  const [only] = stated;
  if (only !== undefined && names.every((name) => sources[name] === only)) return [`  source: ${only}`];
  return stated.map((source) => {
    const of = names.filter((name) => sources[name] === source);
    return `  source of ${of.join(' and ')}: ${source}`;
  });
}

/** Which sides decide, by which rule, and what came of it. */
export function reasonLines(
  row: Row,
  around: SessionOfEngine,
  rule: DecisionRule,
  { judgeBy }: JudgingOptions,
  printing: Printing,
): readonly string[] {
  const { deciding, verdict, probability } = row.judgement;
  const [judged] = row.routes;
  const { characteristic, position } = row;
  // Nothing said of its part, the stage at which the value was read chooses the band.
  const { stage } = judged?.route.readIn ?? around.session;
  const condition = statedCondition(around, characteristic, position);
  const order = decidingOrder(stage, judgeBy ?? condition?.band).join(', else ');
  const by = condition === undefined ? stage : `${stage} with ${condition.text}`;
  const side = (name: 'min' | 'max'): string => {
    const limit = deciding[name];
    return limit === undefined ? `no ${name}` : `${name} ${limitNumber(limit, printing)} (${limit.band})`;
  };
  const decided = judgeBy === undefined ? `${by} is decided by` : 'as asked for, it is decided by';
  return [
    `  ${decided} ${order}, side by side: ${side('min')}, ${side('max')}`,
    judged !== undefined && sideAcross(judged, deciding) !== undefined
      ? `  it was read as ${judged.route.written.join(', ')}, and a limit lies inside that`
      : rule === 'simple'
        ? '  rule simple: least and greatest are compared with them as they stand'
        : `  rule guarded: inside from 95 %, out up to 5 %; here ${((probability ?? 0) * 100).toFixed(1)} % likely inside`,
    `  so it is ${verdict ?? 'not judged: no limit decides'}${concessionText(row)}`,
  ];
}

function concessionText({ concessions }: Row): string {
  const entries = [...new Set(concessions.map(({ concession }) => concession))];
  const reasons = entries.map(({ reason }) => reason).join(' / ');
  if (entries.length === 0) return '';
  return entries.length === 1
    ? `; a concession is in force: ${reasons}`
    : `; concessions are in force: ${reasons}`;
}
