import { comment, schemaLine } from '../sessionText.ts';
import { CI_JOB } from './ciJob.ts';
import { type MadeFile, madeFile, SCHEMA_FOLDER, schemaPath } from './madeFile.ts';

export interface ShopRequest {
  readonly units: 'in' | 'mm';
  readonly name: string | undefined;
  /** The text of each schema by its kind. */
  readonly schemas: ReadonlyMap<string, string>;
  readonly ci: boolean;
}

/** Every file of a new shop repository. */
export const shopFiles = (request: ShopRequest): readonly MadeFile[] => [
  madeFile('shop.yaml', shopText(request)),
  madeFile('instruments.yaml', instrumentsText(request)),
  madeFile('.gitattributes', GIT_ATTRIBUTES, { where: 'add lines' }),
  madeFile('.gitignore', request.ci ? `${GIT_IGNORE}node_modules/\n` : GIT_IGNORE, { where: 'add lines' }),
  madeFile('.editorconfig', EDITOR_CONFIG),
  madeFile('.vscode/settings.json', editorSettings(request)),
  madeFile('.vscode/tasks.json', EDITOR_TASKS),
  ...[...request.schemas].map(([kind, text]) => madeFile(`${SCHEMA_FOLDER}/${kind}.json`, text)),
  ...(request.ci ? [madeFile('.github/workflows/tenths.yaml', CI_JOB)] : []),
];

const lines = (...each: readonly string[]): string => `${each.join('\n')}\n`;

const UNITS = {
  in: 'units: { length: in, torque: lbf ft, pressure: psi, temperature: degF }',
  mm: 'units: { length: mm, torque: N m, pressure: bar, temperature: degC }',
} as const;

const shopText = ({ units, name }: ShopRequest): string =>
  lines(
    schemaLine(schemaPath('.', 'shop')),
    comment('Defaults for every engine in the folders below.'),
    'kind: shop',
    ...(name === undefined ? [] : [`name: ${JSON.stringify(name)}`]),
    '',
    comment(
      'The units of plain numbers. An engine or a document may state others, and so may any single number.',
    ),
    UNITS[units],
    '',
    comment('simple compares a reading with its limit, and marks a reading that is too near to be sure.'),
    comment('guarded calls a reading in or out only where its uncertainty allows that, else undecided.'),
    'decision_rule: simple',
    '',
    comment('Where each part is measured, stated once: sessions need not repeat it. For example:'),
    comment('grids:'),
    comment('  main_journal: { stations: [front, rear], directions: [throw, square] }'),
    comment('  crankpin: { stations: [front, rear], directions: [throw, square] }'),
    comment('  cylinder: { stations: [top, middle, bottom], directions: [thrust, axial] }'),
  );

const EXAMPLES = {
  in: [
    'mic-3-4: { type: micrometer, range: { from: 3 in, to: 4 in }, resolution: 0.0001 in, max_error: 0.0001 in, due: 2027-01-10 }',
    'bore-2-6: { type: bore gauge, resolution: 0.0001 in, max_error: 0.0001 in, repeatability: 0.00005 in }',
    'dial: { type: dial indicator, resolution: 0.001 in, max_error: 0.001 in }',
    'feelers: { type: feeler gauge, max_error: 0.0003 in }',
    'strip-mid: { type: gauging strip, marks: [0.002 in, 0.003 in, 0.004 in, 0.006 in] }',
    'beam-60: { type: torque wrench, max_error: 4 % }',
  ],
  mm: [
    'mic-75-100: { type: micrometer, range: { from: 75 mm, to: 100 mm }, resolution: 0.001 mm, max_error: 0.003 mm, due: 2027-01-10 }',
    'bore-50-160: { type: bore gauge, resolution: 0.001 mm, max_error: 0.004 mm, repeatability: 0.001 mm }',
    'dial: { type: dial indicator, resolution: 0.01 mm, max_error: 0.015 mm }',
    'feelers: { type: feeler gauge, max_error: 0.008 mm }',
    'strip-mid: { type: gauging strip, marks: [0.051 mm, 0.076 mm, 0.102 mm, 0.152 mm] }',
    'beam-60: { type: torque wrench, max_error: 4 % }',
  ],
} as const;

const instrumentsText = ({ units }: ShopRequest): string =>
  lines(
    schemaLine(schemaPath('.', 'instruments')),
    comment(
      'The register of measuring instruments. A session names them with `with:`. An instrument that is not in the register',
    ),
    comment('gets a cautious error by its type, which is shown as assumed.'),
    comment('The figures below are examples: take those of your own instruments from their certificates.'),
    'kind: instruments',
    comment('For the first instrument remove the {}.'),
    'instruments: {}',
    ...EXAMPLES[units].map((each) => comment(` ${each}`)),
  );

/** One line end for everybody, so that a diff shows readings and not line ends. */
const GIT_ATTRIBUTES = lines('*.yaml text eol=lf', '*.yml text eol=lf');

/** What a write or an entry that was cut off may leave; locks while something is written. */
const GIT_IGNORE = lines('.*.tmp', '.*.part', '*.lock');

const EDITOR_CONFIG = lines(
  'root = true',
  '',
  '[*.{yaml,yml}]',
  'charset = utf-8',
  'end_of_line = lf',
  'indent_style = space',
  'indent_size = 2',
  'insert_final_newline = true',
);

/** For documents without the schema line; those with it bring their own. */
function editorSettings({ schemas }: ShopRequest): string {
  const globs: Readonly<Record<string, readonly string[]>> = {
    shop: ['shop.yaml'],
    instruments: ['instruments.yaml'],
    engine: ['engine.yaml'],
    limits: ['limits.yaml', 'limits/*.yaml'],
    session: ['sessions/*.yaml'],
    torque: ['torque/*.yaml'],
  };
  const known = [...schemas.keys()].filter((kind) => globs[kind] !== undefined);
  const settings = {
    'yaml.schemas': Object.fromEntries(known.map((kind) => [`./${SCHEMA_FOLDER}/${kind}.json`, globs[kind]])),
    '[yaml]': { 'editor.formatOnSave': false },
  };
  return `${JSON.stringify(settings, null, 2)}\n`;
}

/** Runs the check and leads from each finding to the line that caused it. */
const EDITOR_TASKS = `${JSON.stringify(
  {
    version: '2.0.0',
    tasks: [
      {
        label: 'tenths check',
        type: 'shell',
        command: 'tenths check --format lines',
        group: { kind: 'build', isDefault: true },
        presentation: { reveal: 'silent', clear: true },
        problemMatcher: {
          owner: 'tenths',
          source: 'tenths',
          fileLocation: 'relative',
          pattern: {
            regexp: '^(.+?):(\\d+):(\\d+): (error|warning|info): (.*) \\[([^\\[\\]]+)\\]$',
            file: 1,
            line: 2,
            column: 3,
            severity: 4,
            message: 5,
            code: 6,
          },
        },
      },
    ],
  },
  null,
  2,
)}\n`;

const HOOK = lines(
  '#!/bin/sh',
  '# Checks what is about to be committed, which need not be what lies in the folder. Readings that are out do not stop',
  '# a commit: they are what a build log is for. Documents that cannot be trusted do. To skip it once: git commit --no-verify',
  'tenths check --staged',
  '[ $? -le 1 ]',
);

/** For git's own folder of hooks: a file of the repository would be a program that a commit of others could change. */
export const HOOK_FILE: MadeFile = madeFile('hooks/pre-commit', HOOK, { executable: true });
