import { describe, expect, it } from 'vitest';
import { reportWithPlan } from '../../../src/plan/reportWithPlan.ts';
import { ENGINE, sessionOf, shopOf } from '../../shopOf.ts';

/** What is said of boxes, of a session that ticks one in a shop that may require others. */
const said = (confirmed: string, required = ''): readonly string[] => {
  const { engine, registry } = shopOf({
    'shop.yaml': `kind: shop\nunits: { length: in }\n${required === '' ? '' : `plan: { required: [${required}] }\n`}`,
    'e/engine.yaml': ENGINE,
    'e/session.yaml': sessionOf(
      'rebuild',
      '- { measure: crankshaft_end_play, value: 0.008 }',
      confirmed === '' ? '' : `confirmed: { what: "${confirmed}", by: RK }\n`,
    ),
  });
  if (engine === undefined) throw new Error('not sound');
  return (reportWithPlan(engine, registry, {}).state?.findings ?? [])
    .filter(({ code }) => code === 'plan/unknown-work')
    .map(({ message, place }) => `${place.path.replace(/.*\//, '')}: ${message}`);
};

describe('a box that is ticked', () => {
  it.each([
    ['second intials', 'did you mean second initials?'],
    ['relesed', 'did you mean released?'],
    ['bananas', "if it is the shop's own, require it: plan: { required: [bananas] } in shop.yaml"],
  ])('%s is none of the page: %s', (what, help) => {
    expect(said(what)).toEqual([
      `session.yaml: confirmed: ${what}: the page before closing up has no such box; ${help}`,
    ]);
  });

  it.each([
    ['second initials', ''],
    ['Second  initials', ''],
    ['released', ''],
    ["main caps tightened by the maker's manual", ''],
    ["big end caps tightened by the maker's manual", ''],
    ['left out on purpose at rebuild: main bearing clearance 3: plugged', ''],
    ['bananas counted', 'bananas counted'],
  ])('%s is one of it, or was', (what, required) => expect(said(what, required)).toEqual([]));
});

describe('a box that the shop requires', () => {
  it('in nearly the words of a usual one is asked about', () => {
    expect(said('', 'second intials')).toEqual([
      'shop.yaml: required: second intials: this adds a box beside the usual one, second initials; did you mean that one?',
    ]);
  });

  it.each(['second initials', 'crankshaft turned by hand after each rod', 'customer called'])(
    '%s is a box',
    (required) => expect(said('', required)).toEqual([]),
  );
});
