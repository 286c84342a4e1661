import type { Characteristic } from '../../characteristics/characteristic.ts';
import { characteristics } from '../../characteristics/registry.ts';
import { findingKinds } from '../../checks/catalogue.ts';
import { type EngineReport, isState, reportEngine, unitsFor } from '../../checks/judge/report.ts';
import type { JudgingOptions, Row } from '../../checks/judge/row.ts';
import { DOCUMENT_CODES } from '../../diagnostic/catalogue.ts';
import type { DocumentCode } from '../../diagnostic/diagnostic.ts';
import { unknownMeasure } from '../../documents/measure.ts';
import { compareNames } from '../../layout/nameOrder.ts';
import type { Position } from '../../layout/position.ts';
import { findPosition } from '../../layout/readKey.ts';
import { revisionText } from '../../output/diff/revision.ts';
import type { Line } from '../../output/escape/line.ts';
import { characteristicLines } from '../../output/explain/explainCharacteristic.ts';
import { documentCodeLines, findingKindLines } from '../../output/explain/explainCode.ts';
import { positionsLines } from '../../output/explain/explainPositions.ts';
import { valueLines } from '../../output/explain/explainValue.ts';
import type { MeasuredRow } from '../../output/explain/measuredRow.ts';
import { LINES_FORMATS } from '../../output/lines/formats/index.ts';
import type { TextStyle } from '../../output/terminal/textStyle.ts';
import { planContext } from '../../plan/work/context.ts';
import { type FinerInstruments, finerInstruments } from '../../plan/work/instruments.ts';
import type { World } from '../../shell/world.ts';
import { sessionNamed } from '../check/chooseSessions.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { printFormats } from '../format/printFormats.ts';
import { findMeasure, measureCalled, measureNamed } from '../shop/measureNamed.ts';
import { howToGet, notMeasuredAt } from '../shop/notMeasuredAt.ts';
import { openEngine, sourceOf } from '../shop/resolveShop.ts';
import type { Subject } from '../shop/subjectWords.ts';
import { UsageError } from '../usage.ts';
import { readExplainCall } from './explainCall.ts';

export interface ExplainOptions extends JudgingOptions {
  readonly engine?: string | undefined;
  readonly session?: string | undefined;
  /** A revision whose documents are read instead of those on disk. */
  readonly at?: string | undefined;
  readonly format: readonly FormatChoice[];
}

/** Explains a finding code, a characteristic, or one value of an engine; the exit code. */
export function explain(words: readonly string[], options: ExplainOptions, world: World): Promise<number> {
  const call = readExplainCall(words, options, world);
  return call.subject === undefined
    ? explainName(call.name, options, world)
    : explainValue(call.name, call.subject, options, world);
}

async function explainName(name: string, { at, format }: ExplainOptions, world: World): Promise<number> {
  await printFormats(LINES_FORMATS, format, (style) => nameLines(name, at, style, world), world, true);
  return 0;
}

