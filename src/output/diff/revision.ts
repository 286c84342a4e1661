import type { TextStyle } from '../terminal/textStyle.ts';
import { visible } from '../terminal/visible.ts';

/** A revision as it was asked for, and the commit that it names. */
export interface NamedCommit {
  readonly name: string;
  readonly commit: string;
}

/** As many digits of a commit's id as people write. */
export const shortCommit = ({ commit }: Pick<NamedCommit, 'commit'>): string => commit.slice(0, 10);

/** The line above a report of documents that are not those on disk. */
export const revisionText = (revision: NamedCommit, { paint }: TextStyle): string =>
  `${paint.notice(`as it stood at ${visible(revision.name)}, commit ${shortCommit(revision)}`)}\n`;

export const sinceText = (revision: NamedCommit, { paint }: TextStyle): string =>
  `${paint.notice(`only engines that changed since ${visible(revision.name)}, commit ${shortCommit(revision)}`)}\n`;

export const revisionJson = (revision: NamedCommit | undefined) =>
  revision === undefined ? null : { revision: revision.name, commit: revision.commit };
