import { crypto } from '../process/lateModules.ts';

/** SHA-1, or SHA-256 in a repository that was made so. */
export const isObjectId = (text: string): boolean => /^(?:[0-9a-f]{40}|[0-9a-f]{64})$/.test(text);

/** An id that came from git; anything else is a bug of ours. */
export function requireId(oid: string): string {
  if (!isObjectId(oid)) throw new TypeError(`not an object id: ${JSON.stringify(oid)}`);
  return oid;
}

/**
 * The ids that git gives files of some bytes, in the manner of `like`, another id of the same repository. A file that git
 * converts on the way in (line ends, filters) has another id in the repository.
 */
export function blobIds(like: string): (bytes: Uint8Array) => string {
  const algorithm = requireId(like).length === 64 ? 'sha256' : 'sha1';
  return (bytes) =>
    crypto().hash(algorithm, Buffer.concat([Buffer.from(`blob ${bytes.length}\0`), bytes]), 'hex');
}