function nameLines(name: string, at: string | undefined, style: TextStyle, world: World): readonly Line[] {
  const kind = findingKinds.find(({ code }) => code === name);
  const code = name.replace(/^document\//, '');
  const characteristic = measureCalled(name, { all: characteristics });
  if (kind !== undefined) return findingKindLines(kind, style);
  if (characteristic !== undefined) return characteristicLines(characteristic, style);
  if (isDocumentCode(code)) return documentCodeLines(code, style);
  return characteristicLines(ownCharacteristic(name, at, world), style);
}

const isDocumentCode = (code: string): code is DocumentCode => Object.hasOwn(DOCUMENT_CODES, code);

/** One that the shop around the working directory, or one of its engines, has added. */
function ownCharacteristic(name: string, at: string | undefined, world: World): Characteristic {
  const known = new Set(knownNames());
  const shop = sourceOf(at, '.', world).locate('.')?.shop;
  for (const folder of shop?.loader.find({ folders: ['.'] }).engines ?? []) {
    const { registry } = shop?.load(folder) ?? {};
    const found = registry && measureCalled(name, registry);
    if (found !== undefined) return found;
    for (const id of registry?.ids() ?? []) known.add(id);
  }
  // A shop's own name stands before another word for one of ours.
  const otherwise = findMeasure(name, { all: characteristics });
  if (otherwise !== undefined) return otherwise;
  const { message, help } = unknownMeasure(name, { ids: () => [...known] });
  throw new UsageError(message, help ?? 'name a finding code or a characteristic');
}

const knownNames = (): readonly string[] => [
  ...findingKinds.map(({ code }) => code),
  ...characteristics.map(({ id }) => id),
  ...Object.keys(DOCUMENT_CODES).map((code) => `document/${code}`),
];

async function explainValue(
  measure: string,
  { engine, position }: Subject,
  options: ExplainOptions,
  world: World,
): Promise<number> {
  const opened = openEngine(engine, world, options.at);
  const report = reportEngine(opened.engine, opened.registry, options);
  const characteristic = measureNamed(measure, opened.registry);
  const rows = rowsShown(report, characteristic, options.session);
  const linesIn = (style: TextStyle): readonly Line[] =>
    position === undefined && !characteristic.family.isSingle
      ? positionsLines([characteristic.id, engine], rows, unitsFor(report.engine), style)
      : rowsAt(position, characteristic, rows, report).flatMap((row, index) => [
          ...(index === 0 ? [] : ['']),
          ...valueLines(row, report, options, finerFor(row, report), style),
        ]);
  const linesOf = (style: TextStyle): readonly Line[] => [
    ...(opened.revision === undefined ? [] : [revisionText(opened.revision, style), '']),
    ...linesIn(style),
  ];
  await printFormats(LINES_FORMATS, options.format, linesOf, world, true);
  return opened.hasProblems ? 2 : 0;
}

function finerFor(
  { row }: MeasuredRow,
  { engine, registry, state }: EngineReport,
): readonly FinerInstruments[] {
  return state === undefined ? [] : finerInstruments(row, planContext(engine, registry, state));
}

/**
 * At each position the row of the session named; else that of where the engine stands, as a check shows it, or of what
 * holds no longer the latest that was measured. Throws where there is none.
 */
function rowsShown(
  report: EngineReport,
  characteristic: Characteristic,
  session: string | undefined,
): readonly MeasuredRow[] {
  const { id, family } = characteristic;
  const { sessions, state } = report;
  const asked =
    session === undefined
      ? [...sessions, ...(state === undefined ? [] : [state])]
      : sessionNamed(session, sessions);
  const latest = new Map<Position, readonly MeasuredRow[]>();
  for (const of of asked) {
    const rows = of.rows.filter((row) => row.characteristic.id === id);
    for (const position of new Set(rows.map((row) => row.position))) {
      // Two, where the halves of a pair of shells are unlike.
      const here = rows.filter((row) => row.position === position);
      const isMeasured = here.some(hasValue);
      const isOver = isMeasured && session === undefined && !isState(of);
      if (isMeasured || !latest.get(position)?.some(({ row }) => hasValue(row)))
        latest.set(
          position,
          here.map((row) => ({ row, of, isOver })),
        );
    }
  }
  if (latest.size === 0) {
    const where = session === undefined ? 'any session' : `the session ${session}`;
    throw new UsageError(`${id} is not in ${where}`, howToGet(characteristic));
  }
  const found = [...latest.values()].flat();
  // The steps of an assembly stand in the order in which they were taken.
  return family.isNamedBySession
    ? found
    : found.sort(({ row: a }, { row: b }) => compareNames(a.position.name, b.position.name));
}

const hasValue = ({ routes }: Row): boolean => routes.length > 0;

function rowsAt(
  position: string | undefined,
  { id, family }: Characteristic,
  rows: readonly MeasuredRow[],
  { engine: { document } }: EngineReport,
): readonly MeasuredRow[] {
  const { layout } = document;
  const at = position === undefined ? layout.only(family) : findPosition(layout, family, position);
  const found = rows.filter(({ row }) => row.position === at);
  if (found.length > 0) return found;
  if (position === undefined || family.isSingle)
    throw new UsageError(`${id} was not measured at ${position}`, 'leave the position out');
  throw notMeasuredAt(
    position,
    { id, family },
    layout,
    rows.map(({ row }) => row.position.name),
  );
}
