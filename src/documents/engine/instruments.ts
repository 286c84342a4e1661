import type { Place } from '../../diagnostic/place.ts';
import type { Certificate } from '../../measurement/calibration/certificate.ts';
import {
  INSTRUMENT_TYPES,
  type Instrument,
  type InstrumentType,
  type MaxError,
} from '../../measurement/instrument.ts';
import { compare, divide, type Fraction, fraction, parseDecimal } from '../../quantity/fraction.ts';
import { findUnit, type Quantity, type Unit } from '../../quantity/units.ts';
import { type DocumentContext, readAmount, report } from '../amount.ts';
import { readDate } from '../date.ts';
import type { Measures } from '../measure.ts';
import { childOf, entriesOf, flagAt, itemsOf, textAt, textOf } from '../yaml/access.ts';
import type { Entry, Node } from '../yaml/node.ts';
import { readCertificates, readUncertainty } from './certificates.ts';
import { repeatabilityByStudy, type StudyAt } from './registerStudies.ts';

export interface RegisteredInstrument extends Instrument {
  /** What it measures. */
  readonly quantity: Quantity;
  /** In which its figures are written; undefined where it has none. */
  readonly unit: Unit | undefined;
  /** By date. */
  readonly certificates: readonly Certificate[];
  /** Its readings are put right by what its certificates say. */
  readonly isPutRight: boolean;
  readonly place: Place;
}

export const readInstruments = (
  root: Node,
  measures: Measures,
  studyAt: StudyAt,
  context: DocumentContext,
): ReadonlyMap<string, RegisteredInstrument> =>
  new Map(
    entriesOf(childOf(root, 'instruments')).map(
      (entry) => [entry.key, readInstrument(entry, measures, studyAt, context)] as const,
    ),
  );

function readInstrument(
  { key, keySpan, node }: Entry,
  measures: Measures,
  studyAt: StudyAt,
  context: DocumentContext,
): RegisteredInstrument {
  const type = INSTRUMENT_TYPES.find((each) => each === textAt(node, 'type')) ?? 'other';
  const quantity = quantityOf(type, node);
  const amountAt = (parent: Node | undefined, name: string): Fraction | undefined =>
    readAmount(childOf(parent, name), quantity, context)?.amount;
  const range = childOf(node, 'range');
  const study = childOf(childOf(node, 'repeatability'), 'study');
  const certificates = readCertificates(node, quantity, context);
  const latest = certificates.at(-1);
  const stated = ['calibrated', 'due'].map((name) => readDate(childOf(node, name), context));
  reportDueBefore(stated[0], stated[1], childOf(node, 'due'), context);
  reportTwice(node, certificates, context);
  const [calibrated, due] = latest === undefined ? stated : [latest.date, latest.due];
  const isPutRight = flagAt(node, 'correct_readings');
  if (isPutRight) reportUnproven(node, certificates, context);
  return {
    id: key,
    type,
    quantity,
    unit: readAmount(childOf(node, 'resolution') ?? childOf(range, 'from'), quantity, context)?.unit,
    assumed: false,
    place: context.source.place(keySpan),
    ...optional('range', rangeOf(amountAt(range, 'from'), amountAt(range, 'to'))),
    ...optional('resolution', amountAt(node, 'resolution')),
    ...optional('maxError', readMaxError(childOf(node, 'max_error'), quantity, context)),
    ...(study === undefined
      ? optional('repeatability', amountAt(node, 'repeatability'))
      : repeatabilityByStudy(study, { id: key, quantity }, studyAt, measures, context)),
    certificates,
    isPutRight,
    ...optional('calibration', readUncertainty(childOf(node, 'calibration'), quantity, context)),
    ...optional('marks', readMarks(childOf(node, 'marks'), quantity, context)),
    ...optional('calibrated', calibrated),
    ...optional('due', due),
    ...optional('material', textAt(node, 'material')),
  };
}

