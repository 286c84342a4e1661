import { expect, test } from 'vitest';
import { sniffKind } from '../../../src/documents/yaml/sniff.ts';

const sniffed = (text: string) => sniffKind(Buffer.from(text));
/** A comment of so many bytes, its line end included. */
const comment = (bytes: number) => `#${'x'.repeat(bytes - 2)}\n`;

test.each([
  ['the first line', 'kind: engine\nname: a\n', 'engine'],
  ['a line below comments', '# by RK\n\nkind: engine\n', 'engine'],
  ['the end of a file', 'name: a\nkind: build-plan', 'build-plan'],
  ['a comment behind it', 'kind: engine # of the pump\n', 'engine'],
  ['quotes, and a space before the colon', '"kind" : \'engine\'\r\n', 'engine'],
  ['a byte order mark', '\ufeffkind: engine\r\n', 'engine'],
  ['the end of what is looked at', `${comment(4096 - 13)}kind: engine\nx: 1\n`, 'engine'],
  ['the end of what is looked at, and of the file', `${comment(4096 - 12)}kind: engine`, 'engine'],
  ['more than one kind, of which the first counts', 'kind: engine\nkind: session\n', 'engine'],
  ['a key further in', 'a:\n  kind: engine\n', undefined],
  ['another key', 'kinds: engine\n', undefined],
  ['a value that is no word', 'kind: [engine]\n', undefined],
  ['a word that may go on behind what is looked at', `${comment(4096 - 9)}kind: engine\n`, undefined],
  ['what is looked at, behind it', `${comment(4096)}kind: engine\n`, undefined],
])('%s: %j', (_, text, wanted) => {
  expect(sniffed(text)).toBe(wanted);
});
