import { type EngineReport, reportEngine } from '../../src/checks/judge/report.ts';
import { shopOf } from '../../src/cli/shop/shopSource.ts';
import { type EngineState, type Judgeable, stateOfEngine } from '../../src/compare/state.ts';
import { folderOf, isAtOrAbove } from '../../src/documents/opened.ts';
import type { Store } from '../../src/shell/discover/store.ts';
import { done, failed } from '../../src/shell/problem.ts';

/** Documents by path. */
export type Files = Readonly<Record<string, string>>;

/** A shop that is nowhere but here. */
export function storeOf(files: Files): Store {
  const paths = Object.keys(files).sort();
  return {
    list: (folders) => paths.filter((path) => folders.some((one) => isAtOrAbove(one, folderOf(path)))),
    listIn: (folder) => paths.filter((path) => folderOf(path) === folder),
    entries: () => [],
    entriesIn: () => [],
    behind: () => ({ says: '', path: undefined, isFolder: false, holdsDocuments: false }),
    holdsDocuments: () => false,
    read: (path) => {
      const text = files[path];
      return text === undefined
        ? failed('missing', `there is no file ${path}`, 'check the path')
        : done(new TextEncoder().encode(text));
    },
    ids: () => new Map(Object.entries(files)),
    shown: (path) => path,
    problems: () => [],
  };
}

/** The engine in `engine/`. Throws where a document has a problem: a test then tests nothing. */
export function judgeableOf(files: Files): Judgeable {
  const { engine, registry, diagnostics } = shopOf(storeOf(files), '/').load('engine');
  if (engine === undefined || diagnostics.length > 0) {
    throw new Error(
      diagnostics.map(({ place, message }) => `${place.path}:${place.line} ${message}`).join('\n'),
    );
  }
  return { engine, registry };
}

export function reportOf(files: Files): EngineReport {
  const { engine, registry } = judgeableOf(files);
  return reportEngine(engine, registry, {});
}

export const stateOfFiles = (files: Files): EngineState => stateOfEngine(judgeableOf(files));

export const ENGINE = `kind: engine
name: Mill pump
units: { length: in, torque: lbf ft }
layout: { cylinders: 4, mains: 3, crankpins: 4 }
`;

export const LIMITS = `kind: limits
source: invented
limits:
  main_journal_diameter: { new: 3.2470 to 3.2485, wear: { min: 3.2460 } }
  main_bearing_clearance: { target: 0.0026 to 0.0032, new: 0.0020 to 0.0038, wear: { max: 0.0050 } }
`;

export const INSTRUMENTS = `kind: instruments
instruments:
  mic: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in, calibrated: 2026-01-10 }
  bore: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in, repeatability: 0.00005 in, calibrated: 2026-01-10 }
`;

export const shop = (sessions: Files): Files => ({
  'engine/engine.yaml': ENGINE,
  'engine/limits.yaml': LIMITS,
  'instruments.yaml': INSTRUMENTS,
  ...sessions,
});

/** A session with blocks of readings, each `measure`, `with` and what stands under `at`. */
export const session = (
  about: string,
  blocks: readonly (readonly [measure: string, instrument: string, at: string])[],
): string =>
  [
    'kind: session',
    ...about.split('; '),
    'readings:',
    ...blocks.map(
      ([measure, instrument, at]) => `  - { measure: ${measure}, with: ${instrument}, at: ${at} }`,
    ),
    '',
  ].join('\n');
