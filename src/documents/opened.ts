import { type Diagnostic, diagnostic } from '../diagnostic/diagnostic.ts';
import { startOfFile } from '../diagnostic/place.ts';
import { didYouMean, nearest } from '../diagnostic/suggestion.ts';
import { KINDS, type Kind } from './schema/kinds.ts';
import { validate } from './validation/validate.ts';
import { childOf, textOf } from './yaml/access.ts';
import { loadYaml } from './yaml/loader.ts';
import type { Node, SourceText } from './yaml/node.ts';
import { sniffKind } from './yaml/sniff.ts';

export type { Kind };

/** A file that was read: its YAML, what it says it is, and what is wrong with it so far. */
export interface OpenedDocument {
  /** Relative to the shop's root, with `/`: where it stands. Its source has the path under which it is reported. */
  readonly path: string;
  readonly source: SourceText;
  /** As it says, or as it was meant where it is broken; undefined where not even that can be told. */
  readonly kind: Kind | undefined;
  /** Undefined where the YAML or its kind cannot be read. */
  readonly root: Node | undefined;
  readonly problems: readonly Diagnostic[];
}

/**
 * Reads a file and checks it against the schema of its kind.
 * @param path relative to the root @param shown relative to the working directory
 */
export function openDocument(path: string, shown: string, bytes: Uint8Array): OpenedDocument {
  const { source, root, data, diagnostics } = loadYaml(shown, bytes);
  if (root === undefined)
    return { path, source, kind: likelyKind(sniffKind(bytes)), root, problems: diagnostics };
  const kind = kindOf(root);
  const problems = kind === undefined ? unknownKind(root, source) : validate(kind, data, root, source);
  const meant = kind ?? likelyKind(textOf(childOf(root, 'kind')));
  return {
    path,
    source,
    kind: meant,
    root: kind === undefined ? undefined : root,
    problems: [...diagnostics, ...problems],
  };
}

function kindOf(root: Node): Kind | undefined {
  const text = textOf(childOf(root, 'kind'));
  return KINDS.find((kind) => kind === text);
}

/** What a broken document was meant to be: a session that cannot be read leaves the engine's others to be judged. */
function likelyKind(text: string | undefined): Kind | undefined {
  const meant = text === undefined ? undefined : nearest(text, KINDS);
  return KINDS.find((kind) => kind === meant);
}

/** A kind that is not known is wrong anywhere; no kind at all only inside an engine's folder, and told there. */
function unknownKind(root: Node, source: SourceText): readonly Diagnostic[] {
  const kind = childOf(root, 'kind');
  if (kind === undefined) return [];
  const text = textOf(kind) ?? '';
  const help = didYouMean(text, KINDS) ?? `it is one of ${KINDS.join(', ')}`;
  return [
    diagnostic(
      'kind',
      source.place(kind.span),
      text === '' ? '`kind:` is empty' : `${text} is not a kind of document`,
      help,
    ),
  ];
}

/** Inside an engine's folder every YAML file must say what it is. */
export function withoutKind(document: OpenedDocument): Diagnostic | undefined {
  if (document.kind !== undefined || document.problems.length > 0) return undefined;
  const message = 'the file does not say what it is';
  return diagnostic(
    'kind',
    startOfFile(document.source.path),
    message,
    `begin it with \`kind: ${KINDS.slice(1).join(' | ')}\``,
  );
}

export const folderOf = (path: string): string => {
  const slash = path.lastIndexOf('/');
  return slash < 0 ? '.' : path.slice(0, slash);
};

/** `.` is the root, above everything. */
export const isAtOrAbove = (folder: string, below: string): boolean =>
  folder === '.' || folder === below || below.startsWith(`${folder}/`);
