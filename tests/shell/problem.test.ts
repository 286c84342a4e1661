import { statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { systemTrouble } from '../../src/shell/problem.ts';

const errorOf = (call: () => unknown): unknown => {
  try {
    call();
  } catch (error) {
    return error;
  }
  throw new Error('the call did not fail');
};

describe('what a call to the system failed at', () => {
  it('is said with its path', () => {
    const error = errorOf(() => statSync(`${import.meta.filename}/below`));
    expect(systemTrouble(error)).toBe(
      `${import.meta.filename}/below: a part of the path is not a folder (ENOTDIR)`,
    );
  });

  it('is said without one where the system names none', () => {
    const error = Object.assign(new Error('EIO: i/o error, read'), { code: 'EIO', syscall: 'read' });
    expect(systemTrouble(error)).toBe('the disk reported an error (EIO)');
  });

  it('is no mistake of the program', () => {
    expect(systemTrouble(errorOf(() => statSync(7 as unknown as string)))).toBeUndefined();
    expect(systemTrouble(new Error('no such row'))).toBeUndefined();
    expect(systemTrouble('thrown')).toBeUndefined();
  });
});
