import type { Page } from '../page.ts';

/** A page for people, and what programs have of it. */
export interface ShownPage {
  readonly page: Page;
  readonly exit: number;
  readonly data: (exit: number) => unknown;
  /** Of a spreadsheet. Throws where the page is none. */
  readonly rows: () => readonly (readonly (string | number)[])[];
}
