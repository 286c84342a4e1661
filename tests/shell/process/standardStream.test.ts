import { describe, expect, test } from 'vitest';
import { CannotWrite, quietWriter } from '../../../src/shell/process/standardStream.ts';

const systemError = (code: string): Error => Object.assign(new Error(code), { code });

/** A reader that takes a few bytes at a time, and now and then answers with an error. */
function reader(answers: readonly (number | string)[]) {
  const taken: number[] = [];
  let turn = 0;
  const writeSome = (bytes: Uint8Array): number => {
    const answer = answers[turn++ % answers.length] ?? 0;
    if (typeof answer === 'string') throw systemError(answer);
    taken.push(...bytes.subarray(0, answer));
    return Math.min(answer, bytes.length);
  };
  return { writeSome, text: () => Buffer.from(taken).toString(), turns: () => turn };
}

describe('standard output', () => {
  test('is written whole where the system takes a few bytes at a time', () => {
    const slow = reader([1, 3, 2]);
    quietWriter(slow.writeSome)('end play 0.0115 in, ±0.0006');
    expect(slow.text()).toBe('end play 0.0115 in, ±0.0006');
  });

  test('waits for a pipe that is full, and loses nothing', () => {
    const full = reader(['EAGAIN', 2, 'EAGAIN', 'EAGAIN', 5]);
    let waits = 0;
    const write = quietWriter(full.writeSome, () => waits++);
    write('main 1 ok\n');
    write('main 2 worn\n');
    expect(full.text()).toBe('main 1 ok\nmain 2 worn\n');
    expect(waits).toBeGreaterThan(5);
  });

  test.each(['EPIPE', 'EOF', 'ECONNRESET'])('goes on quietly when the reader has gone: %s', (code) => {
    const gone = reader([4, code]);
    const write = quietWriter(gone.writeSome);
    write('main 1 ok\n');
    write('main 2 worn\n');
    expect(gone.text()).toBe('main');
    expect(gone.turns()).toBe(2);
  });

  test('a full disk is reported, not taken for success', () => {
    expect(() => quietWriter(reader(['ENOSPC']).writeSome)('main 1 ok\n')).toThrow(CannotWrite);
    expect(() => quietWriter(reader(['ENOSPC']).writeSome)('main 1 ok\n')).toThrow('the disk is full');
  });
});
