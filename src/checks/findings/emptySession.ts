import { pointsOf } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';

const EMPTY: FindingKind = {
  code: 'session/empty',
  severity: 'remark',
  means: 'A session has no reading, and records no work, no part and no tightening.',
  matters: 'Nobody may have filled it in, or its readings may be in a file that the program does not read.',
  usually: 'Fill it in, or delete it.',
  example: 'the session has no reading and records nothing that was done: fill it in, or delete it',
};

export const emptySessionKinds: readonly FindingKind[] = [EMPTY];

export const emptySessionFindings = (session: SessionDocument): readonly Finding[] =>
  isEmpty(session) ? [finding(EMPTY, session.start, NOTHING_IN_IT)] : [];

const NOTHING_IN_IT =
  'the session has no reading and records nothing that was done: fill it in, or delete it';

const isEmpty = ({ blocks, study, ...done }: SessionDocument): boolean =>
  study === undefined &&
  blocks.every(({ positions }) => positions.every((each) => pointsOf(each).length === 0)) &&
  [done.work, done.partChanges, done.tightened, done.checked].every(({ length }) => length === 0);
