import type { FindingKind } from '../checks/finding.ts';

/** The golden case of a finding: its documents and what a run of them prints, by file name. */
export type CaseFiles = ReadonlyMap<string, string>;

export const pageName = (code: string): string => `${code.replace('/', '-')}.md`;

/** docs/findings/README.md: every code with its severity and the link to its page. */
export const findingsIndex = (kinds: readonly FindingKind[]): string =>
  [
    '# Findings',
    '',
    'Made from the checks in `src/checks/` and the cases in `tests/cases/findings/`: change them there. `tenths explain CODE`',
    'prints the same in the terminal. An error makes the exit code 1, a warning does so under `--strict`, a remark never.',
    '',
    '| code | severity | means |',
    '|---|---|---|',
    ...[...kinds]
      .sort((a, b) => (a.code < b.code ? -1 : 1))
      .map(({ code, severity, means }) => `| [${code}](${pageName(code)}) | ${severity} | ${means} |`),
    '',
  ].join('\n');

/** The page of one code: what it means, why it matters, what people do, and the smallest engine that shows it. */
export const findingPage = (kind: FindingKind, files: CaseFiles): string =>
  [
    `# ${kind.code}`,
    '',
    `Severity: ${kind.severity}.`,
    '',
    kind.means,
    '',
    `Why it matters: ${kind.matters}`,
    '',
    `What people usually do: ${kind.usually}`,
    '',
    '## An invented example',
    '',
    ...[...files]
      .filter(([name]) => name.endsWith('.yaml'))
      .flatMap(([name, text]) => fenced('yaml', `# ${name}\n${text}`)),
    ...fenced('text', files.get('session.txt') ?? ''),
  ].join('\n');

const fenced = (language: string, text: string): readonly string[] => [
  `\`\`\`${language}`,
  text.trimEnd(),
  '```',
  '',
];
