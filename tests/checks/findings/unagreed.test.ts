import { expect, it } from 'vitest';
import { veeEngine } from '../../plan/veeEngine.ts';
import { reportOf, sessionOf } from '../../shopOf.ts';

const unagreed = (items: string, work: string): readonly string[] =>
  (
    reportOf(
      veeEngine('crankpin_diameter: { new: 55.980 to 56.000, wear: { min: 55.955 } }', {
        'e/a.yaml': sessionOf(
          'teardown',
          '- { measure: crankpin_diameter, at: { 1: 55.940, 2: 55.940, 3: 55.940 } }',
          `agreed: { by: Owner, date: 2026-02-05, items: [${items}] }
sent: { part: crankshaft, to: North grinding, date: 2026-02-06, work: [${work}] }
`,
        ),
      }),
    ).state?.findings ?? []
  ).flatMap(({ code, message }) => (code === 'plan/unagreed' ? [message] : []));

it.each([
  ['grind crankpins 1 to 3', 'grind crankpins'],
  ['grind crankpins', 'grind crankpins 1 to 3'],
  ['grind crankpins 1 to 3', 'regrind rod journals'],
  ['grind crankpin 1, grind crankpins 2 to 3', 'grind crankpins'],
  ['grind main journals 1 to 4', 'grind mains'],
  ['grind mains, grind crankpins', 'grind crankshaft'],
  ['grind crankshaft', 'grind mains, grind crankpins'],
  ['renew valve guides 1 I to 6 E', 'renew valve guides'],
  ['surface cylinder head', 'skim head'],
])('a yes to %s is one to what is ordered as %s', (items, work) => expect(unagreed(items, work)).toEqual([]));

it.each([
  ['grind main journals', 'grind crankpins'],
  ['straighten crankshaft', 'grind crankshaft'],
])('a yes to %s is none to %s', (items, work) =>
  expect(unagreed(items, work)).toEqual([
    `${work} was ordered from North grinding, and no document says that the customer agreed`,
  ]),
);

it.each([
  ['grind crankpins 1 to 2', 'grind crankpins'],
  ['grind crankpin 1, grind crankpin 3', 'grind crankpins'],
  ['grind mains', 'grind crankshaft'],
  ['renew valve guide 1 E', 'renew valve guides'],
])('a yes to %s is one to some of %s', (items, work) =>
  expect(unagreed(items, work)).toEqual([
    `${work} was ordered from North grinding, and the customer agreed to ${items} alone: order that, or ask`,
  ]),
);
