import { formatLimit } from '../../checks/findings/readings.ts';
import type { Tolerance } from '../../checks/judge/tolerances.ts';
import type { StudyDocument } from '../../documents/session/study.ts';
import { keyText } from '../../documents/writing/keyText.ts';
import { averageAndRange } from '../../measurement/averageAndRange.ts';
import { gaugeAnova } from '../../measurement/gaugeAnova.ts';
import { type GaugeVariation, percentOfTolerance } from '../../measurement/gaugeStudy.ts';
import { decimalsFor, headedWithUnit, withUnitName } from '../../quantity/format.ts';
import { toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { type Line, line } from '../escape/line.ts';
import { type Cell, cell, layTable } from '../terminal/table.ts';
import type { TextStyle } from '../terminal/textStyle.ts';

const COLUMNS = [{ align: 'left' }, { align: 'right' }, { align: 'right' }, { align: 'right' }] as const;

type Share = Exclude<keyof GaugeVariation, 'distinctCategories' | 'wholeCategories'>;

const ROWS: readonly (readonly [Share, string])[] = [
  ['repeatability', 'repeatability (EV)'],
  ['reproducibility', 'reproducibility (AV)'],
  ['interaction', 'people with parts'],
  ['gauge', 'gauge, all of it (GRR)'],
  ['parts', 'parts (PV)'],
  ['total', 'total (TV)'],
];

export interface ReportedStudy {
  readonly study: StudyDocument;
  readonly unit: Unit;
  /** Of what was measured, where its limits are two-sided. */
  readonly tolerances: readonly Tolerance[];
  /** Of the session that holds it, from the shop's root. */
  readonly path: string;
}

/** A gauge study by both methods, the judgement of the gauge, and the line for the register. */
export function studyLines(reported: ReportedStudy, style: TextStyle): readonly Line[] {
  const { study, unit } = reported;
  const { people, parts, readings, measure, instrument } = study;
  const size = `${parts.length} parts, ${people.length} people, ${readings[0]?.[0]?.length ?? 0} repeats each`;
  const name = `gauge study of ${instrument ?? 'an unnamed instrument'}`;
  const heading = line`${style.paint.strong(name)}  ${headedWithUnit(measure.id, unit)}`;
  const methods = [
    ['average and range', averageAndRange(readings)],
    ['analysis of variance', gaugeAnova(readings)],
  ] as const;
  const blocks = methods.flatMap(([name, result]) => [
    '',
    ...(result.kind === 'no study' ? [`${name}: ${result.reason}`] : methodLines(name, result, reported)),
  ]);
  return [heading, `  ${size}`, ...blocks, '', registerText(reported)];
}

function methodLines(
  name: string,
  of: GaugeVariation,
  { study, unit, tolerances }: ReportedStudy,
): readonly Line[] {
  const decimals = decimalsFor(study.lastDigit, unit) + 2;
  const head = [cell(''), cell('one deviation'), cell('of total'), cell('of variance')];
  const rows = ROWS.flatMap(([key, label]): readonly (readonly Cell[])[] => {
    const variation = of[key];
    if (key === 'interaction' && variation.deviation === 0) return [];
    return [
      [
        cell(label),
        cell((variation.deviation / toNumber(unit.factor)).toFixed(decimals)),
        cell(`${variation.percentOfTotal.toFixed(1)} %`),
        cell(`${variation.contribution.toFixed(1)} %`),
      ],
    ];
  });
  const categories = Number.isFinite(of.distinctCategories)
    ? of.distinctCategories.toFixed(2)
    : 'no limit to';
  return [
    name,
    ...layTable([head, ...rows], COLUMNS),
    `  ${categories} distinct categories of parts (five or more are wanted); ${judged(of)}`,
    ...tolerances.map((tolerance) => toleranceText(of, tolerance, study, unit)),
  ];
}

/** How much of what the limits allow goes to the gauge: six deviations, which hold nearly all readings. */
function toleranceText(of: GaugeVariation, tolerance: Tolerance, study: StudyDocument, unit: Unit): string {
  const decimals = decimalsFor(study.lastDigit, unit);
  const [min, max] = [tolerance.min, tolerance.max].map((each) => formatLimit(each, unit, decimals));
  const share = percentOfTolerance(of.gauge, tolerance.width).toFixed(0);
  return `  six deviations of GRR take ${share} % of the tolerance, ${tolerance.band} ${min} to ${max}`;
}

/** The usual bands of the measurement systems analysis manual, 4th edition, table II-D 1. */
function judged({ gauge }: GaugeVariation): string {
  if (gauge.percentOfTotal < 10) return 'GRR below 10 %: good for telling these parts apart';
  return gauge.percentOfTotal <= 30
    ? 'GRR from 10 to 30 %: it may do, by what hangs on it'
    : 'GRR above 30 %: not for telling these parts apart';
}

/** The repeatability that the study found, as a register of instruments in the shop's folder takes it. */
function registerText({ study: { instrument, readings, lastDigit }, unit, path }: ReportedStudy): string {
  const result = gaugeAnova(readings);
  if (result.kind === 'no study') return 'no repeatability for the register';
  const value = result.repeatability.deviation / toNumber(unit.factor);
  const text = value.toFixed(decimalsFor(lastDigit, unit) + 2);
  const name = instrument ?? 'its name';
  return `for the register, ${withUnitName(text, unit)}: ${name}: { repeatability: { study: ${keyText(path)} } }`;
}
