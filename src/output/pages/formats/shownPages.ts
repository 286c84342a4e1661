import type { Page } from '../../plan/page.ts';

/** Pages about more than one engine. */
export interface ShownPages {
  readonly name: string;
  /** What is handed over is for each customer by himself. */
  readonly pagesFor: (reader: 'the shop' | 'each customer') => readonly Page[];
  readonly exit: 0 | 2;
}
