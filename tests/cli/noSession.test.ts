import { describe, expect, it } from 'vitest';
import { benchFolder } from './calling.ts';
import { ENGINE } from './fourCylinder.ts';

describe('an engine of which no session can be judged', () => {
  const { call, put } = benchFolder();

  it.each([[['plan', 'pump']], [['report', 'pump', '--to', 'sheet.html']]])(
    '%j says whether there is none, or each has problems',
    async (words) => {
      put({ 'shop.yaml': 'kind: shop\nunits: { length: in }\n', 'engines/pump/engine.yaml': ENGINE });
      expect(await call(...words)).toMatchObject({
        exitCode: 2,
        err: expect.stringContaining('no session yet'),
      });
      put({ 'engines/pump/sessions/first.yaml': 'kind: session\nstage: teardown\nwrong: 1\n' });
      const { err } = await call(...words);
      expect(err).toContain('no session without problems\n        correct the documents above first');
      expect(err).not.toContain('no session yet');
    },
  );

  it('names the session that could not be read where it is asked for one', async () => {
    put({
      'shop.yaml': 'kind: shop\nunits: { length: in }\n',
      'engines/well/engine.yaml': ENGINE,
      'engines/well/sessions/first.yaml': 'kind: session\nstage: teardown\nwrong: 1\n',
    });
    const help = (known: string): string =>
      `has no session teardown\n        ${known}engines/well/sessions/first.yaml could not be read: correct it first\n`;
    const asked = ['plan', 'well', '--session', 'teardown'];
    expect((await call(...asked)).err).toContain(help(''));
    put({
      'engines/well/sessions/second.yaml': 'kind: session\nstage: rebuild\ndate: 2026-02-03\nreadings: []\n',
    });
    expect((await call(...asked)).err).toContain(help('it has second; '));
  });
});
