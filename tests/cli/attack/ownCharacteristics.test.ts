import fc from 'fast-check';
import { expect, it } from 'vitest';
import { stringify } from 'yaml';
import { FAMILIES } from '../../../src/documents/schema/document.ts';
import { HIDDEN } from '../../output/escape/hidden.ts';
import { runs } from '../../propertyRuns.ts';
import { benchFolder } from '../calling.ts';
import { COMMAND_SHOP } from '../commandShop.ts';

const bench = benchFolder();

const ids = fc.constantFrom(
  'stud_length',
  'lip_depth',
  'cylinder_bore',
  'bore',
  'max',
  '__proto__',
  'toString',
  'a b',
  '1',
  '',
);
const words = fc.oneof(fc.constantFrom('length', 'proud', 'micrometer', 'piston', 'crankshaft'), fc.string());

/** Formulas that name each other, themselves, what is built in, and nothing. */
const formula = fc
  .array(
    fc.constantFrom(
      'stud_length',
      'lip_depth',
      'cylinder_bore',
      '[1]',
      '[*]',
      ' - ',
      ' + ',
      '2',
      'mean(',
      ')',
      'toString',
      ',',
      'sqrt(',
    ),
    { maxLength: 7 },
  )
  .map((parts) => parts.join(''));

const characteristic = fc.record(
  {
    label: words,
    quantity: fc.constantFrom('length', 'angle', 'torque', 'mass', 'test', 'roughness', 'none'),
    positions: fc.constantFrom(...FAMILIES, 'engine', 'toString'),
    part: words,
    formula,
    instrument: fc.oneof(fc.constant('depth micrometer'), words),
    too_great: words,
    too_small: words,
    cycle: fc.constantFrom(360, 720, 0),
  },
  { requiredKeys: ['label', 'quantity', 'positions'] },
);

const CALLS = [
  'check',
  'check --all --detail',
  'explain stud_length',
  'explain pump stud_length',
  'plan pump',
  'trend lip_depth pump',
];

it('whatever characteristics a shop adds, they are taken or refused with a reason', async () => {
  const added = fc.dictionary(ids, characteristic, { maxKeys: 3 });
  let taken = 0;
  const property = fc.asyncProperty(added, fc.constantFrom(...CALLS), async (characteristics, call) => {
    const shop = stringify({ kind: 'shop', units: { length: 'in' }, characteristics });
    const reading =
      'readings: [{ measure: stud_length, with: dial, value: 1.5 }, { measure: lip_depth, with: dial, at: { 1: 0.25 } }]\n';
    bench.put({
      ...COMMAND_SHOP,
      'shop.yaml': shop,
      'engines/pump/sessions/own.yaml': `kind: session\nstage: machined\ndate: 2026-03-01\n${reading}`,
    });
    const { exitCode, out, err } = await bench.call(...call.split(' '));
    taken += out.includes('shop.yaml:') ? 0 : 1;
    if (exitCode === 2) expect(out + err).toMatch(/document\/|tenths: /);
    expect(out + err).not.toMatch(/\bNaN\b|undefined|\[object |^ +at /m);
    expect(out + err).not.toMatch(HIDDEN);
  });
  // Refused by the schema, and read all the same for what else there is to report.
  const stands = { stud_length: { label: '', quantity: 'angle', positions: 'toString', cycle: 0 } } as const;
  await fc.assert(property, { ...runs(3000, 20), examples: [[stands, 'check']] });
  expect(taken).toBeGreaterThan(3);
});
