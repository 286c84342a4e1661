import { describe, expect, it } from 'vitest';
import { jobsIn } from '../../plan/planOf.ts';
import { ENGINE, type Files, findingsOf, limitsOf, REGISTER, refusalsOf, sessionOf } from '../../shopOf.ts';

const LIMITS = `main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }
crankpin_diameter: { new: 2.4980 to 2.4990, wear: { min: 2.4970 } }
cylinder_bore: { new: 4.1250 to 4.1260, wear: { max: 4.1300 } }`;

const GROUND = `- { measure: main_journal_diameter, with: mic, at: { 1: 2.9885, 2: 2.9884, 3: 2.9886 } }
- { measure: crankpin_diameter, with: mic, at: { 1: 2.4884, 2: 2.4885, 3: 2.4886, 4: 2.4885 } }
- { measure: cylinder_bore, with: bore, at: { 1: 4.1454, 2: 4.1455, 3: 4.1455, 4: 4.1456 } }`;

const shop = (said: string, limits = LIMITS, blocks = GROUND, shopText = ''): Files => ({
  'shop.yaml': `kind: shop\nunits: { length: in }\n${shopText}`,
  'register.yaml': REGISTER,
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(limits),
  'e/session.yaml': sessionOf('machined', blocks, said),
});

const BLOCK =
  'machined: [{ part: main journals, size: 0.010 under }, { part: crankpins, size: 0.010 under }, { part: cylinders, size: 0.020 over }]';

describe('a size on the wrong side of standard is refused', () => {
  it.each([
    ['machined: [{ part: cylinders, size: 0.020 under }]', 'e/session.yaml:4:20 value'],
    ['machined: [{ part: main journals, size: 0.010 over }]', 'e/session.yaml:4:20 value'],
    ['fitted: { pistons: { size: 0.020 under } }', 'e/session.yaml:4:11 value'],
    ['replaced: [{ part: rings, size: 0.020 under }]', 'e/session.yaml:4:20 value'],
    ['agreed: { by: Owner, items: [bore cylinders to 0.020 under] }', 'e/session.yaml:4:30 value'],
  ])('%s', (said, refused) => expect(refusalsOf(shop(`${said}\n`))).toEqual([refused]));

  it('but not of shells for a housing that was bored out', () => {
    expect(refusalsOf(shop('fitted: { main_shells: { size: 0.020 over } }\n'))).toEqual([]);
  });
});

describe('a size that is larger than any usual one', () => {
  const toldOf = (files: Files) =>
    findingsOf(files)
      .filter(({ code }) => code === 'part/unusual-size')
      .map(({ message }) => message);
  const said = 'machined: [{ part: main journals, size: .10 under }]\n';

  it('is asked about, with the words to type', () => {
    expect(toldOf(shop(said))).toEqual([
      'main journals: .10 under is more than the usual 0.060; is 0.010 under meant?',
    ]);
  });

  it('is nothing where limits or the shop print it', () => {
    const printed = LIMITS.replace(
      'wear: { min: 2.9970 }',
      'wear: { min: 2.9970 }, sizes: { 0.100 under: { new: 2.8980 to 2.8990 } }',
    );
    expect(toldOf(shop(said, printed))).toEqual([]);
    const steps = 'plan: { steps: { main journals: [0.100 under] } }\n';
    expect(toldOf(shop(said, LIMITS, GROUND, steps))).toEqual([]);
    expect(toldOf(shop('machined: [{ part: main journals, size: 0.060 under }]\n'))).toEqual([]);
  });
});

describe('a session that says two sizes of one journal', () => {
  const codes = (fitted: string) =>
    findingsOf(
      shop(
        `machined: [{ part: main journals, size: 0.010 under }]\nfitted: { crankshaft: { main: ${fitted} } }\n`,
      ),
    ).map(({ code }) => code);

  it('is told where they differ', () => {
    expect(codes('0.020 under')).toContain('part/two-sizes');
    expect(codes('0.010 under')).not.toContain('part/two-sizes');
  });
});

describe('sizes that nobody stated', () => {
  it('are one finding, with the block to write', () => {
    const [found, ...others] = findingsOf(shop('')).filter(({ severity }) => severity !== 'remark');
    expect(others).toEqual([]);
    expect(found?.code).toBe('reading/grade');
    expect(found?.severity).toBe('error');
    expect(found?.message).toContain(`write \`${BLOCK}\``);
  });

  it('are none once that block is written', () => {
    expect(findingsOf(shop(`${BLOCK}\n`)).filter(({ severity }) => severity !== 'remark')).toEqual([]);
  });

  it('cut nothing before they are stated', () => {
    expect(jobsIn(shop('')).map(({ name }) => name)).toEqual([
      'state the size of main journals',
      'state the size of crankpins',
      'state the size of cylinders',
    ]);
  });
});
