import { gaugeAnova } from '../../measurement/gaugeAnova.ts';
import type { Instrument } from '../../measurement/instrument.ts';
import { fraction } from '../../quantity/fraction.ts';
import type { Quantity } from '../../quantity/units.ts';
import { type DocumentContext, report } from '../amount.ts';
import type { Measures } from '../measure.ts';
import type { OpenedDocument } from '../opened.ts';
import { readStudy, type StudyDocument } from '../session/study.ts';
import { stemOf } from '../stem.ts';
import { childOf, entriesOf, textAt, textOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** A document that a register names as the study of an instrument, and the documents that say its units. */
export interface NamedStudy {
  readonly document: OpenedDocument;
  /** The engine in whose folder it lies, then the shops at and above it, the nearest first. */
  readonly around: readonly OpenedDocument[];
}

/** Gives the study at a path that stands in a register; its context keeps the problems of the study to itself. */
export type StudyAt = (
  written: string,
  register: DocumentContext,
) => { readonly document: OpenedDocument; readonly context: DocumentContext } | undefined;

/** The paths of the studies that a register names, as they are written: they stand from its folder. */
export const studiesNamed = (register: Node | undefined): readonly string[] =>
  entriesOf(childOf(register, 'instruments')).flatMap(({ node }) => {
    const path = textAt(childOf(node, 'repeatability'), 'study');
    return path === undefined ? [] : [path];
  });

export interface StudiedInstrument {
  readonly id: string;
  readonly quantity: Quantity;
}

/** The repeatability that a study found: the deviation of repeats (EV) by analysis of variance. Else reports why not. */
export function repeatabilityByStudy(
  node: Node,
  of: StudiedInstrument,
  studyAt: StudyAt,
  measures: Measures,
  register: DocumentContext,
): Pick<Instrument, 'repeatability' | 'study'> {
  const path = textOf(node) ?? '';
  const refuse = (message: string): Record<string, never> => {
    report(
      register,
      'value',
      node.span,
      message,
      'name a session that holds `study: { measure, with, parts }`',
    );
    return {};
  };
  const found = studyAt(path, register);
  if (found === undefined) return refuse(`there is no study ${path}`);
  const study = studyIn(found.document, found.context, measures);
  if (typeof study === 'string') return refuse(`${path} ${study}`);
  const { instrument, measure } = study;
  if (instrument !== undefined && instrument !== of.id) return refuse(`${path} is a study of ${instrument}`);
  if (measure.quantity !== of.quantity) return refuse(`${path} is a study of ${measure.quantity}`);
  const result = gaugeAnova(study.readings);
  if (result.kind === 'no study') return refuse(`${path} shows no repeatability: ${result.reason}`);
  const { dof } = result.table.pooled ?? result.table.repeatability;
  return {
    repeatability: inBaseUnit(result.repeatability.deviation),
    study: { name: stemOf(path), dof },
  };
}

/** What is wrong with it, in words that follow its path. */
function studyIn(
  document: OpenedDocument,
  context: DocumentContext,
  measures: Measures,
): StudyDocument | string {
  const [problem] = document.problems;
  if (document.root === undefined || problem !== undefined)
    return `cannot be used: ${problem?.message ?? 'it is empty'}`;
  if (document.kind !== 'session') return 'is not a session';
  if (childOf(document.root, 'study') === undefined) return 'holds no study';
  const study = readStudy(document.root, measures, context);
  const [within] = context.problems;
  return within !== undefined || study === undefined
    ? `cannot be used: ${within?.message ?? 'its study is not complete'}`
    : study;
}

/** A deviation is a rounded figure: a thousandth of the base unit is finer than any. */
const inBaseUnit = (deviation: number): NonNullable<Instrument['repeatability']> =>
  fraction(BigInt(Math.round(deviation * PARTS)), BigInt(PARTS));

const PARTS = 1e6;
