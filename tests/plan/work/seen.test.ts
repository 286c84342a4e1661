import { describe, expect, it } from 'vitest';
import { jobsOf } from '../../../src/plan/work/jobs.ts';
import { titleOf } from '../../../src/plan/work/jobTitle.ts';
import { ENGINE, type Files, limitsOf, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

const BORES = '- { measure: cylinder_bore, at: { 1: 4.1255, 2: 4.1255, 3: 4.1255, 4: 4.1255 } }\n'.repeat(2);

const shop = (found: string, later = ''): Files => ({
  'shop.yaml': 'kind: shop\nunits: { length: in }\n',
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf('cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }'),
  'e/session.yaml': sessionOf('teardown', BORES, `found: [${found}]\n`),
  ...(later === '' ? {} : { 'e/z.yaml': `kind: session\nstage: machined\ndate: 2026-03-01\n${later}\n` }),
});

function planOf(found: string, later?: string): readonly string[] {
  const context = contextOf(shop(found, later));
  return jobsOf(context)
    .filter(({ serves }) => serves === undefined)
    .map((job) =>
      [
        titleOf(job, context.engine.document),
        ...job.found.map(({ on, is }) => `${on.join(', ')}: ${is}`),
      ].join('; '),
    );
}

describe('what one line says of several parts is a job for each, and each says its own', () => {
  it.each<readonly [string, readonly string[]]>([
    [
      '{ on: [cylinder 1, head], is: scored, do: machine, depth: 0.002 }',
      ['bore cylinders 1 to 4; cylinder 1: scored', 'machine cylinder head; head: scored'],
    ],
    [
      '{ on: [head, cylinder 1], is: scored, do: machine, depth: 0.002 }',
      ['bore cylinders 1 to 4; cylinder 1: scored', 'machine cylinder head; head: scored'],
    ],
    [
      '{ on: [piston 1, crankpin 2, piston 3, oil cooler], is: cracked, do: renew }',
      [
        'renew pistons 1, 3; piston 1, piston 3: cracked',
        'renew crankshaft; crankpin 2: cracked',
        'renew oil cooler; oil cooler: cracked',
      ],
    ],
    [
      '{ on: bearings, is: wiped, do: renew }',
      [
        'renew main shells; bearings: wiped',
        'renew rod shells; bearings: wiped',
        'renew thrust washer; bearings: wiped',
      ],
    ],
    [
      '{ on: [piston 1, crankshaft], is: blue }',
      ['decide about piston 1, crankshaft; piston 1, crankshaft: blue'],
    ],
  ])('%s', (found, lines) => expect(planOf(found)).toEqual(lines));

  it('and is dealt with each by itself', () => {
    const both = '{ on: [cylinder 1, head], is: scored, do: machine, depth: 0.002 }';
    const bored = `machined: [{ part: cylinders }]\nreadings:\n${BORES.replace(/^/gm, '  ')}`;
    expect(planOf(both, bored)).toEqual(['machine cylinder head; head: scored']);
    expect(planOf(both, `machined: [{ part: head }]\nreadings: []`)).toEqual([
      'bore cylinders 1 to 4; cylinder 1: scored',
    ]);
    expect(planOf(both, `machined: [{ part: head }, { part: cylinders }]\nreadings: []`)).toEqual([
      'measure',
    ]);
  });
});
