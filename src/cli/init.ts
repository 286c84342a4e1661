import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { shopFiles } from '../bench/scaffold/shop.ts';
import { visible } from '../output/visible.ts';
import { makeFiles } from '../shell/makeFiles.ts';
import { packagedSchemas } from '../shell/packaged.ts';
import type { World } from '../shell/world.ts';
import { VERSION } from '../version.ts';
import { printMade } from './printMade.ts';
import { UsageError } from './usage.ts';

export interface InitOptions {
  readonly units: 'in' | 'mm';
  readonly name?: string;
  readonly hook?: boolean;
  readonly ci?: boolean;
  readonly git: boolean;
}

/** Makes a shop repository in a folder; never overwrites, so it may be run again. The exit code. */
export function init(folder: string, options: InitOptions, world: World): number {
  const root = resolve(world.workingDirectory, folder);
  requireFolder(root, folder);
  const files = shopFiles({
    units: options.units,
    name: options.name,
    schemas: packagedSchemas(),
    hook: options.hook === true,
    ci: options.ci === true,
    version: VERSION,
  });
  const isNew = !existsSync(join(root, 'shop.yaml'));
  const results = makeFiles(root, files);
  const code = printMade(results, world, ['.tenths/schemas']);
  if (code !== 0) return code;
  if (options.git) initGit(root, world);
  world.out.write(nextSteps(folder, options, isNew));
  return 0;
}

function requireFolder(root: string, folder: string): void {
  const found = statSync(root, { throwIfNoEntry: false });
  if (found === undefined) throw new UsageError(`there is no folder ${folder}`, `mkdir ${folder}`);
  if (!found.isDirectory()) throw new UsageError(`${folder} is not a folder`, 'name the folder of the shop');
}

/** A shop is a git repository; one inside a larger one stays part of it. */
function initGit(root: string, { out, err }: World): void {
  for (let at = root; ; at = dirname(at)) {
    if (existsSync(join(at, '.git'))) return;
    if (dirname(at) === at) break;
  }
  const made = spawnSync('git', ['init', '--quiet'], { cwd: root, encoding: 'utf8' });
  if (made.status === 0) out.write('made      .git (git init)\n');
  else err.write(`tenths: git init did not run: ${visible(made.error?.message ?? made.stderr.trim())}\n`);
}

function nextSteps(folder: string, { units, hook }: InitOptions, isNew: boolean): string {
  const plain = units === 'in' ? 'inches and lbf ft' : 'millimetres and N m';
  const steps = [
    ...(folder === '.' ? [] : [`cd ${folder}`]),
    ...(hook === true
      ? ['git config core.hooksPath .githooks     turns the check before each commit on']
      : []),
    'edit instruments.yaml                    the instruments of the shop',
    'tenths new engine "Millbrook pump no. 2" --cylinders 4 --mains 5',
  ];
  const units_ = isNew ? `Plain numbers are in ${plain}; shop.yaml says so and can be changed.\n` : '';
  return `\n${units_}Next:\n${steps.map((step) => `  ${step}\n`).join('')}`;
}
