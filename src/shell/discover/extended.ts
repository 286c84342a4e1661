import { type Diagnostic, diagnostic } from '../../diagnostic/diagnostic.ts';
import type { OpenedDocument } from '../../documents/opened.ts';
import { childOf, textOf } from '../../documents/yaml/access.ts';
import { pathFrom } from './pathBelow.ts';

export interface Extended {
  readonly documents: ReadonlyMap<string, OpenedDocument>;
  /** Their paths, and those of what could not be extended. */
  readonly targets: readonly string[];
  readonly problems: readonly Diagnostic[];
}

/** Everything that limits documents extend, and what that extends in turn. */
export function extendedBy(
  documents: readonly OpenedDocument[],
  open: (path: string) => OpenedDocument,
): Extended {
  const documentsOf = new Map<string, OpenedDocument>();
  const problems: Diagnostic[] = [];
  const targets: string[] = [];
  const waiting = documents.filter((each) => each.kind === 'limits');
  for (let document = waiting.pop(); document !== undefined; document = waiting.pop()) {
    const stated = childOf(document.root, 'extends');
    const path = textOf(stated);
    if (stated === undefined || path === undefined || documentsOf.has(document.source.path)) continue;
    const target = open(pathFrom(document.path, path));
    targets.push(target.path);
    const problem = notToBeExtended(target);
    if (problem === undefined) {
      documentsOf.set(document.source.path, target);
      waiting.push(target);
    } else problems.push(diagnostic('extends', document.source.place(stated.span), `${path} ${problem}`));
  }
  return { documents: documentsOf, targets, problems };
}

function notToBeExtended({ kind, problems }: OpenedDocument): string | undefined {
  const unreadable = problems.find(({ code }) => code === 'document/unreadable');
  if (unreadable !== undefined) return `cannot be extended: ${unreadable.message}`;
  return kind === 'limits' || problems.length > 0 ? undefined : 'is not a limits document';
}
