// One vitest that is asked again and again: what each test file reaches, or which of some files notices a mutant. Each
// question loads the sources anew, so that a mutant of what runs while they are loaded is seen as well.

import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { BaseSequencer, createVitest } from 'vitest/node';
import { isAsked, JURY } from './areas.js';
import { loadedBy } from './loadedBy.js';
import { mutantsByFile, planOf } from './mutantSources.js';

const root = join(import.meta.dirname, '../..');
const byFile = mutantsByFile(planOf());

/** In the order in which they are asked for: the first that fails ends the run. */
class AsAsked extends BaseSequencer {
  async sort(specifications) {
    return specifications;
  }
}

const vitest = await createVitest(
  'test',
  {
    mode: 'mutants',
    watch: false,
    bail: 1,
    maxWorkers: 1,
    fileParallelism: false,
    isolate: false,
    silent: true,
    reporters: [{}],
    sequence: { sequencer: AsAsked },
    setupFiles: ['bin/mutate/setup.js', 'tests/plainSettings.ts', 'tests/everyProperty.ts'],
  },
  { server: { watch: null } },
);
const [project] = vitest.projects;

async function run(specifications) {
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications(specifications);
  vitest.state.filesMap.clear();
  const failed = testModules.filter((each) => each.state() === 'failed').map(pathOf);
  const unhandled = unhandledErrors.map((each) => `outside any test: ${each.message}`);
  return { testModules, failed: [...failed, ...unhandled] };
}

const pathOf = (module) => module.relativeModuleId;

const jurors = async () =>
  (await vitest.globTestSpecifications(JURY)).filter(({ moduleId }) =>
    isAsked(relative(root, moduleId), readFileSync(moduleId, 'utf8')),
  );

/** Which mutants each test file reaches, in what time, and which are reached as soon as their source is loaded. */
async function coverage(folder) {
  process.env.MUTANT = '0';
  process.env.MUTATE_COVERAGE = join(folder, 'reached');
  mkdirSync(process.env.MUTATE_COVERAGE);
  const { testModules, failed } = await run(await jurors());
  const why = testModules.flatMap((each) => [...each.children.allTests('failed')].map(failureOf));
  // After the first failure nothing more is run; without one a process has died.
  const notRun = testModules.filter((each) => !['passed', 'failed'].includes(each.state())).map(pathOf);
  const answers = readdirSync(process.env.MUTATE_COVERAGE).map((name) =>
    JSON.parse(readFileSync(join(process.env.MUTATE_COVERAGE, name), 'utf8')),
  );
  delete process.env.MUTATE_COVERAGE;
  const files = testModules.map((each) => {
    const path = pathOf(each);
    const { reaches = [] } = answers.find((one) => one.path === path) ?? {};
    const loads = [...loadedBy(path)].filter((one) => byFile.has(one));
    return { path, ms: Math.round(each.diagnostic().duration), reaches, loads };
  });
  return {
    files,
    failed: failed.length > 0 ? [...failed, ...why] : notRun,
    atLoad: answers.flatMap(({ atLoad }) => atLoad),
  };
}

const failureOf = (test) => `${test.fullName}: ${test.result().errors?.[0]?.message}`;

async function judge({ id, files }) {
  process.env.MUTANT = String(id);
  const { failed } = await run(files.map((path) => project.createSpecification(join(root, path))));
  return { killedBy: failed[0] };
}

// Whoever asked is gone.
process.on('disconnect', () => process.exit());

process.on('message', async (question) => {
  process.send(await (question.coverage === undefined ? judge(question) : coverage(question.coverage)));
});
