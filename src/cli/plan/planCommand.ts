import { type Command, Option } from 'commander';
import type { World } from '../../shell/world.ts';
import { ENGINE_OPTION, helpEnd } from '../helpWords.ts';
import { onlyOneEngine } from '../usage.ts';

/** `tenths plan [engine]`. */
export function addPlan(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('plan')
    .description(
      'what brings an engine back: what to grind, bore, renew or measure again, in the order of work',
    )
    .argument('[engine]', 'the engine; else the one around this folder, or the only one of the shop')
    .option('--engine <name>', ENGINE_OPTION)
    .option('--session <name>', 'as this session left it, instead of where it stands now')
    .option('--at <revision>', 'the documents of this git revision instead of those on disk')
    .addOption(
      new Option('--format <format>', 'how to print').choices(['text', 'markdown', 'json']).default('text'),
    )
    .addHelpText('after', PLAN_END)
    .action(async (word: string | undefined, options) => {
      const { plan } = await import('./plan.ts');
      done(plan(onlyOneEngine(word, options.engine), options, world));
    });
}

const PLAN_END = helpEnd({
  examples: [
    ['tenths plan reservoir-pump-2'],
    ['tenths plan reservoir-pump-2 --session teardown', 'as the teardown left it'],
    ['tenths plan --format markdown > plan.md'],
  ],
  notes: [
    `Sizes come from the limits, from plan: in shop.yaml, or are marked assumed. The maker's manual comes first.`,
  ],
  failing: 'something must be done',
});
