import type { Registry } from '../characteristics/registry.ts';
import type { Engine } from '../documents/assemble.ts';
import type { SessionContext } from '../documents/session/session.ts';
import type { Layout } from '../layout/layout.ts';

/** What a session of an engine is read by, where the engine's own documents are known to be sound. */
export const sessionContext = (
  engine: Engine,
  registry: Registry,
  layout: Layout = engine.document.layout,
): SessionContext => ({
  measures: registry,
  layout,
  grids: engine.grids,
  sequences: { documents: engine.sequences, broken: new Set() },
});
