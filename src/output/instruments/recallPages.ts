import type { Evidence, SuspectDays } from '../../compare/instruments/evidence.ts';
import type { RecalledEngine } from '../../compare/instruments/recall.ts';
import type { InstrumentType } from '../../measurement/instrument.ts';
import { formatNumber, withUnitName } from '../../quantity/format.ts';
import { absolute, type Fraction, negate } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { plural } from '../../quantity/words.ts';
import { CAUTION } from '../check/runText.ts';
import type { Page } from '../plan/page.ts';
import { changedSections, standingOf } from './changedVerdicts.ts';
import { offText } from './evidenceText.ts';
import { listSections, quietSections, tightenedSection } from './recalledReadings.ts';

/** What is reported of a recall. */
export interface ToldRecall {
  readonly instrument: string;
  /** The files that register one of that name. */
  readonly registers: readonly string[];
  /** By its certificates: what it was off by besides is asked about. */
  readonly isPutRight: boolean;
  /** Undefined of one that is not registered. */
  readonly type: InstrumentType | undefined;
  readonly days: SuspectDays;
  /** Shown minus true; undefined where nothing is judged again. */
  readonly error: Fraction | undefined;
  /** In which the error is printed. */
  readonly unit: Unit | undefined;
  readonly recalled: readonly RecalledEngine[];
}

/** One page, or one for each customer, who sees nothing of another's engines. */
export function recallPages(reported: ToldRecall, reader: 'the shop' | 'each customer'): readonly Page[] {
  if (reader === 'the shop' || reported.recalled.length === 0) return [pageOf(reported, undefined)];
  const customers = [...new Set(reported.recalled.map(customerOf))];
  return customers.map((customer) =>
    pageOf(
      { ...reported, recalled: reported.recalled.filter((each) => customerOf(each) === customer) },
      customer,
    ),
  );
}

const NO_CUSTOMER = 'engines without a customer';

const customerOf = ({ engine }: RecalledEngine): string => engine.document.job.customer ?? NO_CUSTOMER;

function pageOf(reported: ToldRecall, customer: string | undefined): Page {
  const { instrument, type, recalled, error } = reported;
  const named = type === undefined ? `${instrument}, not in the register` : `${instrument}, a ${type}`;
  return {
    title: `Recall of ${named}${customer === undefined ? '' : `: ${customer}`}`,
    about: aboutDays(reported),
    answer: answer(reported),
    sections: [
      ...(error === undefined ? listSections(recalled) : changedSections(recalled)),
      ...(error === undefined ? [] : quietSections(recalled)),
      ...tightenedSection(recalled),
    ],
    cautions: cautions(reported),
  };
}

function aboutDays({ days, error, unit, registers, isPutRight }: ToldRecall): readonly string[] {
  const { from, lastGood, foundOff, goodAgain } = days;
  const since =
    from === undefined
      ? 'all its readings: no document says that it was ever good'
      : from === lastGood?.day
        ? `its readings since ${from}, ${goodWords(lastGood)}`
        : `its readings since ${from}, as asked for`;
  return [
    ...(registers.length > 1
      ? [`${registers.join(' and ')} register one of that name each: all of them count here`]
      : []),
    goodAgain === undefined ? since : `${since}, until ${goodAgain.day}, ${goodWords(goodAgain)}`,
    ...(foundOff === undefined ? [] : [`found off by ${offText(foundOff)} on ${foundOff.day}`]),
    ...(error === undefined ? [] : [errorText(error, unit)]),
    ...(error === undefined || !isPutRight
      ? []
      : ['its certificates put its readings right already: this is what it was off by besides']),
  ];
}

const goodWords = ({ by }: Evidence): string =>
  by === 'check' ? 'when a check found it good' : 'the day of its certificate';

function errorText(error: Fraction, unit: Unit | undefined): string {
  if (error.n === 0n || unit === undefined) return 'judged again with an error of 0';
  const digits = formatNumber(absolute(error), unit, MOST_DECIMALS).replace(/\.?0+$/, '');
  const size = withUnitName(digits, unit);
  const [way, sign] = negate(error).n < 0n ? ['more', '−'] : ['less', '+'];
  return `it showed ${size} ${way} than there was: each of its readings is put right by ${sign}${size}`;
}

/** A tenth of a nanometre has nine in inches. */
const MOST_DECIMALS = 9;

function answer({ recalled, error }: ToldRecall): readonly string[] {
  const blocks = recalled.flatMap(({ taken }) => taken);
  const places = blocks.reduce((sum, { positions }) => sum + positions.length, 0);
  const used = `It was used at ${plural(places, 'place')} of ${plural(recalled.length, 'engine')}.`;
  if (error === undefined)
    return [used, ...(places === 0 ? [] : ['Give its error with --error to judge them again.'])];
  const count = (of: 'here' | 'delivered' | 'earlier'): number =>
    recalled.flatMap((each) => each.changed.filter((one) => standingOf(one, each) === of)).length;
  const total = recalled.flatMap(({ changed }) => changed).length;
  const where = [
    [count('here'), 'still here, to be measured again'],
    [count('delivered'), 'of engines that were delivered'],
    [count('earlier'), 'of earlier runs'],
  ].flatMap(([some, words]) => (some === 0 ? [] : [`${some} ${words}`]));
  return [
    used,
    total === 0
      ? 'No verdict changes.'
      : `${plural(total, 'verdict')} change${total === 1 ? 's' : ''}: ${where.join(', ')}.`,
  ];
}

function cautions({ recalled, error }: ToldRecall): readonly string[] {
  const hasLeft = recalled.some(({ isDelivered, changed }) => isDelivered && changed.length > 0);
  return [
    ...(hasLeft
      ? ['Tell the owner of each delivered engine before it runs on: what is out may fail without notice.']
      : []),
    ...(error === undefined ? [] : [CAUTION]),
  ];
}
