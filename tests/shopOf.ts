import { posix } from 'node:path';
import { type Registry, registryWith } from '../src/characteristics/registry.ts';
import type { Finding } from '../src/checks/finding.ts';
import { type EngineReport, reportEngine } from '../src/checks/judge/report.ts';
import type { JudgingOptions, Row } from '../src/checks/judge/row.ts';
import type { Diagnostic } from '../src/diagnostic/diagnostic.ts';
import { type Assembled, assembleEngine, type EngineDocuments } from '../src/documents/assemble.ts';
import { type NamedStudy, studiesNamed } from '../src/documents/engine/registerStudies.ts';
import { folderOf, isAtOrAbove, type OpenedDocument } from '../src/documents/opened.ts';
import { childOf, textOf } from '../src/documents/yaml/access.ts';
import { OpenedOnce } from '../src/shell/discover/openedOnce.ts';

/** Texts by path, as they would lie in a repository; the folder of the engine document is the engine. */
export type Files = Readonly<Record<string, string>>;

export interface Shop extends Assembled {
  readonly registry: Registry;
}

/** An engine read from texts alone: no files, no shell. The files are opened in the order given. */
export function shopOf(files: Files): Shop {
  const opened = Object.entries(files).map(([path, text]) => open(path, text));
  const folder = folderOf(opened.find(({ kind }) => kind === 'engine')?.path ?? 'engine/engine.yaml');
  const above = opened.filter(({ path }) => folderOf(path) !== folder && isAbove(folderOf(path), folder));
  let registry = registryWith([]);
  const assembled = assembleEngine(
    {
      folder,
      own: opened.filter(({ path }) => isAtOrAbove(folder, folderOf(path))),
      shared: above.sort((a, b) => folderOf(b.path).length - folderOf(a.path).length),
      extended: extendedBy(opened),
      studies: studiesOf(opened),
    },
    (own, layout) => {
      registry = registryWith(own, layout);
      return registry;
    },
  );
  return { ...assembled, registry };
}

const isAbove = (folder: string, below: string): boolean => folder !== below && isAtOrAbove(folder, below);

/** Of many shops all is the same but one document. */
const opened = new OpenedOnce();

const open = (path: string, text: string): OpenedDocument =>
  opened.open(path, path, new TextEncoder().encode(text));

function studiesOf(opened: readonly OpenedDocument[]): EngineDocuments['studies'] {
  const studyAt = (path: string): NamedStudy | undefined => {
    const document = opened.find((each) => each.path === path);
    return (
      document && {
        document,
        around: opened.filter((each) => isAtOrAbove(folderOf(each.path), folderOf(path))),
      }
    );
  };
  return new Map(
    opened.map(({ path, root }) => [
      path,
      new Map(
        studiesNamed(root).flatMap((each) => {
          const found = studyAt(posix.normalize(posix.join(folderOf(path), each)));
          return found === undefined ? [] : [[each, found] as const];
        }),
      ),
    ]),
  );
}

function extendedBy(opened: readonly OpenedDocument[]): ReadonlyMap<string, OpenedDocument> {
  const targets = new Map<string, OpenedDocument>();
  for (const { path, root } of opened) {
    const stated = textOf(childOf(root, 'extends'));
    const wanted = stated === undefined ? undefined : posix.normalize(posix.join(folderOf(path), stated));
    const target = opened.find((each) => each.path === wanted);
    if (target !== undefined) targets.set(path, target);
  }
  return targets;
}

/** The report of an engine whose documents are sound; a diagnostic in them fails the test. */
export function reportOf(files: Files, options: JudgingOptions = {}): EngineReport {
  const { engine, registry, diagnostics } = shopOf(files);
  if (engine === undefined || diagnostics.length > 0) {
    throw new Error(`the documents are not sound:\n${diagnostics.map(textOfDiagnostic).join('\n')}`);
  }
  return reportEngine(engine, registry, options);
}

const textOfDiagnostic = ({ code, message, place }: Diagnostic): string =>
  `${place.path}:${place.line}:${place.column} ${code} ${message}`;

/** Rows of the latest session. */
export const rowsOf = (files: Files, options: JudgingOptions = {}): readonly Row[] =>
  reportOf(files, options).sessions.at(-1)?.rows ?? [];

/** Findings of the latest session. */
export const findingsOf = (files: Files, options: JudgingOptions = {}): readonly Finding[] =>
  reportOf(files, options).sessions.at(-1)?.findings ?? [];

export const codesOf = (files: Files, options: JudgingOptions = {}): readonly string[] =>
  findingsOf(files, options).map(({ code }) => code);

/** `main_bearing_clearance 3` and the verdict of its row in the latest session. */
export const verdictsOf = (
  files: Files,
  options: JudgingOptions = {},
): Readonly<Record<string, string | null>> =>
  Object.fromEntries(
    rowsOf(files, options).map(({ characteristic, position, judgement }) => [
      `${characteristic.id} ${position.name}`,
      judgement.verdict,
    ]),
  );

/** `path:line:column code` of each diagnostic, without `document/`. */
export const refusalsOf = (files: Files): readonly string[] =>
  shopOf(files).diagnostics.map(
    ({ code, place }) => `${place.path}:${place.line}:${place.column} ${code.replace('document/', '')}`,
  );

export const ENGINE = `kind: engine
name: Bench engine
units: { length: in, torque: lbf in }
layout: { cylinders: 4, mains: 3, crankpins: 4 }
`;

export const engineIn = (length: 'in' | 'mm', more = ''): string =>
  `kind: engine\nname: Bench engine\nunits: { length: ${length}, torque: lbf in }\nlayout: { cylinders: 4, mains: 3, crankpins: 4 }\n${more}`;

/** One line a characteristic: `main_bearing_clearance: { new: 0.0020 to 0.0038 }`. */
export const limitsOf = (lines: string, more = ''): string =>
  `kind: limits\nsource: Invented.\n${more}limits:\n${indent(lines)}\n`;

/** One line a block, as in a list. */
export const sessionOf = (stage: string, blocks: string, more = ''): string =>
  `kind: session\nstage: ${stage}\ndate: 2026-02-03\n${more}readings:\n${indent(blocks)}\n`;

const indent = (text: string): string =>
  text
    .trim()
    .split('\n')
    .map((line) => `  ${line}`)
    .join('\n');

/** An engine of three mains and four cylinders in inches, its limits, and one session. */
export const shopFiles = (limits: string, blocks: string, stage = 'rebuild', more: Files = {}): Files => ({
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(limits),
  'e/session.yaml': sessionOf(stage, blocks),
  ...more,
});

/** A micrometer and a bore gauge that read to a tenth, and a strip. */
export const REGISTER = `kind: instruments
instruments:
  mic: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in }
  bore: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in }
  fine: { type: bore gauge, resolution: 0.00001 in, max_error: 0.00001 in }
  strip: { type: gauging strip, marks: [0.001 in, 0.002 in, 0.003 in, 0.004 in, 0.006 in] }
  dial: { type: dial indicator, resolution: 0.0005 in, max_error: 0.0005 in }
`;
