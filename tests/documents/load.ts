import { type Loaded, loadYaml } from '../../src/documents/yaml/loader.ts';

export const load = (text: string): Loaded => loadYaml('engine.yaml', new TextEncoder().encode(text));

/** `line:column code` of each diagnostic: what a test compares, whatever the wording. */
export const found = ({ diagnostics }: Loaded): string[] =>
  diagnostics.map(({ code, place }) => `${place.line}:${place.column} ${code.replace('document/', '')}`);

/** All that is said of a file: where each problem begins and ends, its code, what is wrong and what to do. */
export const told = ({ diagnostics }: Loaded): string[] =>
  diagnostics.map(({ code, message, help, place: { line, column, endLine, endColumn } }) => {
    const end = endLine === line ? endColumn : `${endLine}:${endColumn}`;
    return `${line}:${column}-${end} ${code.replace('document/', '')}: ${message}; ${help}`;
  });

/** The user's own characters that a diagnostic marks. */
export const marked = ({ source, diagnostics }: Loaded): string[] => {
  const lines = source.text.replace(/^\ufeff/, '').split('\n');
  return diagnostics.map(({ place }) => {
    const line = lines[place.line - 1] ?? '';
    return line.slice(place.column - 1, place.endLine > place.line ? undefined : place.endColumn - 1);
  });
};
