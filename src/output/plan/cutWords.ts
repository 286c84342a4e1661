import { type Printing, printingOf } from '../../checks/findings/readings.ts';
import type { Row } from '../../checks/judge/row.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { Layout } from '../../layout/layout.ts';
import { shortName } from '../../layout/naming.ts';
import type { Part } from '../../layout/part.ts';
import { type Cut, type CutGroup, hasNoStep } from '../../plan/work/cut.ts';
import type { CutPlace, Term } from '../../plan/work/cutPlace.ts';
import { placesText } from '../../plan/work/placesText.ts';
import { formatAmount, formatDistance, formatNumber } from '../../quantity/format.ts';
import { add, compare, type Fraction, fraction, multiply, ZERO } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';

/** What a cut is to come to, and from what that is worked out. */
export interface CutWords {
  readonly answer: readonly string[];
  /** The size alone, for whoever cuts to it. */
  readonly size: readonly string[];
  readonly workings: readonly string[];
}

export function cutWords(cut: Cut, engine: Engine, unitFor: (row: Row) => Unit): readonly CutWords[] {
  if (cut.groups.length === 0) return unknownWords(cut, engine.document.layout);
  const [none, some] = [true, false].map((isNone) =>
    cut.groups.filter((group) => isNotBored(cut, group) === isNone),
  );
  return [
    ...(none === undefined || none.length === 0
      ? []
      : [{ answer: [NOT_BORED], size: [NOT_BORED], workings: [] }]),
    ...(some ?? []).map((group) => groupWords(cut, group, engine, unitFor)),
  ];
}

/** Taper alone says that it is cut, and not to what. */
function unknownWords({ part, unmeasured }: Cut, layout: Layout): readonly CutWords[] {
  const text = `${part.label} ${placesText(unmeasured, layout)} not measured: measure it before a step is chosen`;
  return unmeasured.length === 0 ? [] : [{ answer: [text], size: [text], workings: [] }];
}

/** A liner that is sold in no larger size: how far it would have to be bored is nothing to anybody. */
const isNotBored = ({ part }: Cut, { deciding: { choice } }: CutGroup): boolean =>
  part.sized?.made === 'over' && hasNoStep(choice);

const NOT_BORED = 'no larger size is left: renewed, and not bored';

function groupWords(cut: Cut, group: CutGroup, engine: Engine, unitFor: (row: Row) => Unit): CutWords {
  const { layout } = engine.document;
  const { deciding } = group;
  const printing = printingOf(deciding.row, unitFor);
  const where =
    cut.groups.length > 1
      ? `${placesText(
          group.places.map(({ position }) => position),
          layout,
        )}: `
      : '';
  const [first = '', ...rest] = answerLines(cut, group, printing, engine);
  return {
    answer: [`${where}${first}`, ...rest, ...notRead(cut, layout)],
    size: [`${where}${first}`, ...rest.filter((each) => each.startsWith(FINISH))],
    workings: workingLines(cut, deciding, printing),
  };
}

/** What is cut with the others and was not measured, or not surely, may need more than they do. */
function notRead({ part, unmeasured, doubted }: Cut, layout: Layout): readonly string[] {
  const missing = unmeasured.filter((each) => !doubted.includes(each));
  const before = part.sized?.made === 'over' ? 'boring' : 'grinding';
  return (
    [
      [missing, ' not measured: it may need more'],
      [doubted, `: its reading is in doubt; measure it again before ${before}`],
    ] as const
  ).flatMap(([at, what]) => (at.length === 0 ? [] : [`${part.label} ${placesText(at, layout)}${what}`]));
}

function answerLines(
  { part, found }: Cut,
  { deciding, places }: CutGroup,
  printing: Printing,
  engine: Engine,
): readonly string[] {
  const { choice, position, from } = deciding;
  const where = `${part.label} ${shortName(position)}`.trim();
  if (choice.kind === 'not provable') {
    const seen = found.map(({ is }) => is).filter(Boolean);
    const what = seen.length === 0 ? 'what was found' : seen.join(', ');
    return [`step not provable: measure how deep ${where} is damaged (${what}) and write it as depth:`];
  }
  const text = (amount: Fraction): string => formatNumber(amount, printing.unit, printing.decimals);
  if (choice.kind === 'beyond the last step') {
    const last = choice.last === undefined ? 'no step is left' : `beyond the last step, ${choice.last.name}`;
    return [`${last}: renew it; ${where} would be clean at ${text(choice.reach)} ${printing.unit.name}`];
  }
  const { step, spare, next, short } = choice;
  const isBored = part.sized?.made === 'over';
  const size = `to ${step.name}: ${text(step.least)} to ${text(step.greatest)} ${printing.unit.name}`;
  const aim = isBored
    ? `; no boring size before the ${namesOfFitted(part, engine)} are in hand and measured`
    : `, aim ${text(step.aim)}`;
  const most = places.length > 1 ? `${where} needs the most: ` : '';
  const clean = `${most}clean at ${text(choice.reach)} or ${isBored ? 'more' : 'less'}`;
  const over = [`${step.name} leaves ${distance(spare, printing)}`];
  if (next !== undefined) over.push(`${next.step.name} leaves ${distance(next.spare, printing)}`);
  if (short !== undefined) over.unshift(`${short.step.name} lacks ${distance(short.spare, printing)}`);
  return [
    `${size}${aim}`,
    ...narrower(choice, isBored, printing),
    `${clean}; ${over.join(', ')}`,
    ...(from === 'assumed' ? [ASSUMED_STEPS] : []),
  ];
}

