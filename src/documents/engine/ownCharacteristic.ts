import type { Place } from '../../diagnostic/place.ts';
import type { ParsedFormula } from '../../formula/tree.ts';
import { AXES } from '../../layout/axis.ts';
import { familyOf } from '../../layout/family.ts';
import { type ByEye, type InstrumentType, MEASURED_WITH } from '../../measurement/instrument.ts';
import { type Fraction, parseDecimal } from '../../quantity/fraction.ts';
import { CYCLES } from '../../quantity/turn.ts';
import { QUANTITIES, type Quantity } from '../../quantity/units.ts';
import { withArticle } from '../../quantity/words.ts';
import { type DocumentContext, report, type UnitsInForce } from '../amount.ts';
import { readFormula } from '../formulaText.ts';
import type { Measure, Outcomes } from '../measure.ts';
import { oneOf } from '../oneOf.ts';
import { childOf, entriesOf, textAt, textsOf } from '../yaml/access.ts';
import type { Entry, Node, Span } from '../yaml/node.ts';

/** A characteristic that a shop adds: read directly, or worked out by a formula of its own. */
export interface OwnCharacteristic extends Measure {
  readonly label: string;
  /** Words for the part that it is of, and for others that it depends on. */
  readonly parts: readonly string[];
  readonly formula: ParsedFormula | undefined;
  /** In which the formula's amounts enter and leave. */
  readonly units: UnitsInForce;
  /** What it is usually measured with. */
  readonly instrument: InstrumentType | ByEye | undefined;
  /** What to call a value that is too great and one that is too small. */
  readonly words: { readonly above: string | undefined; readonly below: string | undefined };
  /** What a person measures just before it. */
  readonly after: string | undefined;
  readonly places: OwnPlaces;
}

/** Where it stands, to report what is found out later. */
interface OwnPlaces {
  readonly id: Place;
  readonly formula: Place;
  readonly after: Place;
}

/** `characteristics:` of a shop or limits document. */
export const readOwnCharacteristics = (root: Node, context: DocumentContext): readonly OwnCharacteristic[] =>
  entriesOf(childOf(root, 'characteristics')).map((entry) => readOwn(entry, context));

function readOwn({ key, keySpan, node }: Entry, context: DocumentContext): OwnCharacteristic {
  const quantity = oneOf(QUANTITIES, childOf(node, 'quantity'), context) ?? 'length';
  reportWordsOfOthers(node, quantity, context);
  return {
    id: key,
    label: textAt(node, 'label') ?? key.replaceAll('_', ' '),
    quantity,
    ...(quantity === 'pass or fail' ? { outcomes: outcomesOf(node) } : {}),
    ...cycleOf(node, quantity, context),
    family: familyOf(oneOf(AXES, childOf(node, 'positions'), context) ?? 'engine'),
    parts: textsOf(childOf(node, 'part')),
    formula: readFormula(childOf(node, 'formula'), context),
    units: context.units,
    instrument: oneOf(MEASURED_WITH, childOf(node, 'instrument'), context),
    words: { above: textAt(node, 'too_great'), below: textAt(node, 'too_small') },
    after: textAt(node, 'after'),
    places: placesOf(node, keySpan, context),
  };
}

function placesOf(node: Node, keySpan: Span, { source }: DocumentContext): OwnPlaces {
  const placeOf = (key: string): Place => source.place((childOf(node, key) ?? { span: keySpan }).span);
  return { id: source.place(keySpan), formula: placeOf('formula'), after: placeOf('after') };
}

const outcomesOf = (node: Node): Outcomes => ({
  pass: textAt(node, 'pass') ?? 'pass',
  fail: textAt(node, 'fail') ?? 'fail',
});

/** Only an angle comes round again; after another number of degrees than the schema has it is read as one that does not. */
function cycleOf(node: Node, quantity: Quantity, context: DocumentContext): { readonly cycle?: Fraction } {
  const [cycle, text] = [childOf(node, 'cycle'), textAt(node, 'cycle')];
  if (cycle === undefined || text === undefined) return {};
  if (quantity === 'angle')
    return CYCLES.some((each) => each === Number(text)) ? { cycle: parseDecimal(text) } : {};
  const message = `cycle: is for angles, and this is ${withArticle(quantity)}`;
  report(context, 'value', cycle.span, message, 'write quantity: angle, or take it out');
  return {};
}

/** Of a test, and of what has a size. */
const TEST_KEYS = ['pass', 'fail'];
const SIZE_KEYS = ['too_great', 'too_small', 'formula'];

function reportWordsOfOthers(node: Node, quantity: string, context: DocumentContext): void {
  const isTest = quantity === 'pass or fail';
  for (const { key, keySpan } of entriesOf(node)) {
    if (!(isTest ? SIZE_KEYS : TEST_KEYS).includes(key)) continue;
    const [message, help] = isTest
      ? [`${key}: is for figures, and this is a test`, 'write pass: and fail: with the words for each']
      : [
          `${key}: is for tests, and this is ${withArticle(quantity)}`,
          'write quantity: pass or fail, or take it out',
        ];
    report(context, 'value', keySpan, message, help);
  }
}
