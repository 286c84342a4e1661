import { type Fraction, toNumber } from '../../quantity/fraction.ts';
import { type DocumentContext, readAmount, report } from '../amount.ts';
import { type Measure, type Measures, readMeasure } from '../measure.ts';
import { childOf, entriesOf, itemsOf, textAt } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** Several people measured several parts several times with one instrument. */
export interface StudyDocument {
  readonly measure: Measure;
  readonly instrument: string | undefined;
  readonly people: readonly string[];
  readonly parts: readonly string[];
  /** By part, then by person, then by repeat, in the base unit. */
  readonly readings: readonly (readonly (readonly number[])[])[];
  /** One step of the finest digit written, in the base unit. */
  readonly lastDigit: Fraction;
}

export function readStudy(
  root: Node,
  measures: Measures,
  context: DocumentContext,
): StudyDocument | undefined {
  const node = childOf(root, 'study');
  const measure = readMeasure(childOf(node, 'measure'), measures, context);
  const parts = entriesOf(childOf(node, 'parts'));
  const [first] = parts;
  if (node === undefined || measure === undefined || first === undefined) return undefined;
  const people = entriesOf(first.node).map(({ key }) => key);
  const cells = parts.map((part) =>
    people.map((person) =>
      itemsOf(childOf(part.node, person)).flatMap(
        (item) => readAmount(item, measure.quantity, context) ?? [],
      ),
    ),
  );
  for (const part of parts) reportOtherPeople(part, people, context);
  const steps = cells.flat(2).map(({ lastDigit }) => lastDigit);
  const [step] = steps.sort((a, b) => toNumber(a) - toNumber(b));
  if (step === undefined) return undefined;
  return {
    measure,
    instrument: textAt(node, 'with'),
    people,
    parts: parts.map(({ key }) => key),
    readings: cells.map((part) => part.map((repeats) => repeats.map(({ amount }) => toNumber(amount)))),
    lastDigit: step,
  };
}

/** Every part is measured by the same people: a name that only one part has is a slip. */
function reportOtherPeople(
  part: ReturnType<typeof entriesOf>[number],
  people: readonly string[],
  context: DocumentContext,
): void {
  for (const { key, keySpan } of entriesOf(part.node)) {
    if (people.includes(key)) continue;
    report(
      context,
      'value',
      keySpan,
      `${key} measured ${part.key} and not the first part`,
      `the first part has ${people.join(', ')}`,
    );
  }
}
