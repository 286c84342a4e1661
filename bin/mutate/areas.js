/** What is mutated: an area's sources, and the tests that are asked first of all. */
export const AREAS = {
  quantity: { sources: ['src/quantity/'], tests: ['tests/quantity/'] },
  formula: { sources: ['src/formula/'], tests: ['tests/formula/'] },
  measurement: { sources: ['src/measurement/'], tests: ['tests/measurement/'] },
  torque: { sources: ['src/torque/'], tests: ['tests/torque/'] },
  characteristics: { sources: ['src/characteristics/'], tests: ['tests/characteristics/'] },
  verdicts: { sources: ['src/checks/judge/', 'src/checks/value/'], tests: ['tests/checks/'] },
  limits: { sources: ['src/documents/limits/'], tests: ['tests/documents/limits/', 'tests/checks/limit'] },
  state: { sources: ['src/checks/state/'], tests: ['tests/checks/state'] },
  plan: { sources: ['src/plan/'], tests: ['tests/plan/'] },
  'the YAML reader': { sources: ['src/documents/yaml/'], tests: ['tests/documents/yaml/'] },
  'the writer': {
    sources: ['src/shell/write/', 'src/documents/writing/'],
    tests: ['tests/shell/write/', 'tests/documents/writing/'],
  },
};

/** Who may be asked: what runs the sources themselves, and not a program that was built from them. */
export const JURY = [
  ...['quantity', 'formula', 'measurement', 'torque', 'characteristics', 'checks', 'documents', 'plan'],
  ...['compare', 'layout', 'film', 'bench', 'oiling', 'shell/write', 'output', 'build', 'cli'],
]
  .map((folder) => `tests/${folder}/`)
  .concat(['tests/golden.test.ts', 'tests/docs.test.ts']);

/** A test of commands that starts programs sees nothing of a change in the sources, and takes its time. */
export const isAsked = (path, text) =>
  !path.startsWith('tests/cli/') || !/\b(?:runLine|spawn\w*|execFile\w*)\b/.test(text);