/** The two days exchanged, or the year of one of them mistyped. */
function reportDueBefore(
  calibrated: string | undefined,
  due: string | undefined,
  node: Node | undefined,
  context: DocumentContext,
): void {
  if (calibrated === undefined || due === undefined || node === undefined || due >= calibrated) return;
  const message = `it is due on ${due}, before it was calibrated on ${calibrated}`;
  report(context, 'value', node.span, message, 'look at the certificate: the two may be exchanged');
}

/** What a certificate says of the day is not said beside it. */
function reportTwice(node: Node, certificates: readonly Certificate[], context: DocumentContext): void {
  const [stated] = ['calibrated', 'due'].flatMap((name) => childOf(node, name) ?? []);
  if (certificates.length === 0 || stated === undefined) return;
  const help = 'leave it to the certificates: of a session the one in force on its day counts';
  report(context, 'value', stated.span, 'the days stand in the certificates', help);
}

/** A correction whose own uncertainty nobody knows would make a reading look better than it is. */
function reportUnproven(node: Node, certificates: readonly Certificate[], context: DocumentContext): void {
  const isProven = certificates.some(({ points, uncertainty }) => points.length > 0 && uncertainty);
  if (isProven) return;
  const span = childOf(node, 'correct_readings')?.span ?? node.span;
  const help = 'give a certificate its `errors:` and `uncertainty:`, or leave correct_readings out';
  report(context, 'value', span, 'no certificate says by how much, and how surely', help);
}

const optional = <K extends string, V>(key: K, value: V | undefined): Partial<Record<K, V>> =>
  value === undefined ? {} : ({ [key]: value } as Record<K, V>);

const rangeOf = (
  from: Fraction | undefined,
  to: Fraction | undefined,
): { from: Fraction; to: Fraction } | undefined =>
  from === undefined || to === undefined ? undefined : { from, to };

const QUANTITY_OF_TYPE: Partial<Record<InstrumentType, Quantity>> = {
  'torque wrench': 'torque',
  'spring scale': 'force',
  'pressure gauge': 'pressure',
  thermometer: 'temperature',
  balance: 'mass',
  protractor: 'angle',
  burette: 'volume',
  'roughness tester': 'roughness',
  'hardness tester': 'number',
};

/** By its type; an instrument of another type measures what its figures are written in, else lengths. */
function quantityOf(type: InstrumentType, node: Node): Quantity {
  const byType = QUANTITY_OF_TYPE[type];
  if (byType !== undefined || type !== 'other') return byType ?? 'length';
  const unit = /^[-+.\d]+ ?(.+)$/.exec(textAt(node, 'max_error') ?? textAt(node, 'resolution') ?? '')?.[1];
  return (unit === undefined ? undefined : findUnit(unit)?.quantity) ?? 'length';
}

/** An amount, or a percentage of the reading such as `4 %`. */
function readMaxError(
  node: Node | undefined,
  quantity: Quantity,
  context: DocumentContext,
): MaxError | undefined {
  const percent = /^(\d+(?:\.\d+)?) ?%$/.exec(textOf(node) ?? '')?.[1];
  if (percent !== undefined) return { share: divide(parseDecimal(percent), fraction(100)) };
  const amount = readAmount(node, quantity, context)?.amount;
  return amount === undefined ? undefined : { amount };
}

function readMarks(
  node: Node | undefined,
  quantity: Quantity,
  context: DocumentContext,
): readonly Fraction[] | undefined {
  if (node === undefined) return undefined;
  const marks = itemsOf(node).flatMap((item) => readAmount(item, quantity, context)?.amount ?? []);
  const falling = marks.findIndex((mark, index) => {
    const before = marks[index - 1];
    return before !== undefined && compare(before, mark) >= 0;
  });
  if (falling > 0) {
    report(
      context,
      'value',
      itemsOf(node)[falling]?.span ?? node.span,
      'the marks of a strip rise from one to the next',
    );
  }
  return marks;
}
