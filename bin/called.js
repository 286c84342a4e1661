import { parseArgs } from 'node:util';

/** What a command was called with. Where that asks for the usage alone, or is wrong, it is said and the command ends. */
export function calledWith(usage, options, more = {}) {
  const { values, positionals, shown, wrong } = readCall(usage, options, more);
  if (shown !== undefined) {
    process.stdout.write(shown);
    process.exit(0);
  }
  if (wrong !== undefined) endWrongly(wrong);
  return { values, positionals };
}

/** Those whose name contains a text: a name that nothing bears would stand for a run of nothing. */
export function named(part, all, what) {
  const found = all.filter((name) => name.includes(part));
  if (found.length === 0) endWrongly(`no ${what} is called '${part}'; there are ${all.join('; ')}`);
  return found;
}

function endWrongly(wrong) {
  process.stderr.write(`${wrong}\n`);
  process.exit(2);
}

/** Options as `parseArgs` takes them, and those of type `number`. */
export function readCall(usage, options, more) {
  const known = { ...options, help: { type: 'boolean', short: 'h', default: false } };
  try {
    const { values, positionals } = parseArgs({ ...more, options: mapped(known, asText) });
    if (values.help) return { shown: `${usage.trim()}\n` };
    return { values: { ...values, ...mapped(numbersOf(known, values), numberOf) }, positionals };
  } catch (error) {
    return { wrong: `${error.message.split('. ')[0]}; --help lists the options` };
  }
}

const mapped = (object, how) =>
  Object.fromEntries(Object.entries(object).map(([name, value]) => [name, how(value, name)]));

const asText = ({ type, ...rest }) => ({ ...rest, type: type === 'number' ? 'string' : type });

const numbersOf = (known, values) =>
  Object.fromEntries(Object.entries(values).filter(([name]) => known[name].type === 'number'));

function numberOf(text, name) {
  if (!(Number(text) > 0)) throw new Error(`--${name} takes a number above zero, not '${text}'`);
  return Number(text);
}
