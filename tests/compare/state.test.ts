import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Row } from '../../src/checks/judge/row.ts';
import { keyOf } from '../../src/compare/state.ts';
import { runs } from '../propertyRuns.ts';
import { reportOf, session, shop, stateOfFiles } from './shop.ts';

const MEASURED = [
  ['main_journal_diameter', 'mic', '3.247'],
  ['main_bearing_bore', 'bore', '3.250'],
  ['main_bearing_clearance', 'bore', '0.003'],
] as const;

/** For each characteristic the last digit at each of the three mains, or nothing. */
const readings = fc.array(fc.array(fc.option(fc.nat(9)), { minLength: 3, maxLength: 3 }), {
  minLength: MEASURED.length,
  maxLength: MEASURED.length,
});

function documentOf(digits: readonly (readonly (number | null)[])[], month: number): string {
  const blocks = MEASURED.flatMap(([measure, instrument, start], index) => {
    const at = (digits[index] ?? []).flatMap((digit, main) =>
      digit === null ? [] : [`${main + 1}: ${start}${digit}`],
    );
    return at.length === 0 ? [] : [[measure, instrument, `{ ${at.join(', ')} }`] as [string, string, string]];
  });
  return session(`stage: service; date: 2026-0${month}-01`, blocks);
}

const about = (row: Row) => [
  row.routes[0]?.mean,
  row.routes[0]?.route.readIn.path,
  row.judgement.verdict,
  row.lastDigit,
  row.concessions,
];

it('what an engine is found to measure is what holds of its sessions, judged as a check judges it', () => {
  fc.assert(
    fc.property(fc.array(readings, { minLength: 1, maxLength: 4 }), (sessions) => {
      const documents = sessions.map((digits, index) => [
        `engine/s${index}.yaml`,
        documentOf(digits, index + 1),
      ]);
      const files = shop(Object.fromEntries(documents));
      const standing = reportOf(files).state?.rows ?? [];
      const expected = standing
        .filter(({ routes }) => routes.length > 0)
        .map((row) => [keyOf(row), about(row)] as const);
      const found = [...stateOfFiles(files).values].map(([key, { row }]) => [key, about(row)] as const);
      expect(new Map(found)).toEqual(new Map(expected));
    }),
    runs(150, 15),
  );
});
