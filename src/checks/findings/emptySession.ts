import { pointsOf } from '../../documents/session/reading.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';

const EMPTY: FindingKind = {
  code: 'session/empty',
  severity: 'remark',
  means: 'A session holds no reading, and nothing that was done either.',
  matters:
    'It may be a sheet that was never filled in, or its readings may stand in a file that is not read.',
  usually: 'Fill it in, or delete it.',
  example: 'no reading was taken in this session',
};

export const emptySessionKinds: readonly FindingKind[] = [EMPTY];

export const emptySessionFindings = (session: SessionDocument): readonly Finding[] =>
  isEmpty(session) ? [finding(EMPTY, session.start, 'no reading was taken in this session')] : [];

const isEmpty = ({ blocks, study, ...done }: SessionDocument): boolean =>
  study === undefined &&
  blocks.every(({ positions }) => positions.every((each) => pointsOf(each).length === 0)) &&
  [done.work, done.partChanges, done.tightened, done.checked].every(({ length }) => length === 0);
