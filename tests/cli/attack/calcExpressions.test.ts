import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { anyCharacter } from '../../anyCharacter.ts';
import { HOSTILE } from '../../formula/hostileFormulas.ts';
import { HIDDEN } from '../../output/escape/hidden.ts';
import { NAUGHTY } from '../../output/escape/hostileTexts.ts';
import { runs } from '../../propertyRuns.ts';
import { tried } from '../../tries.ts';
import { benchFolder } from '../calling.ts';
import { COMMAND_SHOP } from '../commandShop.ts';
import { sample } from './attacks.ts';

const bench = benchFolder();

/** What reaches out of arithmetic where a library lets it. */
const ESCAPES = [
  'import({a: 1})',
  'createUnit("made")',
  'evaluate("1+1")',
  'parse("1")',
  'cos.constructor("return process")()',
  'f(x) = x; f.constructor("return process")()',
  'a = 5',
  'bore.constructor',
  'bore["constructor"]',
  '[1][1].constructor',
  '{a: 1}.a',
  'range(1, 1e9)',
  '"text"',
  'print("$a", {a: 1})',
  'x -> x',
  '1:1e9',
  'ones(1e5, 1e5)',
  'identity(1e5)',
  'subset([1], index(1e8), 5)',
  'format(pi, { notation: "fixed", precision: 1e9 })',
  '2^2^2^2^2^2',
  '9^9^9^9^9',
  'e^1e6',
  '1e400',
  'sqrt(-1)',
  '1/0',
  '0/0',
  '(1:1e7) * 2',
  'factorial(1e6)',
  'bignumber(1)',
  'help(sin)',
];

async function expectContained(expression: string): Promise<void> {
  const { exitCode, out, err } = await bench.call('calc', '--', expression, 'pump');
  expect([0, 2]).toContain(exitCode);
  if (exitCode === 2) expect(err).toMatch(/^tenths: /);
  expect(out + err).not.toMatch(/function \w*\(|native code|\[object |^ +at /m);
  expect(out + err).not.toMatch(HIDDEN);
}

it('an expression is worked out or refused in words, and reaches nothing but numbers', async () => {
  bench.put(COMMAND_SHOP);
  const before = Object.getOwnPropertyNames(Object.prototype);
  const others = [...HOSTILE, ...NAUGHTY].filter((text) => !text.includes('\0'));
  const asked = [...ESCAPES, ...sample(others, 4)];
  for (const text of asked) await expectContained(text);
  tried(asked.length);
  expect(Object.getOwnPropertyNames(Object.prototype)).toEqual(before);
  expect(existsSync(join(bench.folder(), 'made'))).toBe(false);
});

it('any row of names, signs and numbers is', async () => {
  bench.put(COMMAND_SHOP);
  const part = fc.constantFrom(
    'bore',
    'cylinder_bore',
    'max(',
    'sqrt(',
    'mean(',
    '(',
    ')',
    '[',
    ']',
    ',',
    '+',
    '-',
    '*',
    '/',
    '^',
    ':',
    ' to ',
    ' in',
    ' mm',
    ' lbf ft',
    '1',
    '0.5',
    '1e3',
    'degC',
    'toString',
    '"',
    "'",
    '=',
    ';',
  );
  const text = fc.oneof(
    fc.array(part, { maxLength: 12 }).map((parts) => parts.join('')),
    fc.string({ unit: anyCharacter, maxLength: 20 }).filter((each) => !each.includes('\0')),
  );
  await fc.assert(fc.asyncProperty(text, expectContained), runs(1_000, 25));
});
