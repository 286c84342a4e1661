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
