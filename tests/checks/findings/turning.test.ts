import { describe, expect, it } from 'vitest';
import { codesOf, type Files, findingsOf, limitsOf, rowsOf, shopFiles } from '../../shopOf.ts';

const WRENCH: Files = {
  'instruments.yaml':
    'kind: instruments\ninstruments: { beam: { type: torque wrench, resolution: 0.1 lbf in, max_error: 1 % } }\n',
};

/** A crankshaft that turns at 20 lbf in, and then what each piston adds. */
function turning(
  rises: readonly number[],
  name = (index: number) => `piston ${index + 1}`,
  start = 20,
): Files {
  let torque = start;
  const steps = rises.map((rise, index) => {
    torque += rise;
    return `{ step: ${name(index)}, value: ${torque.toFixed(1)} }`;
  });
  const after = [`{ step: crankshaft, value: ${start.toFixed(1)} }`, ...steps].join(', ');
  return shopFiles(
    'turning_torque: { new: { max: 500 } }',
    `- { measure: turning_torque, with: beam, after: [${after}] }`,
    'rebuild',
    WRENCH,
  );
}

const jumps = (files: Files): readonly (string | undefined)[] =>
  findingsOf(files)
    .filter(({ code }) => code === 'turning/jump')
    .map(({ position }) => position);

describe('a step after which the engine turns much harder', () => {
  it('is named before the next part goes in', () => {
    expect(jumps(turning([10, 10, 25, 10, 10, 10]))).toEqual(['piston 3']);
  });

  it('is a warning at its reading, with the usual rise of like steps', () => {
    const [found] = findingsOf(turning([10, 10, 25, 10, 10, 10])).filter(
      ({ code }) => code === 'turning/jump',
    );
    expect(found?.severity).toBe('warning');
    expect(found?.message).toContain('25.0 lbf in');
    expect(found?.message).toContain('10.0 lbf in');
  });

  it('is not one whose rise is like the others', () => {
    expect(jumps(turning([10, 10.5, 9.5, 10, 10.2, 9.8]))).toEqual([]);
  });

  it('is not one that is easier than the others', () => {
    expect(jumps(turning([10, 10, 2, 10, 10, 10]))).toEqual([]);
  });

  it('is looked for only among four like rises or more', () => {
    expect(jumps(turning([10, 40, 10]))).toEqual([]);
    expect(jumps(turning([10, 40, 10, 10]))).toEqual(['piston 2']);
  });

  it('is compared with like steps only: caps with caps, pistons with pistons', () => {
    const name = (index: number) => (index < 4 ? `cap ${index + 1}` : `piston ${index - 3}`);
    expect(jumps(turning([2, 2, 2, 2, 20, 20, 20, 20], name))).toEqual([]);
    expect(jumps(turning([2, 2, 9, 2, 20, 20, 20, 20], name))).toEqual(['cap 3']);
  });
});

describe('what a rise may be above the usual', () => {
  it('three scaled median deviations of the others', () => {
    // Of 8, 9, 10, 11, 12 the median is 10 and the median deviation 1: 3 × 1.4826 = 4.4 above 10 is allowed.
    expect(jumps(turning([8, 9, 14.4, 10, 11, 12]))).toEqual([]);
    expect(jumps(turning([8, 9, 14.6, 10, 11, 12]))).toEqual(['piston 3']);
  });

  it('a tenth of the median, where the others are all alike', () => {
    expect(jumps(turning([100, 100, 109, 100, 100], undefined, 0.1))).toEqual([]);
    expect(jumps(turning([100, 100, 120, 100, 100], undefined, 0.1))).toEqual(['piston 3']);
  });

  it('exactly, however its last digit is rounded', () => {
    expect(jumps(turning([120, 120, 132, 120, 120], undefined, 0.1))).toEqual([]);
    expect(jumps(turning([120, 120, 132.1, 120, 120], undefined, 0.1))).toEqual(['piston 3']);
  });

  it('the wrench’s own error at that reading', () => {
    // 1 % of 400 lbf in is 4, more than a tenth of the usual 10.
    expect(jumps(turning([10, 10, 10, 13.9, 10, 10], undefined, 370))).toEqual([]);
    expect(jumps(turning([10, 10, 10, 16, 10, 10], undefined, 370))).toEqual(['piston 4']);
  });
});

describe('turning torque is judged step by step as well', () => {
  it('a jump does not make a step out, nor the other way about', () => {
    expect(codesOf(turning([10, 10, 25, 10, 10, 10]))).not.toContain('reading/out');
  });
});

describe('a step whose torque was not read (~)', () => {
  const without = (step: string) => {
    const files = turning([10, 10, 10, 10, 10, 10]);
    const text = files['e/session.yaml'] ?? '';
    return { ...files, 'e/session.yaml': text.replace(new RegExp(`(step: ${step}, value: )[\\d.]+`), '$1~') };
  };

  it('is not bridged: two parts together are no rise of one', () => {
    expect(without('piston 3')['e/session.yaml']).toContain('piston 3, value: ~');
    expect(jumps(without('piston 3'))).toEqual([]);
    expect(jumps(without('crankshaft'))).toEqual([]);
  });

  it('has no row and is not missing', () => {
    expect(findingsOf(without('piston 3'))).toEqual([]);
    expect(rowsOf(without('piston 3')).map(({ position }) => position)).not.toContain('piston 3');
  });

  it('takes only its own rise and the next away: a jump further on is still found', () => {
    const files = turning([10, 10, 10, 10, 10, 25, 10]);
    const text = (files['e/session.yaml'] ?? '').replace(/(step: piston 2, value: )[\d.]+/, '$1~');
    expect(jumps({ ...files, 'e/session.yaml': text })).toEqual(['piston 6']);
  });
});

describe('a limit for a step', () => {
  const told = (key: string, session = 'rebuild'): readonly (string | undefined)[] =>
    findingsOf({
      ...shopFiles(
        `turning_torque: { new: { max: 9 }, at: { ${key}: { new: { max: 3 } } } }`,
        '- { measure: turning_torque, with: beam, after: [{ step: crankshaft, value: 2.1 }, { step: piston 1, value: ~ }] }',
        session,
        WRENCH,
      ),
    })
      .filter(({ code }) => code === 'limits/no-step')
      .map(({ message }) => /did you mean .*/.exec(message)?.[0] ?? message);

  it.each([
    ['crankshaft', []],
    ['piston 1', []],
    ['Crankshaft', ['did you mean crankshaft?']],
    ['Crank shaft', ['did you mean crankshaft?']],
    ['crankshft', ['did you mean crankshaft?']],
    ['camshaft gear', ['turning torque: the limits name the step camshaft gear, and no session has it']],
  ])('called %s is reported where no step has its name', (key, expected) => {
    expect(told(key)).toEqual(expected);
  });

  it('is not asked for before the first step was taken, nor of a family of engines', () => {
    const limits = 'turning_torque: { at: { crank: { new: { max: 3 } } } }';
    const end = '- { measure: crankshaft_end_play, value: 0.007 }';
    const step = '- { measure: turning_torque, after: [{ step: crankshaft, value: 2.1 }] }';
    expect(codesOf(shopFiles(limits, end))).not.toContain('limits/no-step');
    const shared = { 'e/limits.yaml': limitsOf('crankshaft_end_play: { new: { max: 1 } }') };
    const family = { 'limits.yaml': `units: { torque: lbf in }\n${limitsOf(limits)}` };
    expect(codesOf(shopFiles('', step, 'rebuild', { ...shared, ...family }))).not.toContain('limits/no-step');
    expect(codesOf(shopFiles(limits, step))).toContain('limits/no-step');
  });
});
