import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Finding } from '../../../src/checks/finding.ts';
import { concessionKinds } from '../../../src/checks/findings/concessions.ts';
import { conditionKinds } from '../../../src/checks/findings/conditions/conditions.ts';
import { readingKinds } from '../../../src/checks/findings/readings.ts';
import { sessionKinds } from '../../../src/checks/judge/session.ts';
import { runs } from '../../propertyRuns.ts';
import { reportOf } from '../../shopOf.ts';
import { filesOf, randomShop } from '../randomShop.ts';

const OF_VALUES = new Set(
  [...readingKinds, ...concessionKinds, ...conditionKinds, ...sessionKinds].map(({ code }) => code),
);

const notOfValues = (findings: readonly Finding[]): readonly Finding[] =>
  findings.filter(({ code, covers }) => covers !== undefined || !OF_VALUES.has(code));

it('a state goes on saying what its sessions say, less what they say of values', () => {
  const met = { causes: 0, others: 0 };
  fc.assert(
    fc.property(randomShop, fc.boolean(), (shop, isSlipped) => {
      const files = Object.entries(filesOf(shop, 'in')).map(([path, text]) => [
        path,
        isSlipped && path.includes('session') ? text.replace(/\b3\.(\d\d)/, '$1.3') : text,
      ]);
      for (const { findings, taken } of reportOf(Object.fromEntries(files)).sessions) {
        met[findings.some(({ covers }) => covers !== undefined) ? 'causes' : 'others'] += 1;
        expect(notOfValues(taken)).toEqual(notOfValues(findings));
      }
    }),
    runs(60, 20),
  );
  expect(Math.min(met.causes, met.others)).toBeGreaterThan(0);
});
