import { expect, it } from 'vitest';
import { sendingsOf } from '../../../src/plan/handover/sendings.ts';
import { sessionOf } from '../../shopOf.ts';
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
  expect(part && sendingsOf(part, engine).map((sent) => sent.part)).toEqual(count === 0 ? [] : [words]);
});
