import type { Row } from '../../checks/judge/row.ts';

/** Out or broken, worn, or off what the builder aims for. */
export const URGENCIES = ['must', 'should', 'may'] as const;

export type Urgency = (typeof URGENCIES)[number];

export const urgencyOf = (rows: readonly Row[]): Urgency => {
  const has = (verdict: Row['judgement']['verdict']): boolean =>
    rows.some(({ judgement }) => judgement.verdict === verdict);
  return has('out') ? 'must' : has('worn') || has('undecided') || has('missing') ? 'should' : 'may';
};

export const mostUrgent = (all: readonly { readonly urgency: Urgency }[]): Urgency =>
  URGENCIES.find((each) => all.some(({ urgency }) => urgency === each)) ?? 'may';
