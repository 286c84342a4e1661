import type { EngineReport, StateReport } from '../../checks/judge/report.ts';
import { withUnit } from '../../documents/amount.ts';
import { type NamedCommit, shortCommit } from '../diff/revision.ts';
import type { Links } from './links.ts';
import { privately } from './privately.ts';
import type { Fact, Reader } from './sheet.ts';

/** Where the documents of a sheet come from. */
export interface Origin {
  /** The commit, and its date; undefined for documents as they lie on disk. */
  readonly commit: (NamedCommit & { readonly date: string }) | undefined;
}

/** The head of a sheet: whose engine, which job, as of when, and by what it was judged. */
export function factsOf(
  { engine, rule }: EngineReport,
  { session, run }: StateReport,
  reader: Reader,
  { commit }: Origin,
  withCustomer: boolean,
): readonly Fact[] {
  const { number, customer, serial } = engine.document.job;
  const hours = run.findLast((each) => each.hours !== undefined)?.hours;
  const complaint = run.map(({ note }) => privately(note, reader)).find((note) => note !== undefined);
  const all: readonly (readonly [string, string | undefined])[] = [
    ['shop', engine.shop],
    ['engine no.', serial],
    ['job', number],
    ['customer', withCustomer ? customer : undefined],
    ['hours', hours && withUnit(hours)],
    ['as of', `${session.stage} ${session.date}`],
    ['complaint', complaint],
    ['rule', reader === 'shop' ? RULES[rule] : undefined],
    ['commit', commitText(commit, reader)],
  ];
  return all.flatMap(([name, value]) => (value === undefined || value === '' ? [] : [{ name, value }]));
}

/** The head of a page that is about no engine: whose it is, and as of when. */
export const shopFacts = ({ commit }: Origin, shop: string): readonly Fact[] =>
  [
    ['shop', shop],
    ['commit', commitText(commit, 'customer') ?? ''],
  ].flatMap(([name = '', value = '']) => (value === '' ? [] : [{ name, value }]));

/** Back to where it is one of many. */
export const boardFact = ({ board }: Links): readonly Fact[] =>
  board === undefined ? [] : [{ name: 'board', value: [{ text: 'all engines', to: board }] }];

const RULES = {
  simple: 'simple: compared with the limit as read',
  guarded: 'guarded (ISO 14253-1): decided where 95 % sure',
} as const;

export const NO_COMMIT = 'none: as the documents lie on disk';

const commitText = (commit: Origin['commit'], reader: Reader): string | undefined => {
  if (commit !== undefined) return `${shortCommit(commit)}, ${commit.date}`;
  return reader === 'shop' ? NO_COMMIT : undefined;
};
