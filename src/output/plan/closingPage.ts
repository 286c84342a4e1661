import type { Row } from '../../checks/judge/row.ts';
import { unitOfRow } from '../../checks/judge/session.ts';
import { isAcceptable } from '../../checks/open/acceptedWarnings.ts';
import { openFollowUpText } from '../../checks/open/followUps.ts';
import { foundText } from '../../checks/open/found.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Box } from '../../plan/closing/boxes.ts';
import { type Closing, mayClose, openCount } from '../../plan/closing/closing.ts';
import { labelsOf, notTakenText } from '../../plan/closing/openTexts.ts';
import { outText } from '../../plan/closing/outText.ts';
import type { Unit } from '../../quantity/units.ts';
import { byMeasure } from '../check/byMeasure.ts';
import { figuresText, outTexts } from './jobWords.ts';
import type { Page, Section } from './page.ts';

/** What is open before an engine is closed up, and the boxes to tick. */
export function closingPage(closing: Closing, engine: Engine, about: readonly string[]): Page {
  const title = `${engine.document.name}: before it is closed up`;
  const errors = lines('documents with errors', closing.broken.map(notTakenText));
  if (engine.notJudged.length > 0)
    return { title, about, answer: [NOT_JUDGED], sections: errors, cautions: CAUTIONS };
  const unitFor = (row: Pick<Row, 'characteristic'>): Unit => unitOfRow(row, engine);
  const {
    rows,
    unproven,
    undecided,
    conceded,
    accepted,
    unmeasured,
    again,
    findings,
    found,
    followUps,
    untightened,
    boxes,
  } = closing;
  return {
    title,
    about,
    answer: [
      mayClose(closing)
        ? 'READY TO CLOSE UP: nothing that our documents state is open'
        : `NOT TO BE CLOSED UP: ${openCount(closing)} open`,
      ...unstatedLine(closing),
    ],
    sections: [
      ...errors,
      ...lines('out, undecided or not measured', rowTexts(rows, engine, unitFor)),
      ...lines(
        'known by the figures of others alone: measure them here',
        unproven.map((row) => `${outText(row, unitFor)} (${row.routes[0]?.route.with.join(', ') ?? ''})`),
      ),
      ...lines(
        'used again though worn: say who decided (found: { on: …, is: …, do: reuse, by: … })',
        undecided.map((row) => rowText(row, unitFor)),
      ),
      ...lines('with limits, and not measured', unmeasured.length === 0 ? [] : [labelsOf(unmeasured)]),
      ...lines('to be measured again', again),
      ...lines(
        findings.some(isAcceptable)
          ? 'said by the check (what stays as it is: accepted: [{ warning: …, of: …, by: …, reason: … }] in a session)'
          : 'said by the check',
        findings.map((each) => (isAcceptable(each) ? `${each.message} (${each.code})` : each.message)),
      ),
      ...lines('found and not dealt with', found.map(foundText)),
      ...lines(
        'not tightened, by any session since the engine was opened',
        untightened.map(({ joint, name }) => `${joint.sequence.joint} (${name})`),
      ),
      ...lines(
        'accepted by a concession: does not stop closing up',
        conceded.map((row) => rowText(row, unitFor)),
      ),
      ...lines(
        'warnings that were accepted: do not stop closing up',
        accepted.map(({ message }) => message),
      ),
      ...lines(
        'promised with a concession, for later',
        followUps.map((each) => openFollowUpText(each, unitFor)),
      ),
      { title: 'tick by hand', boxes: boxes.filter(({ by }) => by === undefined).map(boxText) },
      ...lines(
        'confirmed',
        boxes.flatMap(({ what, by }) => (by === undefined ? [] : [`${what}: ${by}`])),
      ),
    ],
    cautions: CAUTIONS,
  };
}

/** What is open without a session is of an older state: whoever reads it would do work that is done. */
const NOT_JUDGED =
  'NOT TO BE CLOSED UP: not judged, since a session has errors. Mend it first; without it the engine is as it was before, and what was open then is not listed here';

/** What nothing states cannot be open, and is said beside the answer. */
const unstatedLine = ({ unstated }: Closing): readonly string[] =>
  unstated.length === 0
    ? []
    : [
        `No torque document says how these are tightened: ${unstated.join(', ')}. Tick them by the maker's manual.`,
      ];

/** Those that are out with their numbers, of many the worst; of the others their places. */
function rowTexts(rows: readonly Row[], engine: Engine, unitFor: (row: Row) => Unit): readonly string[] {
  const of = (verdict: Row['judgement']['verdict']): readonly Row[] =>
    rows.filter(({ judgement }) => judgement.verdict === verdict);
  return [
    ...byMeasure(of('out')).flatMap((group) =>
      outTexts(group, engine, unitFor).map((text) => `${text}: out`),
    ),
    ...of('undecided').map((row) => rowText(row, unitFor)),
    ...[figuresText(of('missing'), engine)].filter(Boolean).map((text) => `${text}: missing`),
  ];
}

const rowText = (row: Row, unitFor: (row: Row) => Unit): string =>
  `${outText(row, unitFor)}: ${row.judgement.verdict}`;

const boxText = ({ what, isRequired }: Box): string =>
  isRequired ? `${what} (required: confirmed: in a session settles it)` : what;

const lines = (title: string, texts: readonly string[]): readonly Section[] =>
  texts.length === 0 ? [] : [{ title, lines: texts }];

const CAUTIONS: readonly string[] = [
  "The maker's manual comes first. Prime the oil system and bring up oil pressure before the first start.",
  'Keep clear of what turns, and of the plane of fan and flywheel; know how to stop the engine before it starts.',
  'A diesel that runs away burns its own oil: only shut-off air stops it. Have a plate for the intake at hand, never a hand.',
];
