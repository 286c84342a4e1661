import { chmodSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { discover } from '../../../src/shell/discover/discover.ts';
import { isDocumentPath } from '../../../src/shell/discover/entry.ts';

const root = mkdtempSync(join(tmpdir(), 'discover '));

const FILES = [
  'shop.yaml',
  'engines/pump 2/engine.yaml',
  'engines/pump 2/sessions/2026-02-03-teardown.yml',
  'engines/pump-1/engine.yaml',
  'engines/pump-1/Übersicht.yaml',
];
const OTHERS = [
  'README.md',
  '.hidden/job.yaml',
  'engines/.hidden/x.yaml',
  'engines/node_modules/a/x.yaml',
  'engines/pump-1/.engine.yaml',
  'engines/pump-1/.yaml',
  'engines/pump-1/.engine.yaml.host.1.0123456789ab.tmp',
  'engines/pump-1/engine.yaml.lock',
  'engines/pump-1/engine.YAML.bak',
];

beforeAll(() => {
  for (const file of [...FILES, ...OTHERS]) {
    mkdirSync(dirname(join(root, file)), { recursive: true });
    writeFileSync(join(root, file), '');
  }
  symlinkSync('engine.yaml', join(root, 'engines/pump-1/link.yaml'));
  symlinkSync('..', join(root, 'engines/pump-1/round'));
});

afterAll(() => rmSync(root, { recursive: true }));

describe('the documents of a shop', () => {
  it('are its YAML files, without dot folders, node_modules and links', () => {
    expect(discover(root, ['.'])).toMatchObject({ paths: [...FILES].sort(), problems: [] });
  });

  it('stand among names that may be meant as documents, which are reported and not read', () => {
    expect(discover(root, ['.']).entries).toEqual([
      { path: '.hidden', kind: 'folder' },
      { path: 'README.md', kind: 'file' },
      { path: 'engines/.hidden', kind: 'folder' },
      { path: 'engines/node_modules', kind: 'folder' },
      { path: 'engines/pump-1/.engine.yaml', kind: 'file' },
      { path: 'engines/pump-1/.yaml', kind: 'file' },
      { path: 'engines/pump-1/engine.YAML.bak', kind: 'file' },
      { path: 'engines/pump-1/link.yaml', kind: 'link' },
      { path: 'engines/pump-1/round', kind: 'link' },
    ]);
  });

  it('are listed once where the folders given overlap', () => {
    expect(discover(root, ['engines', '', 'engines/pump-1']).paths).toEqual([...FILES].sort());
  });

  it('of one folder are those below it', () => {
    expect(discover(root, ['engines/pump-1']).paths).toEqual([
      'engines/pump-1/engine.yaml',
      'engines/pump-1/Übersicht.yaml',
    ]);
  });

  it('are listed although a folder beside them is not there', () => {
    const found = discover(root, ['engines/none', 'engines/pump 2']);
    expect(found.paths).toHaveLength(2);
    expect(found.problems).toMatchObject([{ reason: 'unreadable', message: /engines\/none.*no such/ }]);
  });

  it.skipIf(process.getuid?.() === 0)('are listed although a folder may not be opened', () => {
    mkdirSync(join(root, 'engines/closed'));
    chmodSync(join(root, 'engines/closed'), 0);
    expect(discover(root, ['engines'])).toMatchObject({ problems: [{ message: /permission denied/ }] });
    chmodSync(join(root, 'engines/closed'), 0o700);
    rmSync(join(root, 'engines/closed'), { recursive: true });
  });

  it('are told by their path alone as they are on the disk', () => {
    expect([...FILES, ...OTHERS].filter(isDocumentPath)).toEqual(FILES);
  });
});
