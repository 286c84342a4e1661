import { HOOK_FILE, shopFiles } from '../../bench/scaffold/shop.ts';
import { type Line, writtenLines } from '../../output/escape/line.ts';
import { packagedSchemas } from '../../shell/discover/packaged.ts';
import { absolutePath, isFolder } from '../../shell/discover/paths.ts';
import { standingAt } from '../../shell/discover/root.ts';
import { initGit } from '../../shell/git/initGit.ts';
import { folderOfHooks } from '../../shell/git/ownFolder.ts';
import type { World } from '../../shell/world.ts';
import { makeRoot } from '../../shell/write/folders.ts';
import { makeFiles } from '../../shell/write/makeFiles.ts';
import { orUsage, problemLines, UsageError } from '../usage.ts';
import { printMade } from './printMade.ts';

export interface InitOptions {
  readonly units: 'in' | 'mm';
  readonly name?: string;
  readonly hook?: boolean;
  readonly ci?: boolean;
  readonly git: boolean;
}

/** Makes a shop repository in a folder; never overwrites, so it may be run again. The exit code. */
export function init(folder: string, options: InitOptions, world: World): number {
  if (options.hook === true && !options.git) {
    throw new UsageError(
      '--hook puts a check into git, and --no-git leaves git alone',
      'leave out one of them',
    );
  }
  const root = absolutePath(folder, world.workingDirectory);
  if (standingAt(folder, world.workingDirectory) !== undefined && !isFolder(root)) {
    throw new UsageError(`${folder} is not a folder`, 'name the folder of the shop');
  }
  const files = shopFiles({
    units: options.units,
    name: options.name,
    schemas: packagedSchemas(),
    ci: options.ci === true,
  });
  const isNew = standingAt('shop.yaml', root) === undefined;
  const isFresh = orUsage(makeRoot(root));
  if (isFresh) world.out.write(writtenLines([`made      ${folder.replace(/\/*$/, '/')}`]));
  const results = makeFiles(root, files);
  const code = printMade(results, world, ['.tenths/schemas']);
  if (code !== 0) return code;
  if (options.git) beginGit(root, world);
  const hookCode = options.hook === true ? addHook(root, world) : 0;
  if (hookCode !== 0) return hookCode;
  world.out.write(writtenLines(nextSteps(folder, options, isNew)));
  return 0;
}

/** A shop is a git repository. Without git it is a shop all the same. */
function beginGit(root: string, { environment, out, err }: World): void {
  const made = initGit(root, environment);
  if (made.ok && made.value === 'made') out.write(writtenLines(['made      .git (git init)']));
  if (!made.ok) err.write(writtenLines(problemLines(made.problem)));
}

/** The exit code. */
function addHook(root: string, world: World): number {
  const own = folderOfHooks(root, world.environment);
  if (own.ok) {
    const made = makeFiles(own.value.path, [HOOK_FILE]);
    return printMade(
      made.map((each) => ({ ...each, path: `${own.value.shown}/${each.path}` })),
      world,
    );
  }
  world.err.write(writtenLines(problemLines(own.problem)));
  return 2;
}

function nextSteps(folder: string, { units, ci }: InitOptions, isNew: boolean): readonly Line[] {
  const plain = units === 'in' ? 'inches and lbf ft' : 'millimetres and N m';
  const steps = [
    ...(folder === '.' ? [] : [`cd ${folder}`]),
    ...(ci === true
      ? [
          'npm install --save-dev TARBALL           and commit package-lock.json: the job installs what it names',
        ]
      : []),
    'edit instruments.yaml                    the instruments of the shop',
    'tenths new engine "Reservoir pump no. 2" --cylinders 4 --mains 5',
  ];
  const said = isNew ? [`Plain numbers are in ${plain}; shop.yaml says so and can be changed.`] : [];
  return ['', ...said, 'Next:', ...steps.map((step) => `  ${step}`)];
}
