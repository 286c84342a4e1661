import type { Registry } from '../../characteristics/registry.ts';
import { shellWord } from '../../diagnostic/shellWord.ts';
import type { Engine } from '../../documents/assemble.ts';
import { diagnosticsLines, faultyText } from '../../output/check/runText.ts';
import { writtenLines } from '../../output/escape/line.ts';
import type { LoadedEngine } from '../../shell/discover/loadEngines.ts';
import { textStyle } from '../../shell/process/terminal.ts';
import type { World } from '../../shell/world.ts';
import { engineNamed } from '../shop/resolveShop.ts';
import { UsageError } from '../usage.ts';

/** An engine that readings are to come into, and where its files stand. */
export interface BenchEngine {
  /** The shop's root, absolute. */
  readonly root: string;
  /** The engine's folder, relative to the root, with `/`. */
  readonly folder: string;
  readonly engine: Engine;
  readonly registry: Registry;
  readonly loaded: LoadedEngine;
}

/** A path inside the engine, relative to the root; an engine may be the root itself. */
export const inEngine = ({ folder }: Pick<BenchEngine, 'folder'>, path: string): string =>
  folder === '.' ? path : `${folder}/${path}`;

/** The engine as a call may name it. */
export const callName = ({ folder }: Pick<BenchEngine, 'folder'>): string =>
  shellWord(folder.split('/').at(-1) ?? folder);

/** Opens the engine of a call; one that cannot be judged is reported and refused, since entry is judged as typed. */
export function benchEngine(name: string | undefined, world: World): BenchEngine {
  const { shop, folder } = engineNamed(name, world);
  const loaded = shop.load(folder);
  const { engine, registry, diagnostics, texts, faulty } = loaded;
  if (engine === undefined) {
    const style = textStyle(world.err, world.environment, false);
    world.err.write(writtenLines(diagnosticsLines(diagnostics, texts, style)));
    throw new UsageError(
      `${shop.store.shown(folder)} cannot be judged: ${faultyText(faulty)}`,
      'correct what is listed above',
    );
  }
  return { root: shop.root, folder, engine, registry, loaded };
}
