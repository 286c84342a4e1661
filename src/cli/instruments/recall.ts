import { evidenceOf, suspectDays } from '../../compare/instruments/evidence.ts';
import { recallOf, worstEngineFirst } from '../../compare/instruments/recall.ts';
import type { Suspicion } from '../../compare/instruments/taken.ts';
import type { Judgeable } from '../../compare/state.ts';
import { nearest } from '../../diagnostic/suggestion.ts';
import type { RegisteredInstrument } from '../../documents/engine/instruments.ts';
import { recallPages } from '../../output/instruments/recallPages.ts';
import { PAGES_FORMATS } from '../../output/pages/formats/index.ts';
import type { ShownPages } from '../../output/pages/formats/shownPages.ts';
import { compare, negate } from '../../quantity/fraction.ts';
import { findUnit, type Quantity, type Unit } from '../../quantity/units.ts';
import type { World } from '../../shell/world.ts';
import { amountOption } from '../amountOption.ts';
import type { FormatChoice } from '../format/formatChoice.ts';
import { printFormats } from '../format/printFormats.ts';
import { withBench } from '../parts/shelf.ts';
import { openShop } from '../shop/everyEngine.ts';
import { UsageError } from '../usage.ts';
import { dayOption } from './dayOption.ts';

export interface RecallOptions {
  readonly from?: string | undefined;
  readonly error?: string | undefined;
  readonly range?: string | undefined;
  readonly at?: string | undefined;
  readonly format: readonly FormatChoice[];
}

/** Prints what an instrument was used for while it may have been off, and which verdicts that changes; the exit code. */
export async function recall(name: string, options: RecallOptions, world: World): Promise<number> {
  const { all: engines, hasProblems } = withBench(openShop(options.at, world), world);
  const registered = registeredAs(name, engines);
  const { quantity, plain } = measuredBy(registered, engines);
  const days = suspectDays(evidenceOf(name, engines), dayOption('--from', options.from));
  const suspicion: Suspicion = {
    instrument: name,
    has: days.has,
    range: rangeOption(options.range, quantity, plain),
  };
  const error = signedOption(options.error, quantity, plain);
  const recalled = engines.flatMap((each) => recallOf(each, suspicion, error) ?? []).sort(worstEngineFirst);
  const exit = hasProblems ? 2 : 0;
  const unit = unitIn(options.error, quantity) ?? plain;
  const registers = [
    ...new Set(engines.flatMap(({ engine }) => engine.instruments.get(name)?.place.path ?? [])),
  ];
  const reported = {
    instrument: name,
    registers,
    type: registered?.type,
    isPutRight: registered?.isPutRight === true,
    days,
    error,
    unit,
    recalled,
  };
  const shown: ShownPages = { name: 'recall', pagesFor: (reader) => recallPages(reported, reader), exit };
  await printFormats(PAGES_FORMATS, options.format, shown, world);
  return exit;
}

/** As registered; an instrument that only sessions name is known as well. */
function registeredAs(name: string, engines: readonly Judgeable[]): RegisteredInstrument | undefined {
  const found = engines.flatMap(({ engine }) => engine.instruments.get(name) ?? [])[0];
  if (found !== undefined) return found;
  const used = engines.flatMap(({ engine }) =>
    engine.sessions.flatMap(({ blocks }) =>
      blocks.flatMap(({ instrument, setWith }) => [instrument, setWith].flatMap((each) => each?.name ?? [])),
    ),
  );
  if (used.includes(name)) return undefined;
  const known = [...new Set([...engines.flatMap(({ engine }) => [...engine.instruments.keys()]), ...used])];
  const meant = nearest(name, known);
  throw new UsageError(
    `unknown instrument ${name}`,
    meant === undefined ? 'tenths instruments lists them' : `did you mean ${meant}?`,
  );
}

/** What it measures, and in which unit. */
function measuredBy(
  registered: RegisteredInstrument | undefined,
  engines: readonly Judgeable[],
): { readonly quantity: Quantity; readonly plain: Unit | undefined } {
  const quantity = registered?.quantity ?? 'length';
  return { quantity, plain: registered?.unit ?? engines[0]?.engine.units.get(quantity) };
}

function signedOption(text: string | undefined, quantity: Quantity, plain: Unit | undefined) {
  const [, sign, size] = /^([-+\u2212]?)(.*)$/.exec(text?.trim() ?? '') ?? [];
  const amount = amountOption(
    '--error',
    text === undefined ? undefined : size,
    quantity,
    plain,
    exampleOf(quantity),
  );
  return amount === undefined || sign === '' || sign === '+' ? amount : negate(amount);
}

const exampleOf = (quantity: Quantity): string | undefined =>
  quantity === 'length' ? '0.0003in' : undefined;

/** An error is reported in the unit in which it was typed. */
const unitIn = (text: string | undefined, quantity: Quantity): Unit | undefined =>
  findUnit(/[a-z].*$/i.exec(text ?? '')?.[0] ?? '', quantity);

function rangeOption(text: string | undefined, quantity: Quantity, plain: Unit | undefined) {
  if (text === undefined) return undefined;
  const [first, last, ...more] = text.split('..');
  const [from, to] = [first, last].map((each) => amountOption('--range', each, quantity, plain));
  if (from === undefined || to === undefined || more.length > 0)
    throw new UsageError(`--range ${text} needs two sizes`, 'write FROM..TO, such as 3.2in..3.4in');
  if (compare(from, to) > 0)
    throw new UsageError(`--range ${text} ends below where it begins`, `write ${last}..${first}`);
  return { from, to };
}
