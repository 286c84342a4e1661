import type { Line } from '../escape/line.ts';
import { type Markdown, md } from '../escape/markdown.ts';
import type { TextStyle } from '../terminal/textStyle.ts';

/** A revision as it was asked for, and the commit that it names. */
export interface NamedCommit {
  readonly name: string;
  readonly commit: string;
}

/** As many digits of a commit's id as people write. */
export const shortCommit = ({ commit }: Pick<NamedCommit, 'commit'>): string => commit.slice(0, 10);

export const revisionWords = (revision: NamedCommit): string =>
  `${revision.name}, commit ${shortCommit(revision)}`;

/** The line above a report of documents that are not those on disk. */
export const revisionText = (revision: NamedCommit, { paint }: TextStyle): Line =>
  paint.notice(`as it stood at ${revisionWords(revision)}`);

export const revisionMarkdown = (revision: NamedCommit): Markdown =>
  md`As it stood at ${revisionWords(revision)}.`;

export const sinceText = (revision: NamedCommit, { paint }: TextStyle): Line =>
  paint.notice(`only engines that changed since ${revisionWords(revision)}`);

export const stagedText = ({ paint }: TextStyle): Line =>
  paint.notice('as staged for the next commit; only engines with a staged change');

export const revisionJson = (revision: NamedCommit | undefined) =>
  revision === undefined ? null : { revision: revision.name, commit: revision.commit };
