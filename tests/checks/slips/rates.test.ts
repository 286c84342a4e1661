import { describe, expect, test } from 'vitest';
import { some } from '../../propertyRuns.ts';
import { measureRates, type Rate, type Rates } from './generated/rates.ts';

// SLIP_SESSIONS=10000 is a long run.
const count = Number(process.env.SLIP_SESSIONS ?? some(1200, 26));

const figures = ({ clean, all, slips, blocks, impossible, missed }: Rates): string => {
  const line = (name: string, { made, flagged, named }: Rate): string =>
    `  ${name.padEnd(14)} ${made} made, ${flagged} caught, ${named} named`;
  return [
    `slips of the pen: of ${clean.sessions} clean sessions ${clean.flagged} flagged; ${impossible} impossible suggestions`,
    line('all', all),
    ...Object.entries({
      ...slips,
      ...Object.fromEntries(Object.entries(blocks).map(([kind, rate]) => [`all ${kind}`, rate])),
    }).map(([kind, rate]) => line(kind, rate)),
    ...(process.env.SLIP_SESSIONS === undefined ? [] : missed.slice(0, 60)),
  ].join('\n');
};

describe('rates over generated sessions with a fixed seed', () => {
  test('of slips nearly all are flagged with what was meant, of clean sessions nearly none', () => {
    const rates = measureRates(count, 20260203);
    process.stdout.write(`${figures(rates)}\n`);
    const { clean, all, impossible } = rates;
    expect(all.made).toBeGreaterThan(0.7 * count);
    expect(all.flagged / all.made).toBeGreaterThanOrEqual(0.95);
    expect(all.named / all.made).toBeGreaterThanOrEqual(0.9);
    expect(clean.flagged / clean.sessions).toBeLessThanOrEqual(0.005);
    expect(impossible).toBe(0);
  }, 1_200_000);

  test.each(['new', 'nominal'] as const)(
    'where only %s sizes are known worn engines are left alone too',
    (known) => {
      const rates = measureRates(Math.min(1000, count / 2), 20260204, known);
      const { clean, all } = rates;
      process.stdout.write(`only ${known} sizes are known: ${figures(rates)}\n`);
      expect(clean.flagged / clean.sessions).toBeLessThanOrEqual(0.005);
      // Half of what a pen can do to a number is still plainly wrong.
      expect(all.flagged / all.made).toBeGreaterThan(0.6);
    },
  );
});
