import { placesTaken } from '../../bench/record/journalText.ts';
import { nearest } from '../../diagnostic/suggestion.ts';
import { folderOf, isAtOrAbove, openDocument } from '../../documents/opened.ts';
import { KINDS, type Kind } from '../../documents/schema/kinds.ts';
import { sniffKind } from '../../documents/yaml/sniff.ts';
import { type Entry, endsAsYaml, isBackup, isJournal, isOpenFolder, nameOf } from './entry.ts';
import type { Store } from './store.ts';

/** Something that looks like a document and was not read. */
export interface Unread {
  readonly entry: Entry;
  /** A `document` is one that verdicts stand on: without it they are other verdicts, or none. */
  readonly weight: 'document' | 'warning' | 'remark';
}

/** What an entry is taken for; undefined where it does not look like a document. `said` is what it says it is. */
export function unreadOf(entry: Entry, said: Said, store: Store, isInEngine: boolean): Unread | undefined {
  const weight = weightOf(entry, store, said, isInEngine);
  return weight && { entry, weight };
}

/** `unknown` where it begins as a document does, `unseen` where its name is one and its content cannot be looked at. */
export type Said = Kind | 'unknown' | 'unseen' | undefined;

/** Its folder is that of an engine, though its document is not read. */
export const isEngine = ({ path }: Entry, said: Said): boolean =>
  said === 'engine' || (said === 'unseen' && /^engine\.ya?ml$/i.test(nameOf(path)));

/** What an entry says it is. A link is seen through where it leads to a file of the shop, of which no more is taken. */
export function saidBy({ path, kind }: Entry, store: Store): Said {
  const [name, isYaml] = [nameOf(path), endsAsYaml(path)];
  if (isBackup(name) || isJournal(name) || (kind === 'link' && !isYaml)) return undefined;
  const target = kind === 'link' ? store.behind(path) : { path, isFolder: kind !== 'file' };
  if (target.path === undefined || target.isFolder) return isYaml ? 'unseen' : undefined;
  const bytes = store.read(target.path);
  if (!bytes.ok) return isYaml ? 'unseen' : undefined;
  return saidIn(bytes.value, isYaml);
}

function saidIn(bytes: Uint8Array, isYaml: boolean): Said {
  const isHeaded = beginsWithKind(Buffer.from(bytes.subarray(0, HEAD)).toString('utf8'));
  if (!isYaml && !isHeaded) return undefined;
  const said = sniffKind(bytes) ?? (isYaml ? openDocument('', '', bytes).kind : undefined);
  const meant = said === undefined ? undefined : nearest(said, KINDS);
  return KINDS.find((each) => each === meant) ?? (isHeaded ? 'unknown' : undefined);
}

const HEAD = 4096;

/** The first line that is no comment, not blank and no mark of a document's start. */
const beginsWithKind = (text: string): boolean =>
  /^\ufeff?(?:[ \t]*(?:#.*)?\r?\n|---[ \t]*\r?\n)*["']?kind["']?[ \t]*:/.test(text);

type Weight = Unread['weight'];

function weightOf(entry: Entry, store: Store, said: Said, isInEngine: boolean): Weight | undefined {
  const name = nameOf(entry.path);
  if (entry.kind === 'folder' && !isOpenFolder(name))
    return isInEngine && store.holdsDocuments(entry.path) ? 'remark' : undefined;
  if (isBackup(name)) return isInEngine && /\.ya?ml/i.test(name) ? 'remark' : undefined;
  if (isJournal(name)) return readingsIn(entry, store) > 0 ? 'warning' : undefined;
  if (entry.kind === 'link' && hidesDocuments(entry, store, isInEngine)) return 'warning';
  const byName = namesVerdicts(name) ? 'document' : 'warning';
  switch (said) {
    case 'unseen':
      return byName;
    case 'unknown':
      return isInEngine ? byName : undefined;
    case undefined:
      // Settings of other programs are hidden files that end so.
      return isInEngine && endsAsYaml(name) ? (name.startsWith('.') ? 'remark' : byName) : undefined;
    default:
      return VERDICTS_STAND_ON.has(said) ? 'document' : 'warning';
  }
}

const VERDICTS_STAND_ON: ReadonlySet<Kind> = new Set(['engine', 'limits', 'instruments', 'shop']);

/** `limits.yaml`, `pump-limits-2026.yaml`: what a name says of a document that nothing else tells of. */
const namesVerdicts = (name: string): boolean =>
  /(?:^|[^a-z])(?:engine|limits|instruments|shop)(?:[^a-z]|$)/i.test(name);

/** A linked folder of documents, unless they are found where they really lie. */
function hidesDocuments({ path }: Entry, store: Store, isInEngine: boolean): boolean {
  const target = store.behind(path);
  if (!target.holdsDocuments) return false;
  return target.path === undefined || (isInEngine && !isAtOrAbove(target.path, folderOf(path)));
}

/** How many readings an entry that was not finished has taken. */
export function readingsIn({ path, kind }: Entry, store: Store): number {
  const bytes = kind === 'file' ? store.read(path) : undefined;
  return bytes?.ok === true ? placesTaken(Buffer.from(bytes.value).toString('utf8')) : 0;
}
