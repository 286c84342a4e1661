import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { SessionView } from '../judge/row.ts';

const UNSTATED: FindingKind = {
  code: 'source/unstated',
  severity: 'warning',
  means: 'Limits or a tightening sequence do not say where their figures come from.',
  matters: 'Nobody can check a figure whose source is not named, and a verdict is only as good as its limit.',
  usually: "Write the manual, its page and its year as `source:`. A shop's own figure names who set it.",
  example: 'limits.yaml does not say where its figures come from',
};

export const unstatedSourceKinds: readonly FindingKind[] = [UNSTATED];

/** Said with the latest session: it is about the engine's documents, and no session's own. */
export function unstatedSourceFindings({ engine, session }: SessionView): readonly Finding[] {
  if (session !== engine.sessions.at(-1)) return [];
  const judgedBy = [...engine.limits.filter(({ limits }) => limits.size > 0), ...engine.sequences];
  return judgedBy.flatMap(({ path, unstatedSource }) =>
    unstatedSource === undefined
      ? []
      : [finding(UNSTATED, unstatedSource, `${path} does not say where its figures come from`)],
  );
}
