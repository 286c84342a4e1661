import { parseSync } from 'vite';

/** What stands in place of an operator. */
const OPERATORS = {
  '+': ['-'],
  '-': ['+'],
  '*': ['/'],
  '/': ['*'],
  '%': ['*'],
  '**': ['*'],
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
  '&&': ['||'],
  '||': ['&&'],
  '??': ['&&'],
};

/** What is called in place of a method; of an empty name the call is left out and its object stands alone. */
const METHODS = {
  min: 'max',
  max: 'min',
  some: 'every',
  every: 'some',
  floor: 'ceil',
  ceil: 'floor',
  startsWith: 'endsWith',
  endsWith: 'startsWith',
  filter: '',
  slice: '',
  trim: '',
  toSorted: '',
  sort: '',
  toReversed: '',
  reverse: '',
};

/** Of a type, of an import, of a name: nothing that runs. */
const isNoCode = ({ type }) => /^TS(?!As|NonNull|Satisfies)|^Import|^Export(?:All|Default)/.test(type);

/** Every mutant of a source: what it replaces, from `start` to `end`, and by what. */
export function mutantsOf(file, text) {
  const { program, errors } = parseSync(file, text);
  if (errors.length > 0) throw new Error(`${file}: ${errors[0].message}`);
  const found = [];
  const add = ({ start, end }, replacement, what) => found.push({ file, start, end, replacement, what });
  const visit = (node, parent) => {
    if (isNoCode(node)) return;
    const source = (part) => text.slice(part.start, part.end);
    MUTATORS[node.type]?.(node, { add, source, parent });
    for (const [key, child] of Object.entries(node)) {
      if (key === 'key' && !node.computed) continue;
      for (const each of [child].flat()) if (typeof each?.type === 'string') visit(each, node);
    }
  };
  visit(program, undefined);
  return found;
}

function exchangeOperator(node, { add, source }) {
  for (const operator of OPERATORS[node.operator] ?? [])
    add(
      node,
      `(${source(node.left)}) ${operator} (${source(node.right)})`,
      `${node.operator} becomes ${operator}`,
    );
}

function decide({ test }, { add }) {
  if (test === null || test === undefined) return;
  add(test, 'true', 'always');
  add(test, 'false', 'never');
}

const MUTATORS = {
  BinaryExpression: exchangeOperator,
  LogicalExpression: exchangeOperator,
  ConditionalExpression: decide,
  IfStatement: decide,
  WhileStatement: ({ test }, { add }) => add(test, 'false', 'never'),
  UnaryExpression(node, { add, source }) {
    if (['!', '-'].includes(node.operator)) add(node, source(node.argument), `without ${node.operator}`);
  },
  UpdateExpression(node, { add, source }) {
    const operator = node.operator === '++' ? '--' : '++';
    const argument = source(node.argument);
    add(
      node,
      node.prefix ? operator + argument : argument + operator,
      `${node.operator} becomes ${operator}`,
    );
  },
  AssignmentExpression(node, { add, source }) {
    const other = { '+=': '-=', '-=': '+=', '*=': '/=', '/=': '*=', '??=': '=' }[node.operator];
    if (other !== undefined)
      add(node, `${source(node.left)} ${other} ${source(node.right)}`, `${node.operator} becomes ${other}`);
  },
  Literal(node, { add, parent }) {
    const { value } = node;
    if (typeof value === 'boolean') add(node, `${!value}`, `${value} becomes ${!value}`);
    if (typeof value === 'number') add(node, `${value + 1}`, 'one more');
    if (typeof value === 'bigint') add(node, `${value + 1n}n`, 'one more');
    if (typeof value === 'string' && value !== '' && parent.type !== 'ExpressionStatement')
      add(node, "''", 'no text');
  },
  TemplateLiteral(node, { add, parent }) {
    if (parent.type !== 'TaggedTemplateExpression') add(node, "''", 'no text');
  },
  ArrayExpression(node, { add }) {
    if (node.elements.length > 0) add(node, '[]', 'no items');
  },
  CallExpression(node, { add, source }) {
    const { callee } = node;
    // Out of a chain of `?.` no link can be taken.
    if (callee.type !== 'MemberExpression' || callee.computed || source(node).includes('?.')) return;
    const { name } = callee.property;
    if (!Object.hasOwn(METHODS, name)) return;
    const object = source(callee.object);
    const words = source({ start: callee.end, end: node.end });
    if (METHODS[name] === '') add(node, object, `without ${name}`);
    else add(node, `${object}.${METHODS[name]}${words}`, `${name} becomes ${METHODS[name]}`);
  },
  ExpressionStatement(node, { add }) {
    if (['CallExpression', 'AssignmentExpression'].includes(node.expression.type))
      add(node.expression, 'undefined', 'left out');
  },
};
