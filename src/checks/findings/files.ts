import { startOfFile } from '../../diagnostic/place.ts';
import { type Finding, type FindingKind, finding, type Severity } from '../finding.ts';

const UNREAD: FindingKind = {
  code: 'file/unread',
  severity: 'warning',
  means:
    'A file looks like a document, and the program does not read it: it is a link, hidden, wrongly named, not a regular file, or an entry that was not finished. Files that an editor left behind, and folders that are not searched, are a remark.',
  matters:
    'No verdict uses what is in it, and nobody would notice. An engine, limits, instruments or shop document that is not read is a problem instead, document/unread, with exit code 2.',
  usually:
    'Give the file a name that ends in .yaml, put the file itself in place of the link, finish the entry, or delete what nobody needs.',
  example: '2026-02-03-teardown.yaml.txt is not read, since its name does not end in .yaml',
};

const DELETED: FindingKind = {
  code: 'file/deleted',
  severity: 'warning',
  means:
    'A document was deleted since the commit that `--staged` or `--since` compares with, and other documents still need it: sessions need their engine, readings need limits and registered instruments, engines need the shop.',
  matters:
    'Without limits a reading has no verdict; without the register the error of its instrument is assumed. Documents that cannot be read without the deleted one are reported as problems, and the hook stops the commit.',
  usually:
    'Take it back with `git checkout HEAD -- FILE`, or delete or move the documents that need it in the same commit.',
  example: 'limits.yaml is deleted: 3 readings have no limits any more',
};

/** Of documents as files, whatever is in them. */
export const fileKinds: readonly FindingKind[] = [UNREAD, DELETED];

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

/** @param path as it is reported @param lost what is left without it, behind "is deleted:" */
export const deletedFile = (path: string, lost: string): Finding =>
  finding(DELETED, startOfFile(path), `${path} is deleted: ${lost}`);
