import { describe, expect, it } from 'vitest';
import { withLastKnown } from '../../../src/checks/state/lastKnown.ts';
import { unitNamed } from '../../../src/quantity/units.ts';
import { reportOf } from '../../shopOf.ts';
import { bores, endPlay, engine, journals, type Told } from './standing.ts';

/** What the state says of what it lacks. */
const lacking = (...sessions: readonly Told[]): readonly string[] =>
  (reportOf(engine(...sessions)).state?.findings ?? [])
    .filter(({ code }) => code === 'session/unmeasured')
    .map(({ message }) => message);

const NOW: Told = ['teardown', endPlay('0.009')];
const NEVER = [
  'main bearing clearance has limits and was not measured',
  'cylinder taper has limits and was not measured',
];

describe('what was not measured says what it was, when something of it was measured before', () => {
  it.each<[string, readonly Told[], string]>([
    ['nothing', [], ''],
    ['one figure', [['trial', journals('1: 2.9985')]], '; last known 2.9985 in on 2026-03-01'],
    [
      'one figure at two positions',
      [['trial', journals('1: 2.9985, 2: 2.9985')]],
      '; last known 2.9985 in on 2026-03-01',
    ],
    [
      'several positions, from least to greatest',
      [['trial', journals('1: 2.9986, 2: 2.9983, 3: 2.9985')]],
      '; last known 2.9983 to 2.9986 in on 2026-03-01',
    ],
    [
      'of two days, the earlier day first',
      [
        ['trial', journals('2: 2.9984, 3: 2.9986')],
        ['rebuild', journals('1: 2.9985, 3: 2.9987')],
      ],
      '; last known 2.9984 to 2.9987 in on 2026-03-01 and 2026-03-02',
    ],
    [
      'of each position the latest alone',
      [
        ['trial', journals('1: 2.9981')],
        ['rebuild', journals('1: 2.9985')],
      ],
      '; last known 2.9985 in on 2026-03-02',
    ],
    [
      'of an earlier position that is first in the engine, from a later day',
      [
        ['trial', journals('1: 2.9985, 2: 2.9984')],
        ['rebuild', journals('1: 2.9985')],
      ],
      '; last known 2.9984 to 2.9985 in on 2026-03-01 and 2026-03-02',
    ],
  ])('%s', (_, before, was) => {
    expect(lacking(...before, NOW)).toEqual([
      `main journal diameter has limits and was not measured${was}`,
      ...NEVER,
    ]);
  });

  it('by itself: a journal and a bore are no clearance, though the clearance is known by both', () => {
    const both: Told = ['trial', `${journals('1: 2.9985')}\n${bores('1: 3.0013')}`];
    expect(lacking(both, NOW)).toEqual([
      'main journal diameter has limits and was not measured; last known 2.9985 in on 2026-03-01',
      'main bearing clearance has limits and was not measured; last known 0.0028 in on 2026-03-01',
      'cylinder taper has limits and was not measured',
    ]);
  });
});

describe('what is known from before is said of nothing but what was not measured', () => {
  const report = reportOf(engine(['trial', journals('1: 2.9985')], NOW));
  const { lastKnown = [], findings = [] } = report.state ?? {};
  const [journal] = lastKnown;
  const finding = findings.find(({ measure }) => measure === 'main_journal_diameter');
  if (journal === undefined || finding === undefined) throw new Error('no journal');
  const bare = { ...finding, message: 'it was not measured' };
  const said = (each: typeof bare, known: typeof lastKnown): readonly string[] =>
    withLastKnown([each], known, () => unitNamed('mm')).map(({ message }) => message);

  it('in the unit that is asked for', () => {
    expect(said(bare, lastKnown)).toEqual(['it was not measured; last known 76.162 mm on 2026-03-01']);
  });

  it.each([
    ['of a finding of another kind', { ...bare, code: 'reading/out' }, lastKnown],
    ['of another characteristic', { ...bare, measure: 'crankpin_diameter' }, lastKnown],
    ['where nothing is known', bare, []],
    ['where what is known has no value', bare, [{ ...journal, row: { ...journal.row, routes: [] } }]],
  ])('not %s', (_, each, known) => expect(said(each, known)).toEqual(['it was not measured']));
});

describe('what was read before work on its part, and not again, is the last that is known', () => {
  const polished: Told = ['machined', `${journals('2: 2.9982')}\n  - { work: polished, on: main journal 2 }`];
  const known = (...sessions: readonly Told[]): readonly string[] =>
    (reportOf(engine(...sessions)).state?.lastKnown ?? []).map(
      ({ row, date }) =>
        `${row.characteristic.id} ${row.position.name}: ${row.routes[0]?.route.written[0]} on ${date}`,
    );

  it('by its own day, and not an older one', () => {
    expect(known(['teardown', journals('1: 2.9985, 2: 2.9984')], polished)).toEqual([
      'main_journal_diameter 2: 2.9982 on 2026-03-02',
    ]);
  });

  it('in the only session', () => {
    expect(
      known(['machined', `${journals('1: 2.9985, 2: 2.9982')}\n  - { work: polished, on: main journal 2 }`]),
    ).toEqual(['main_journal_diameter 2: 2.9982 on 2026-03-01']);
  });

  it('and no more once it was read again in the same session', () => {
    const again: Told = ['machined', `${polished[1]}\n${journals('2: 2.9981')}`];
    expect(known(['teardown', journals('1: 2.9985, 2: 2.9984')], again)).toEqual([]);
  });
});
