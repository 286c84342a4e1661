import type { KnownFinding } from '../../../output/check/knownFinding.ts';
import { json, writtenJson } from '../../../output/escape/json.ts';
import { joined } from '../../../output/escape/language.ts';
import { absolutePath, fileOfCall } from '../../../shell/discover/paths.ts';
import { readBelow } from '../../../shell/discover/safeRead.ts';
import type { World } from '../../../shell/world.ts';
import { replaceFile } from '../../../shell/write/replaceFile.ts';
import { orUsage, UsageError } from '../../usage.ts';

/** The list in a file that `--update-known` has written; none where it is about to be written for the first time. */
export function readKnown(
  file: string,
  isUpdating: boolean,
  { workingDirectory }: World,
): readonly KnownFinding[] {
  const { folder, name } = fileOfCall(file, workingDirectory);
  const bytes = readBelow(folder, name, MOST_BYTES);
  if (!bytes.ok && bytes.problem.reason === 'missing') {
    if (isUpdating) return [];
    throw new UsageError(`there is no file ${file}`, '--update-known writes it');
  }
  const list = listIn(Buffer.from(orUsage(bytes)).toString('utf8'));
  if (list !== undefined) return list;
  throw new UsageError(
    `${file} is not a list of known findings`,
    'tenths check --known FILE --update-known writes one',
  );
}

const MOST_BYTES = 64 * 1024 * 1024;

/** A line a finding, in an order that does not change, so that a diff of the file shows what came and went. */
export function writeKnown(file: string, list: readonly KnownFinding[], { workingDirectory }: World): void {
  const lines = joined(
    list.map((each) => json`${each}`),
    json`,\n`,
  );
  const text = writtenJson(json`{"format":"tenths.known","version":1,"findings":[\n${lines}\n]}\n`);
  orUsage(replaceFile(absolutePath(file, workingDirectory), text));
}

function listIn(text: string): readonly KnownFinding[] | undefined {
  try {
    const { format, version, findings } = JSON.parse(text);
    const isOurs = format === 'tenths.known' && version === 1 && Array.isArray(findings);
    return isOurs && findings.every(isKnown) ? findings : undefined;
  } catch {
    return undefined;
  }
}

function isKnown(each: unknown): each is KnownFinding {
  if (typeof each !== 'object' || each === null) return false;
  const { code, engine, session, measure, position } = each as Readonly<Record<string, unknown>>;
  const isText = (value: unknown): boolean => typeof value === 'string';
  return (
    [code, engine].every(isText) && [session, measure, position].every((of) => of === null || isText(of))
  );
}
