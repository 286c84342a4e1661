import type { Row } from '../../../checks/judge/row.ts';
import type { Engine } from '../../../documents/assemble.ts';
import { leftOutOf } from '../../../plan/closing/leftOut.ts';

/** `left out: main bearing clearance 3 (bore plugged); crankshaft end play (no dial)`; empty where nothing was. */
export function leftOutText(rows: readonly Row[], { document: { layout } }: Engine): string {
  const texts = leftOutOf(rows, layout).map(({ what, reason }) => `${what} (${reason})`);
  return texts.length === 0 ? '' : `left out: ${texts.join('; ')}`;
}

/** What was left out on purpose is told in one line: a table has what was measured, and what is missing. */
export const withoutLeftOut = <Of extends { readonly rows: readonly Row[] }>(of: Of): Of => ({
  ...of,
  rows: of.rows.filter(({ judgement }) => judgement.verdict !== 'left out'),
});
