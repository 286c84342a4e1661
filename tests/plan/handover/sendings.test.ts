import { describe, expect, it } from 'vitest';
import { sendingsOf } from '../../../src/plan/handover/sendings.ts';
import { reportWithPlan } from '../../../src/plan/reportWithPlan.ts';
import { sessionOf, shopOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

it.each([
  ['crankshaft', 'crankshaft', 1],
  ['crankshaft', 'main journals', 1],
  ['crankshaft', 'Crankshaft with its gear', 1],
  ['crankshaft', 'head', 0],
  ['crankshaft', 'oil cooler', 0],
])('what was sent of the %s: %s', (id, words, count) => {
  const { engine, registry } = contextOf({
    'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { cylinders: 2, mains: 3, crankpins: 2 }\n',
    'e/session.yaml': sessionOf(
      'teardown',
      '- { measure: crankshaft_end_play, value: 0.2 mm }',
      `sent: { part: ${words}, to: North grinding, date: 2026-02-10, work: [grind main journals] }\n`,
    ),
  });
  const part = registry.parts.find(id);
  expect(part && sendingsOf({ part, at: undefined }, engine).map((sent) => sent.part)).toEqual(
    count === 0 ? [] : [words],
  );
});

describe('what was sent as a part that the engine has not', () => {
  const files = (part: string, work: string) => ({
    'e/engine.yaml': 'kind: engine\nname: Pump\nlayout: { cylinders: 2, mains: 3, crankpins: 2 }\n',
    'e/session.yaml': sessionOf(
      'teardown',
      '- { measure: crankshaft_end_play, value: 0.2 mm }',
      `sent: { part: ${part}, to: North grinding, date: 2026-02-10, work: [${work}] }\n`,
    ),
  });
  const said = (part: string, work: string): readonly string[] => {
    const { engine, registry } = shopOf(files(part, work));
    if (engine === undefined) throw new Error('not sound');
    const { state } = reportWithPlan(engine, registry, {});
    return (state?.findings ?? [])
      .filter(({ code }) => code === 'plan/unknown-work')
      .map(({ message }) => message);
  };

  it.each([
    ['grind main journals', 'crankshaft'],
    ['grind mains', 'crankshaft'],
    ['bore cylinders', 'block'],
  ])('with %s is asked about', (work, carried) => {
    expect(said('bananas', work)).toEqual([
      `sent: bananas is no part of the engine, and ${work} is done on the ${carried}; write \`part: ${carried}\``,
    ]);
  });

  it.each([
    ['crankshaft', 'grind main journals'],
    ['Crankshaft with its gear', 'grind main journals'],
    ['oil cooler', 'flush it'],
  ])('%s, to %s: nothing to ask', (part, work) => expect(said(part, work)).toEqual([]));

  it.each([
    ['crankshat', 'did you mean crankshaft?'],
    ['rod 7', 'the engine has no connecting rod 7'],
  ])('%s is refused', (part, help) => {
    const { diagnostics } = shopOf(files(part, 'grind main journals'));
    expect(diagnostics.map((each) => `${each.message} ${each.help}`)).toEqual([
      expect.stringContaining(help),
    ]);
  });
});
