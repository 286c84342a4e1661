import { compareText, type Place } from '../../diagnostic/place.ts';
import { type Amount, type DocumentContext, moved, readAmount } from '../amount.ts';
import { readDate } from '../date.ts';
import type { SizeStatement } from '../grades/statements.ts';
import { type HandedOver, readHandedOver } from '../planning/handedOver.ts';
import { stemOf } from '../stem.ts';
import { type KnownSequences, readTightened, type TighteningLog } from '../tightening/tightened.ts';
import type { Named } from '../yaml/access.ts';
import { childOf, itemsOf, namesAt, textAt } from '../yaml/access.ts';
import type { Node, Span } from '../yaml/node.ts';
import { type AcceptedWarning, readAcceptedWarnings } from './acceptedWarnings.ts';
import { type InstrumentCheck, readCheck } from './checked.ts';
import { type Concession, readConcessions } from './concessions.ts';
import { type ImportedRows, readImported } from './imported.ts';
import { type Observation, readObservations } from './observations.ts';
import { type PartChange, readPartChanges } from './partChanges.ts';
import { type BlockContext, readBlock, readConditions } from './readBlock.ts';
import type { ReadingBlock, WorkDone } from './reading.ts';
import { STAGES, type Stage } from './stage.ts';
import { readStudy, type StudyDocument } from './study.ts';
import { readWork } from './workDone.ts';

export interface SessionDocument {
  /** The file's name without its ending. */
  readonly name: string;
  readonly path: string;
  readonly stage: Stage;
  readonly date: string;
  readonly by: string | undefined;
  readonly note: string | undefined;
  /** Of the engine: a meter that was replaced goes on from where the old one stopped. */
  readonly hours: Amount | undefined;
  /** What the old meter had counted when the present one began at nothing. */
  readonly hoursFrom: Amount | undefined;
  readonly temperature: Amount | undefined;
  readonly blocks: readonly ReadingBlock[];
  readonly work: readonly WorkDone[];
  /** Earlier sessions whose readings stand in for what this one has not measured itself, by file name. */
  readonly uses: readonly Named[];
  /** Parts replaced, machined or fitted: they start new lines of a trend. */
  readonly partChanges: readonly PartChange[];
  /** What was seen and has no number, by part. */
  readonly observations: readonly Observation[];
  readonly concessions: readonly Concession[];
  readonly accepted: readonly AcceptedWarning[];
  /** What was agreed to, sent away and confirmed. */
  readonly handedOver: HandedOver;
  readonly study: StudyDocument | undefined;
  readonly checked: readonly InstrumentCheck[];
  /** The sizes that parts were made to, as the session says: they hold from there on. */
  readonly sizes: readonly SizeStatement[];
  readonly tightened: readonly TighteningLog[];
  /** Rows of spreadsheets that its readings came from, so that none comes in twice. */
  readonly imported: readonly ImportedRows[];
  readonly placeOf: (span: Span) => Place;
  /** Where to point for what the session does not hold. */
  readonly start: Place;
}

export interface SessionContext extends BlockContext {
  readonly sequences: KnownSequences;
}

/** By date; sessions of one day by their paths. */
export const compareSessions = (a: SessionDocument, b: SessionDocument): number =>
  compareText(a.date, b.date) || compareText(a.path, b.path);

export function readSession(root: Node, around: SessionContext, context: DocumentContext): SessionDocument {
  const items = itemsOf(childOf(root, 'readings'));
  const conditions = readConditions(root);
  const known = { parts: around.measures.parts, layout: around.layout };
  const partChanges = readPartChanges(root, known, context);
  return {
    name: stemOf(context.source.path),
    path: context.source.path,
    stage: STAGES.find((stage) => stage === textAt(root, 'stage')) ?? 'service',
    date: readDate(childOf(root, 'date'), context) ?? '',
    by: textAt(root, 'by'),
    note: textAt(root, 'note'),
    hours: readAmount(childOf(root, 'hours'), 'time', context),
    hoursFrom: readAmount(childOf(root, 'hours_from'), 'time', context),
    temperature: readAmount(childOf(root, 'temperature'), 'temperature', context),
    blocks: items.flatMap((item, index) => readBlock(item, index, conditions, around, context) ?? []),
    study: readStudy(root, around.measures, context),
    concessions: readConcessions(root, around, context),
    accepted: readAcceptedWarnings(root, context.source.place),
    handedOver: readHandedOver(root, known, context),
    uses: namesAt(root, 'uses'),
    partChanges,
    observations: readObservations(root, known, context),
    tightened: readTightened(root, around.sequences, context),
    work: items.flatMap((item, index) => readWork(item, index, known, context)),
    checked: itemsOf(childOf(root, 'checked')).flatMap((item) => readCheck(item, context) ?? []),
    sizes: partChanges.flatMap(({ sizes }) => sizes),
    imported: readImported(root),
    placeOf: context.source.place,
    start: context.source.place(startOf(root)),
  };
}

/** Hours since the engine was new, of sessions by date: each counts on from what the meters before had. */
export function countedOn(sessions: readonly SessionDocument[]): readonly SessionDocument[] {
  let before: Amount | undefined;
  return sessions.map((session) => {
    before = session.hoursFrom ?? before;
    const { hours } = session;
    return hours === undefined || before === undefined
      ? session
      : { ...session, hours: moved(hours, before.amount) };
  });
}

const startOf = (root: Node): Span => {
  const { start } = (childOf(root, 'date') ?? root).span;
  return { start, end: start };
};
