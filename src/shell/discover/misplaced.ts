import { diagnostic } from '../../diagnostic/diagnostic.ts';
import { startOfFile } from '../../diagnostic/place.ts';
import { type OpenedDocument, withoutKind } from '../../documents/opened.ts';

/** Inside an engine's folder a file that says no kind is a fault. */
export const withKindProblem = (document: OpenedDocument): OpenedDocument => {
  const problem = withoutKind(document);
  return problem === undefined ? document : { ...document, problems: [...document.problems, problem] };
};

/** A session or a sequence that lies in no engine's folder would never be read. */
export function withPlaceProblem(document: OpenedDocument): OpenedDocument {
  if (document.kind !== 'session' && document.kind !== 'torque') return document;
  const message = `a ${document.kind} document in no engine's folder is never read`;
  const help = 'move it below the folder that holds the engine document';
  return {
    ...document,
    problems: [...document.problems, diagnostic('kind', startOfFile(document.source.path), message, help)],
  };
}
