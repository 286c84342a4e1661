/** What one file takes from another, or from a package. */
export interface Import {
  /** As written: `./row.ts`, `yaml`, `node:fs`. */
  readonly from: string;
  readonly line: number;
}

/**
 * Every module that a source names: `import … from`, `export … from`, a bare `import '…'`, `import('…')` and
 * `typeof import('…')`, types included. A pattern and no parser, since TypeScript 7 offers none to programs: it
 * relies on the formatter, which puts a statement at the start of a line. tests/architecture.test.ts compares it
 * with what the bundler finds, so that a form it does not know is noticed.
 */
export function importsOf(source: string): readonly Import[] {
  const code = withoutComments(source);
  return [...code.matchAll(STATEMENT), ...code.matchAll(CALL)].map(({ index, 0: text, groups }) => ({
    from: groups?.module ?? '',
    line: code.slice(0, index + text.length).split('\n').length,
  }));
}

/** No quote, semicolon or bracket of a call can stand between the word and `from`. */
const STATEMENT =
  /^[ \t]*(?:import|export)\b(?:[ \t]+type\b)?(?:[^'"`;()=]*?\bfrom\b)?[ \t\n]*(?<quote>['"])(?<module>[^'"\n]+)\k<quote>/gm;
const CALL = /\b(?:import|require)\(\s*(?<quote>['"`])(?<module>[^'"`\n]+)\k<quote>\s*[,)]/g;

/** Line ends stay, so that lines can be counted. Only comments that begin a line may name modules. */
const withoutComments = (source: string): string =>
  source.replace(/^[ \t]*\/\*[\s\S]*?\*\/|^[ \t]*\/\/.*$/gm, (comment) => comment.replace(/[^\n]/g, ' '));
