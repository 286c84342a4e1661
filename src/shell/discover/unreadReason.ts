import { quoted } from '../../diagnostic/quoted.ts';
import { type Entry, isBackup, isJournal, isOpenFolder, nameOf } from './entry.ts';
import type { Store } from './store.ts';
import { readingsIn } from './unread.ts';

export interface Reason {
  /** Behind "is not read, since". */
  readonly why: string;
  readonly help: string;
}

/** Why something that stands in a shop is not read, whatever it is. */
export function reasonOf(entry: Entry, store: Store): Reason {
  const name = nameOf(entry.path);
  if (entry.kind === 'link') return linkReason(store.behind(entry.path));
  if (entry.kind !== 'file') return placeReason(name, entry.kind);
  if (isJournal(name)) return journalReason(readingsIn(entry, store));
  if (isBackup(name))
    return { why: 'it looks like what an editor leaves behind', help: `delete it, or ${renamed(name)}` };
  if (name.startsWith('.')) return { why: 'its name begins with a dot', help: renamed(name) };
  return { why: 'its name does not end in .yaml', help: renamed(name) };
}

const linkReason = ({ says, isFolder }: ReturnType<Store['behind']>): Reason => ({
  why: `it is a link to ${quoted(says)}, and links are not followed`,
  help: `put the ${isFolder ? 'folder' : 'file'} itself there`,
});

const journalReason = (readings: number): Reason => ({
  why: `it is an entry that was not finished, with ${readings} reading${readings === 1 ? '' : 's'} that no session has`,
  help: 'tenths record goes on with it',
});

function placeReason(name: string, kind: Exclude<Entry['kind'], 'file' | 'link'>): Reason {
  if (kind === 'folder' && !isOpenFolder(name))
    return { why: 'folders of that name are not searched', help: 'move documents out of it' };
  const what = kind === 'repository' ? 'another repository' : `a ${kind}`;
  return { why: `it is ${what}`, help: 'put a file there, or give it another name' };
}

/** `limits.YAML`, `.limits.yaml`, `limits.yaml.txt` and `limits.txt` are all meant to be limits.yaml. */
function renamed(name: string): string {
  const plain = name.replace(/^[.#]+/, '').replace(/[~#]+$/, '');
  const stem = plain.replace(/\.ya?ml.*$/i, '');
  return `rename it to ${stem === plain ? plain.replace(/\.[^.]*$/, '') : stem}.yaml`;
}
