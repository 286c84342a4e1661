import { InvalidArgumentError, Option } from 'commander';
import type { Found } from '../../shell/discover/loadEngines.ts';

/** One of several runs that together check a shop: the jobs of a CI system. */
export interface Share {
  readonly number: number;
  readonly of: number;
}

export const shareOption = (): Option =>
  new Option(
    '--share <k/n>',
    'check one of n shares of the engines, such as 2/5; write each as JSON, and tenths gather joins them',
  )
    .argParser(readShare)
    .conflicts(['session', 'staged', 'updateKnown']);

function readShare(word: string): Share {
  const [, number, of] = /^([1-9]\d{0,5})\/([1-9]\d{0,5})$/.exec(word)?.map(Number) ?? [];
  if (number === undefined || of === undefined || number > of)
    throw new InvalidArgumentError('Write K/N, such as 2/5, with K from 1 to N.');
  return { number, of };
}

/** What lies in no engine goes to the first share. */
export const shareOf = (found: Found, { number, of }: Share): Found => ({
  engines: found.engines.filter((_, index) => index % of === number - 1),
  others: number === 1 ? found.others : [],
  unread: number === 1 ? found.unread : [],
});
