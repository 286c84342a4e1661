import { describe, expect, it } from 'vitest';
import { type Files, findingsOf, refusalsOf, shopFiles, verdictsOf } from '../../shopOf.ts';

const journal = (limits: string, reading: string, size: string, stage = 'teardown'): Files => {
  const files = shopFiles(
    `main_journal_diameter: { ${limits} }`,
    `- { measure: main_journal_diameter, at: { 1: ${reading} } }`,
    stage,
  );
  const session = (files['e/session.yaml'] ?? '').replace(
    'readings:',
    `fitted: { crankshaft: { main: ${size} } }\nreadings:`,
  );
  return { ...files, 'e/session.yaml': session };
};

const STANDARD = 'new: 2.9990 to 3.0000, wear: { min: 2.9970 }';

describe('the last size of a part', () => {
  it.each([
    ['that of a standard part wears', '2.9965', 'std', 'out'],
    ['a wear limit that is moved and lies above it decides', '2.9772', '0.020 under', 'worn'],
    ['and is not passed', '2.9765', '0.020 under', 'out'],
    ['where the moved wear limit lies below it, it decides itself', '2.9685', '0.030 under', 'worn'],
    ['to the last tenth', '2.9680', '0.030 under', 'worn'],
    ['and not one beyond', '2.9679', '0.030 under', 'out'],
  ])('%s: %s at %s is %s', (_, reading, size, verdict) => {
    const files = journal(`${STANDARD}, last_size: 2.9680`, reading, size);
    expect(verdictsOf(files)['main_journal_diameter 1']).toBe(verdict);
  });

  it('never moves: a journal ground below it is out, though new of its size', () => {
    const files = journal(`${STANDARD}, last_size: 2.9680`, '2.9595', '0.040 under', 'rebuild');
    const [finding] = findingsOf(files).filter(({ code }) => code === 'reading/out');
    expect(finding?.message).toBe('main journal diameter 1: 2.9595 in, small by 8.5 thou (last min 2.9680)');
  });

  it('decides alone where nothing else is stated', () => {
    const at = (reading: string) =>
      verdictsOf(journal('last_size: 2.9680', reading, 'std'))['main_journal_diameter 1'];
    expect([at('2.9680'), at('2.9679')]).toEqual(['ok', 'out']);
  });

  it.each([
    ['cylinder_bore', 'largest_bore: 4.0600', '4.0601', 'out'],
    ['cylinder_bore', 'largest_bore: 4.0600', '4.0600', 'ok'],
    ['main_shell_thickness', 'least_thickness: 0.1200', '0.1199', 'out'],
    ['main_shell_thickness', 'least_thickness: 0.1200', '0.1200', 'ok'],
  ])('%s { %s }: %s is %s', (measure, limits, reading, verdict) => {
    const files = shopFiles(`${measure}: { ${limits} }`, `- { measure: ${measure}, at: { 1: ${reading} } }`);
    expect(verdictsOf(files)[`${measure} 1`]).toBe(verdict);
  });

  it('is a length, and no formula', () => {
    expect(refusalsOf(journal('last_size: 2 lbf', '2.9', 'std')).length).toBeGreaterThan(0);
    expect(refusalsOf(journal('last_size: { formula: "2 + 1" }', '2.9', 'std')).length).toBeGreaterThan(0);
  });
});
