import { describe, expect, it } from 'vitest';
import { registryWith } from '../../../src/characteristics/registry.ts';
import { OPERATIONS } from '../../../src/documents/planning/operations.ts';
import { AT_THE_SHOP, followsOf } from '../../../src/plan/work/follows.ts';
import { AFTER_RENEWING } from '../../../src/plan/work/renewal/afterRenewing.ts';
import { ENGINE, type Files, limitsOf, REGISTER, sessionOf } from '../../shopOf.ts';
import { jobCalled } from '../planOf.ts';

it('whatever follows a job is said, first what the machine shop looks at', () => {
  for (const [operation, atTheShop] of Object.entries(AT_THE_SHOP)) {
    const all = followsOf({ operation: operation as keyof typeof AT_THE_SHOP, part: undefined });
    expect(atTheShop, operation).not.toEqual([]);
    expect(all.slice(0, atTheShop.length)).toEqual(atTheShop);
    expect(all.length, operation).toBeGreaterThan(atTheShop.length);
  }
  const all = OPERATIONS.flatMap((each) => followsOf({ operation: each, part: undefined }));
  expect(all.every((each) => each.length > 0)).toBe(true);
});

const shop = (found: string, blocks = '', more = ''): Files => ({
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE.replace('mains: 3', 'valves: [I, E], mains: 3'),
  'e/limits.yaml': limitsOf(`rod_bend: { wear: { max: 0.0020 } }
valve_guide_bore: { new: 0.3430 to 0.3440, wear: { max: 0.3460 } }
cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 }, largest_bore: 4.1310 }`),
  'e/session.yaml': sessionOf('teardown', blocks === '' ? '[]' : blocks, `${found}${more}`).replace(
    /readings:\n {2}\[\]/,
    'readings: []',
  ),
});

const twice = (block: string): string => `${block}\n${block}`;

describe('what must follow a part that is renewed is said where it is', () => {
  it.each([
    [
      'seen to be broken',
      'found: [{ on: valve guide 1E, is: cracked, do: renew }]\n',
      '',
      'renew valve guides',
    ],
    ['out', '', twice('- { measure: valve_guide_bore, at: { 1E: 0.3470 } }'), 'renew valve guides'],
  ])('%s', (_, found, blocks, name) =>
    expect(jobCalled(name, shop(found, blocks)).follows).toEqual(
      expect.arrayContaining(['recut the seat about the new guide, and measure its runout']),
    ),
  );

  it.each([
    [
      'of a liner that no step is left for',
      '',
      twice('- { measure: cylinder_bore, with: bore, at: { 1: 4.1315 } }'),
      'renew cylinders',
      /protrusion/,
    ],
    [
      'of a bent rod',
      '',
      twice('- { measure: rod_bend, at: { 2: 0.0060 } }'),
      'renew connecting rods',
      /^weigh/,
    ],
    [
      'of a piston',
      'found: [{ on: piston 3, is: cracked, do: renew }]\n',
      '',
      'renew pistons',
      /^ring end gaps/,
    ],
    [
      'of rod bolts',
      'found: [{ on: rod bolts, is: stretched, do: renew }]\n',
      '',
      'renew rod bolts',
      /housing/,
    ],
    [
      'of what the customer wants renewed',
      'found: [{ on: rod 2, is: fretted, do: machine }]\n',
      '',
      'renew connecting rods',
      /^weigh/,
    ],
  ])('%s', (_, found, blocks, name, said) => {
    const agreed = found.includes('machine')
      ? 'agreed: [{ by: Owner, items: [renew connecting rod 2] }]\n'
      : '';
    expect(jobCalled(name, shop(found, blocks, agreed)).follows.some((each) => said.test(each))).toBe(true);
  });

  it('and is not what follows another way to bring it back', () => {
    const files = shop('found: [{ on: rod 2, is: fretted, do: machine }]\n');
    expect(jobCalled('machine connecting rods', files).follows).toEqual([]);
  });

  it('is of parts that there are, and each has its source', () => {
    for (const [id, all] of Object.entries(AFTER_RENEWING)) {
      expect(registryWith([]).parts.find(id)?.id).toBe(id);
      expect(all.length, id).toBeGreaterThan(0);
      expect(new Set(all.map(({ text }) => text)).size, id).toBe(all.length);
      for (const { text, source } of all) {
        expect(text.length, text).toBeLessThanOrEqual(70);
        expect(source, id).toMatch(/^common practice, no source$|^TM \d/);
      }
    }
  });
});
