import { existsSync } from 'node:fs';
import { basename, relative, resolve, sep } from 'node:path';
import { type Registry, registryWith } from '../characteristics/registry.ts';
import type { Engine } from '../documents/assemble.ts';
import { diagnosticsText } from '../output/runText.ts';
import { type LoadedEngine, ShopLoader } from '../shell/loadEngines.ts';
import { folderAt, shopRoot } from '../shell/root.ts';
import { workTree } from '../shell/store.ts';
import { textStyle } from '../shell/terminal.ts';
import type { World } from '../shell/world.ts';
import { UsageError } from './usage.ts';

export interface OpenedEngine {
  /** The shop's root, absolute. */
  readonly root: string;
  /** The engine's folder, relative to the root, with `/`. */
  readonly folder: string;
  readonly engine: Engine;
  readonly registry: Registry;
  readonly loaded: LoadedEngine;
}

/**
 * The engine that a command is about: named by a path, its folder's name or a part of it that no other has; without a
 * name the one around the working directory, or the only one of the shop.
 */
export function openEngine(name: string | undefined, world: World): OpenedEngine {
  let registry: Registry = registryWith([]);
  const isPath = name !== undefined && existsSync(resolve(world.workingDirectory, name));
  const start = isPath ? resolve(world.workingDirectory, name) : world.workingDirectory;
  const root = shopRoot(start);
  const loader = new ShopLoader(workTree(root, world.workingDirectory), (own) => {
    registry = registryWith(own);
    return registry;
  });
  const at = (relative(root, folderAt(start)) || '.').split(sep).join('/');
  const around = loader.find({ folders: [at] }).engines;
  const all =
    isPath || (name === undefined && around.length === 1) ? around : loader.find({ folders: ['.'] }).engines;
  const folder = chooseEngine(isPath ? undefined : name, all);
  const loaded = loader.load(folder);
  if (loaded.engine === undefined) {
    world.err.write(
      diagnosticsText(loaded.diagnostics, loaded.texts, textStyle(world.err, world.environment, false)),
    );
    throw new UsageError(
      `${folder} cannot be used until its documents are sound`,
      'mend what is listed above',
    );
  }
  return { root, folder, engine: loaded.engine, registry, loaded };
}

export function chooseEngine(name: string | undefined, engines: readonly string[]): string {
  const nameOf = (folder: string): string => basename(folder);
  const found =
    name === undefined
      ? engines
      : [
          engines.filter((folder) => folder === name || nameOf(folder) === name),
          engines.filter((folder) => nameOf(folder).includes(name)),
        ].find((each) => each.length > 0);
  const [first, second] = found ?? [];
  if (first === undefined) throw new UsageError(noEngine(name), engineHelp(engines));
  if (second !== undefined) {
    const which = name === undefined ? 'there are several engines here' : `${name} fits several engines`;
    throw new UsageError(`${which}: ${(found ?? []).map(nameOf).join(', ')}`, 'name one of them');
  }
  return first;
}

const noEngine = (name: string | undefined): string =>
  name === undefined ? 'there is no engine here' : `there is no engine ${name}`;

const engineHelp = (engines: readonly string[]): string =>
  engines.length === 0
    ? 'make one with: tenths new engine NAME'
    : `the engines are ${engines.map((folder) => basename(folder)).join(', ')}`;
