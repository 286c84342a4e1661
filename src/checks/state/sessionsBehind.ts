import type { SessionDocument } from '../../documents/session/session.ts';
import type { Row } from '../judge/row.ts';
import type { Route } from '../value/route.ts';

/** The sessions in which the readings behind a row were taken. */
export function sessionsBehind({ routes: [judged] }: Row): ReadonlySet<SessionDocument> {
  const found = new Set<SessionDocument>();
  const visit = ({ inputs, readIn }: Route): void => {
    if (inputs.length === 0) found.add(readIn);
    for (const input of inputs) visit(input);
  };
  if (judged !== undefined) visit(judged.route);
  return found;
}
