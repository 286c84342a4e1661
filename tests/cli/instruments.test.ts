import { describe, expect, it } from 'vitest';
import { benchFolder } from './calling.ts';
import { ENGINE, SHOP } from './fourCylinder.ts';

const bench = benchFolder();

const REGISTER = `kind: instruments
instruments:
  mic-3-4: { type: micrometer, resolution: 0.0001 in, due: 2026-05-01 }
  dial: { type: dial indicator, resolution: 0.001 in }
`;

const shopWith = (register: string): void =>
  bench.put({ 'shop.yaml': SHOP, 'engines/pump/engine.yaml': ENGINE, 'instruments.yaml': register });

describe('the register of a shop without sessions', () => {
  it('has no day of its own, and does not say what is overdue', async () => {
    shopWith(REGISTER);
    const { out, exitCode } = await bench.call('instruments');
    expect(exitCode).toBe(0);
    expect(out.split('\n').slice(0, 4)).toEqual([
      'Instruments',
      'there is no session yet: --on YEAR-MONTH-DAY says what is overdue by then',
      '',
      '2 instruments, 1 without a day on which they are due',
    ]);
    expect(out).not.toContain('In use');
  });

  it('says what is overdue on a day that is asked for', async () => {
    shopWith(REGISTER);
    const { out } = await bench.call('instruments', '--on', '2026-06-01');
    expect(out).toContain('on 2026-06-01\n');
    expect(out).toMatch(/mic-3-4 +micrometer +2026-05-01 +overdue/);
  });

  it.each([
    ['is empty', 'kind: instruments\ninstruments: {}\n', 'write the first into instruments.yaml'],
    ['cannot be read', 'kind: instruments\ninstruments: []\n', 'correct the documents above'],
  ])('that %s is refused with what to do', async (_, register, help) => {
    shopWith(register);
    const { err, exitCode } = await bench.call('instruments');
    expect(exitCode).toBe(2);
    expect(err).toContain('no instrument is registered here');
    expect(err).toContain(help);
  });
});
