/** What is attacked, and the test files that do it. */
export const KINDS = {
  'mutants of documents': [
    'tests/cli/attack/mutants.test.ts',
    'tests/documents/yaml/loader.property.test.ts',
    'tests/documents/writing/splice.test.ts',
  ],
  'YAML test suite': ['tests/documents/yaml/suite.test.ts'],
  'forms of scalars': ['tests/documents/yaml/scalar.test.ts'],
  'YAML that takes time or memory': ['tests/documents/yaml/exhausting.test.ts', 'tests/cli/hostile.test.ts'],
  'patterns of schemas': ['tests/documents/patterns.test.ts', 'tests/documents/schema.test.ts'],
  formulas: ['tests/formula/hostile.test.ts', 'tests/formula/against-mathjs.test.ts'],
  'own characteristics': ['tests/cli/attack/ownCharacteristics.test.ts'],
  'texts in every output': [
    'tests/cli/attack/attackedShop.test.ts',
    'tests/cli/attack/freeTexts.test.ts',
    'tests/cli/attack/hostileNames.test.ts',
    'tests/cli/attack/recordPrompt.test.ts',
    'tests/cli/report/hostile.test.ts',
    'tests/output/escape/',
  ],
  'words of a call': ['tests/cli/attack/wordsOfCall.test.ts'],
  calc: ['tests/cli/attack/calcExpressions.test.ts', 'tests/calculator/calculator.test.ts'],
  'git settings and environments': ['tests/shell/git/git.test.ts', 'tests/cli/attack/environments.test.ts'],
  'trees and revisions': ['tests/cli/hostileRevisions.test.ts', 'tests/shell/git/revisionStore.test.ts'],
  'paths and links': [
    'tests/shell/discover/safeRead.test.ts',
    'tests/cli/linked.test.ts',
    'tests/cli/oddNames.test.ts',
  ],
  'time against problems': ['tests/cli/attack/manyProblems.test.ts', 'tests/bench/import/wrongRows.test.ts'],
};
