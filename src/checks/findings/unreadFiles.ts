import { startOfFile } from '../../diagnostic/place.ts';
import { type Finding, type FindingKind, finding, type Severity } from '../finding.ts';

const UNREAD: FindingKind = {
  code: 'file/unread',
  severity: 'warning',
  means:
    'A file looks like a document and was not read: it is a link, hidden, misnamed, no regular file, or an entry that was not finished. What an editor leaves behind, and folders that are not searched, are a remark.',
  matters:
    'No verdict uses what is in it, and nobody would notice. Where verdicts stand on it (an engine, limits, instruments, the shop) it is document/unread.',
  usually:
    'Put the file itself there under a name that ends in .yaml, finish the entry, or delete what is not wanted.',
  example: '2026-02-03-teardown.yaml.txt is not read, since its name does not end in .yaml',
};

export const unreadFileKinds: readonly FindingKind[] = [UNREAD];

/** @param path as it is reported @param why behind "since" */
export const unreadFile = (
  path: string,
  why: string,
  help: string,
  severity: Severity = UNREAD.severity,
): Finding =>
  finding(
    UNREAD,
    startOfFile(path),
    `${path.slice(path.lastIndexOf('/') + 1)} is not read, since ${why}: ${help}`,
    {
      severity,
    },
  );
