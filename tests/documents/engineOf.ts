import { registryWith } from '../../src/characteristics/registry.ts';
import type { Diagnostic } from '../../src/diagnostic/diagnostic.ts';
import { assembleEngine, type Engine } from '../../src/documents/assemble.ts';
import { openDocument } from '../../src/documents/opened.ts';

const ENGINE = `kind: engine
name: Reservoir pump no. 2
units: { length: in, torque: lbf ft }
layout: { cylinders: 4, mains: 5, crankpins: 4 }
`;

/** The texts of an engine's documents by their names; the engine document unless another is given. */
export type Files = Readonly<Record<string, string>>;

/** An engine of these documents, and what is wrong with them. */
export function assembled(files: Files): {
  readonly engine: Engine | undefined;
  readonly diagnostics: readonly Diagnostic[];
} {
  const own = Object.entries({ 'engine.yaml': ENGINE, ...files }).map(([name, text]) =>
    openDocument(name, name, new TextEncoder().encode(text)),
  );
  return assembleEngine(
    { folder: '.', own, shared: [], extended: new Map(), studies: new Map() },
    registryWith,
  );
}

/** An engine whose documents the test knows to be sound. */
export function engineOf(files: Files): Engine {
  const { engine, diagnostics } = assembled(files);
  const told = diagnostics.map(({ place, message }) => `${place.path}:${place.line} ${message}`);
  if (engine === undefined || told.length > 0) throw new Error(told.join('; '));
  return engine;
}
