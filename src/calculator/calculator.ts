import {
  absDependencies,
  addDependencies,
  cbrtDependencies,
  ceilDependencies,
  cosDependencies,
  create,
  createUnitDependencies,
  divideDependencies,
  eDependencies,
  evaluateDependencies,
  expDependencies,
  type FactoryFunctionMap,
  floorDependencies,
  formatDependencies,
  indexDependencies,
  indexTransformDependencies,
  log10Dependencies,
  logDependencies,
  type MathJsInstance,
  matrixDependencies,
  maxDependencies,
  meanDependencies,
  medianDependencies,
  minDependencies,
  multiplyDependencies,
  piDependencies,
  powDependencies,
  rangeDependencies,
  roundDependencies,
  sinDependencies,
  sqrtDependencies,
  stdDependencies,
  subsetDependencies,
  subsetTransformDependencies,
  subtractDependencies,
  sumDependencies,
  tanDependencies,
  toDependencies,
  unaryMinusDependencies,
  unaryPlusDependencies,
  unitDependencies,
} from 'mathjs';
import { addOurUnits, inItsWords } from './ourUnits.ts';

/** A value that an expression may name: a number of a unit, or one at each position. */
export interface NamedValue {
  readonly numbers: readonly number[];
  /** Empty for a plain number. */
  readonly unit: string;
  readonly isList: boolean;
}

/** The result as text, or what is wrong with the expression. */
export type Calculated = { readonly text: string } | { readonly problem: string };

export interface Calculator {
  /** What the expression names and the calculator does not know by itself. */
  readonly unknownNames: (expression: string) => readonly string[] | { readonly problem: string };
  readonly calculate: (expression: string, values: ReadonlyMap<string, NamedValue>) => Calculated;
}

/** Shop arithmetic with units. What could reach past the sum that was typed is taken away. */
export function newCalculator(): Calculator {
  const math = newMath();
  const { evaluate, parse, format, unit } = math;
  disable(math);
  const readyValue = ({ numbers, unit: name, isList }: NamedValue): unknown => {
    // What it has no unit for, such as a share in percent, is a plain number.
    const isPlain = name === '' || !isUnit(inItsWords(name), math);
    const values = numbers.map((each) => (isPlain ? each : unit(each, inItsWords(name))));
    return isList ? values : values[0];
  };
  return {
    unknownNames: (expression) =>
      trying(() => {
        const names = new Set<string>();
        parse(inItsWords(expression)).traverse((node) => {
          if ('name' in node && node.type === 'SymbolNode') names.add(String(node.name));
        });
        return [...names].filter((name) => !Object.hasOwn(math, name) && !isUnit(name, math));
      }),
    calculate: (expression, values) => {
      const scope = new Map([...values].map(([name, value]) => [name, readyValue(value)]));
      return trying(() => ({ text: format(evaluate(inItsWords(expression), scope), { precision: 10 }) }));
    },
  };
}

function newMath(): MathJsInstance {
  // Its types say of each that it may be missing, which none is.
  const math = create({
    absDependencies,
    addDependencies,
    cbrtDependencies,
    ceilDependencies,
    cosDependencies,
    createUnitDependencies,
    divideDependencies,
    eDependencies,
    evaluateDependencies,
    expDependencies,
    floorDependencies,
    formatDependencies,
    indexDependencies,
    indexTransformDependencies,
    log10Dependencies,
    logDependencies,
    matrixDependencies,
    maxDependencies,
    meanDependencies,
    medianDependencies,
    minDependencies,
    multiplyDependencies,
    piDependencies,
    powDependencies,
    rangeDependencies,
    roundDependencies,
    sinDependencies,
    sqrtDependencies,
    stdDependencies,
    subsetDependencies,
    subsetTransformDependencies,
    subtractDependencies,
    sumDependencies,
    tanDependencies,
    toDependencies,
    unaryMinusDependencies,
    unaryPlusDependencies,
    unitDependencies,
  } as FactoryFunctionMap);
  addOurUnits(math);
  return math;
}

/** Names that its own documentation advises to take from expressions of others, and what leads to them. */
const DISABLED = [
  'import',
  'createUnit',
  'evaluate',
  'parse',
  'simplify',
  'derivative',
  'compile',
  'parser',
  'config',
  'resolve',
  'reviver',
  // Lists, matrices and texts as large as anybody asks for.
  'zeros',
  'identity',
  'subset',
  'format',
];

function disable(math: MathJsInstance): void {
  const refuse = (name: string) => () => {
    throw new Error(`${name} cannot be used here`);
  };
  const disabled = Object.fromEntries(DISABLED.map((name) => [name, refuse(name)]));
  math.import({ ...disabled, range: shortRange(math) }, { override: true });
}

/** An engine has fewer positions; one as long as can be written would take all memory. */
const LONGEST_RANGE = 10_000;

function shortRange({ range }: MathJsInstance): (...ends: number[]) => unknown {
  return (start = 0, end = 0, step = 1) => {
    if (!(Math.abs((end - start) / step) < LONGEST_RANGE))
      throw new Error(`a range has at most ${LONGEST_RANGE} numbers`);
    return range(start, end, step, true);
  };
}

function isUnit(name: string, { unit }: MathJsInstance): boolean {
  try {
    unit(1, name);
    return true;
  } catch {
    return false;
  }
}

function trying<T>(act: () => T): T | { readonly problem: string } {
  try {
    return act();
  } catch (error) {
    return { problem: error instanceof Error ? error.message : String(error) };
  }
}
