import type { SessionDocument } from '../../documents/session/session.ts';
import type { Row } from '../judge/row.ts';
import { leavesOf } from '../value/route.ts';

/** The sessions in which the readings behind a row were taken. */
export const sessionsBehind = ({ routes: [judged] }: Row): ReadonlySet<SessionDocument> =>
  new Set(judged === undefined ? [] : leavesOf(judged.route).map(({ readIn }) => readIn));
