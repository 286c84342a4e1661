import type { Calculator } from '../../calculator/calculator.ts';
import { didYouMean } from '../../diagnostic/suggestion.ts';
import { writtenLines } from '../../output/escape/line.ts';
import type { World } from '../../shell/world.ts';
import { openEngine } from '../shop/resolveShop.ts';
import { onlyOneEngine, UsageError } from '../usage.ts';
import { valuesOf } from './valuesOf.ts';

export interface CalcOptions {
  readonly engine?: string | undefined;
  readonly at?: string | undefined;
}

/** Prints what an expression comes to; the exit code. An engine is only read where the expression names something of one. */
export async function calc(
  expression: string,
  word: string | undefined,
  options: CalcOptions,
  world: World,
): Promise<number> {
  const calculator = await calculatorOf(world);
  const names = calculator.unknownNames(expression);
  if ('problem' in names) throw wrong(expression, names.problem);
  const isEngineAsked = names.length > 0 || word !== undefined || options.engine !== undefined;
  const opened = isEngineAsked
    ? openEngine(onlyOneEngine(word, options.engine), world, options.at)
    : undefined;
  const values = opened === undefined ? new Map() : valuesOf(opened.engine, opened.registry);
  const unknown = names.find((name) => !values.has(name));
  if (unknown !== undefined) {
    throw new UsageError(
      `${unknown} is not a unit, a function, or anything that ${opened?.engine.document.name} states or measures`,
      didYouMean(unknown, [...values.keys()]) ?? 'name a size or a characteristic by its id, such as bore',
    );
  }
  const result = calculator.calculate(expression, values);
  if ('problem' in result) throw wrong(expression, result.problem);
  world.out.write(writtenLines(result.text.split('\n')));
  return opened?.hasProblems === true ? 2 : 0;
}

async function calculatorOf({ calculator }: World): Promise<Calculator> {
  if (calculator === undefined) throw new RangeError('a world without a calculator');
  return calculator();
}

const wrong = (expression: string, problem: string): UsageError =>
  new UsageError(
    `${expression} cannot be worked out: ${problem}`,
    'write a sum with units, such as "0.030 in to mm"',
  );
