import type { Engine } from '../../documents/assemble.ts';
import { UsageError } from '../usage.ts';
import type { OpenedEngine } from './resolveShop.ts';

/** An engine of which no session can be judged: there is none, or each has problems that were reported above. */
export const noSession = ({
  engine: { document },
  hasProblems,
}: Pick<OpenedEngine, 'engine' | 'hasProblems'>): UsageError =>
  hasProblems
    ? new UsageError(`${document.name} has no session without problems`, 'correct the documents above first')
    : new UsageError(`${document.name} has no session yet`, 'tenths new session begins one');

/** `it has teardown; sessions/2.yaml could not be read: correct it first`: of an engine without the session that was asked for. */
export function sessionsThere({ sessions, notJudged }: Engine): string {
  const names = sessions.map(({ name }) => name);
  const has =
    names.length > 0 || notJudged.length === 0 ? [`it has ${names.join(', ') || 'no session yet'}`] : [];
  const wrong = notJudged.length > 1 ? 'them' : 'it';
  const unread =
    notJudged.length === 0 ? [] : [`${notJudged.join(', ')} could not be read: correct ${wrong} first`];
  return [...has, ...unread].join('; ');
}