/** What each bore is finished to: the pistons, the valve guides. */
const namesOfFitted = ({ id }: Part, { parts }: Engine): string =>
  parts.all
    .filter(({ sized }) => sized?.fits === id && sized.inSets !== true)
    .map(({ plural }) => plural)
    .join(', ');

const FINISH = 'finish to ';

/** A step is chosen by its middle: where the far end of its limits would leave marks, the part is finished short of it. */
function narrower(
  { step, reach }: Extract<CutPlace['choice'], { kind: 'step' }>,
  isBored: boolean,
  { unit, decimals }: Printing,
): readonly string[] {
  const isShort = isBored ? compare(step.least, reach) < 0 : compare(step.greatest, reach) > 0;
  const end = `${formatNumber(reach, unit, decimals)} ${unit.name} or ${isBored ? 'more' : 'less'}`;
  return isShort ? [`${FINISH}${end}: the rest of its limits would not clean up`] : [];
}

const ASSUMED_STEPS =
  'the usual steps are assumed: neither limits nor shop.yaml state any; ask what sizes are sold';

const distance = (amount: Fraction, { unit, decimals }: Printing): string =>
  formatDistance(amount, unit, decimals);

/** `2.7465 smallest reading − 0.0001 uncertainty − 0.0002 polish (assumed) = 2.7462 in`. */
function workingLines({ part }: Cut, { terms, choice }: CutPlace, printing: Printing): readonly string[] {
  if (choice.kind === 'not provable') return [];
  const counted = terms.filter(({ amount }) => amount.n !== 0n);
  const sumText = counted.map((term, index) => termText(term, index === 0, printing)).join(' ');
  const total = counted.reduce((sum, { amount, times }) => add(sum, multiply(amount, fraction(times))), ZERO);
  const unmeasured = terms.filter(({ amount, isAssumed }) => amount.n === 0n && isAssumed === true);
  return [
    `${sumText} = ${formatAmount(total, printing.unit, printing.decimals)}`,
    ...unmeasured.map(({ words }) => `${words} not measured and counted as none: have it checked first`),
    ...(part.sized?.made === 'over' ? [OFF_CENTRE] : []),
  ];
}

const OFF_CENTRE = 'the bore is taken as worn to one side alone, and bored about its old centre';

function termText(
  { words, amount, times, isAssumed, isDoubted }: Term,
  isFirst: boolean,
  printing: Printing,
): string {
  const sign = isFirst && times > 0 ? '' : times < 0 ? '− ' : '+ ';
  const count = Math.abs(times) === 1 ? '' : `${Math.abs(times)} × `;
  const size = formatNumber(amount, printing.unit, decimalsThatShow(amount, printing));
  const said =
    isAssumed === true ? ' (assumed)' : isDoubted === true ? ' (as stated: check asks about it)' : '';
  return `${sign}${count}${size} ${words}${said}`;
}

/** An uncertainty of less than the last digit is not printed as nought. */
function decimalsThatShow(amount: Fraction, { unit, decimals }: Printing): number {
  const shown = Number(formatNumber(amount, unit, decimals));
  return shown === 0 ? decimals + 1 : decimals;
}

/** Of what is to be renewed all the same: whether steps would clean it up, and which. */
export function stepsLeft({ groups }: Cut): {
  readonly answer: CutPlace['choice']['kind'];
  readonly steps: readonly string[];
} {
  const choices = groups.map(({ deciding: { choice } }) => choice);
  const kinds = choices.map(({ kind }) => kind);
  if (kinds.includes('beyond the last step')) return { answer: 'beyond the last step', steps: [] };
  const steps = [...new Set(choices.flatMap((choice) => (choice.kind === 'step' ? choice.step.name : [])))];
  return steps.length === 0 || kinds.includes('not provable')
    ? { answer: 'not provable', steps: [] }
    : { answer: 'step', steps };
}

export function stepsLeftText(cut: Cut): string {
  const { answer, steps } = stepsLeft(cut);
  return `${cut.part.plural}: ${answer === 'step' ? `a step is left, ${steps.join(' and ')}` : NO_STEP[answer]}`;
}

const NO_STEP = { 'beyond the last step': 'no step is left', 'not provable': 'no step is proven' };
