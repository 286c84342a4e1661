import { execFileSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { nodeFiles } from '../../../src/shell/write/fileLayer.ts';

let folder = '';
const at = (name: string): string => join(folder, name);
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'layer '));
  writeFileSync(at('file'), 'some text');
  chmodSync(at('file'), 0o640);
  symlinkSync('file', at('link'));
  execFileSync('mkfifo', [at('pipe')]);
});
afterAll(() => rmSync(folder, { recursive: true }));

it.each([
  ['file', 'file'],
  ['.', 'folder'],
  ['link', 'link'],
  ['pipe', 'other'],
])('%s is a %s', (name, kind) => {
  expect(nodeFiles.inspect(at(name)).kind).toBe(kind);
});

it('tells how long a file is and what its mode allows, by its name and open', () => {
  const wanted = { kind: 'file', mode: 0o640, size: 9 };
  const handle = nodeFiles.openToRead(at('file'));
  expect([nodeFiles.inspect(at('file')), nodeFiles.inspectOpen(handle)]).toEqual([wanted, wanted]);
  nodeFiles.close(handle);
});

it('opens nothing through a link, to read or to add to it', () => {
  expect(() => nodeFiles.openToRead(at('link'))).toThrow('ELOOP');
  expect(() => nodeFiles.openToAppend(at('link'))).toThrow('ELOOP');
  expect(() => nodeFiles.createNew(at('link'), 0o666)).toThrow('EEXIST');
});

it('does not wait for the other end of a pipe', () => {
  nodeFiles.close(nodeFiles.openToRead(at('pipe')));
});

it('reads and writes from the places that it is told', () => {
  const handle = nodeFiles.createNew(at('new'), 0o600);
  expect(nodeFiles.write(handle, Buffer.from('abcdef'), 2)).toBe(4);
  const into = new Uint8Array(5);
  expect(nodeFiles.read(handle, into, 1, 2)).toBe(2);
  expect(Buffer.from(into).toString()).toBe('\0ef\0\0');
  expect(nodeFiles.read(handle, into, 0, 4)).toBe(0);
  nodeFiles.close(handle);
  const more = nodeFiles.openToAppend(at('new'));
  nodeFiles.write(more, Buffer.from('gh'), 0);
  nodeFiles.close(more);
  expect(readFileSync(at('new'), 'utf8')).toBe('cdefgh');
  expect(nodeFiles.inspect(at('new')).mode).toBe(0o600);
});
