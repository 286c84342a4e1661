import type { Engine } from '../../documents/assemble.ts';
import { freeFor } from '../../documents/stock/stock.ts';

/** What of a shelf is offered to an engine: with how many are left, and none that another job has. */
export function onShelf<T extends Parameters<typeof freeFor>[0]>(
  items: readonly T[],
  { document, folder }: Engine,
): readonly (T & { readonly free: number })[] {
  const names = [document.name, folder.slice(folder.lastIndexOf('/') + 1)];
  const job = [...names, ...(document.job.number === undefined ? [] : [document.job.number])];
  return items.map((item) => ({ ...item, free: freeFor(item, job, names) })).filter(({ free }) => free > 0);
}
