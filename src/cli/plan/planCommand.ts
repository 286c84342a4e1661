import { type Command, Option } from 'commander';
import { PLAN_FORMATS } from '../../output/plan/formats/index.ts';
import type { World } from '../../shell/world.ts';
import { formatOption } from '../format/formatChoice.ts';
import { ENGINE_OPTION, helpEnd } from '../helpWords.ts';
import { onlyOneEngine } from '../usage.ts';

/** `tenths plan [engine]`. */
export function addPlan(program: Command, world: World, done: (exitCode: number) => void): void {
  program
    .command('plan')
    .description('what is to be done to an engine: grind, bore, renew, measure again, in the order of work')
    .argument('[engine]', 'the engine; unless given, the one of this folder, or the only one of the shop')
    .option('--engine <name>', ENGINE_OPTION)
    .addOption(
      only(new Option('--for <reader>', 'a page to hand over').choices(['customer', 'machine-shop'])),
    )
    .addOption(
      only(
        new Option(
          '--fit',
          'choose shells, pistons, a crankshaft, thrust washers and the head gasket from the stock',
        ),
      ),
    )
    .addOption(only(new Option('--order', 'what has to be bought, now and after measuring')))
    .addOption(only(new Option('--closing', 'what is open before the engine is closed up')))
    .option('--session <name>', 'the engine as this session left it, instead of as it is now')
    .option('--at <revision>', 'the documents of this git revision instead of those on disk')
    .addOption(formatOption(PLAN_FORMATS))
    .addHelpText('after', PLAN_END)
    .action(async (word: string | undefined, options) => {
      const { plan } = await import('./plan.ts');
      done(await plan(onlyOneEngine(word, options.engine), options, world));
    });
}

const PAGES: readonly string[] = ['for', 'fit', 'order', 'closing'];

/** One page a call. */
const only = (option: Option): Option =>
  option.conflicts(PAGES.filter((each) => each !== option.attributeName()));

const PLAN_END = helpEnd({
  examples: [
    ['tenths plan reservoir-pump-2'],
    ['tenths plan reservoir-pump-2 --session teardown', 'as the teardown left it'],
    ['tenths plan --for customer --format markdown > offer.md'],
    ['tenths plan --for machine-shop', 'agreed work only'],
    ['tenths plan --order --format csv:order.csv', 'only an order list is a spreadsheet'],
    ['tenths plan --closing'],
  ],
  notes: [
    `Sizes come from the limits or from plan: in shop.yaml; others are marked as assumed. Parts come from documents of
kind: stock and kind: part. The maker's manual comes first.`,
  ],
  failing: 'something must be done or is open',
});
