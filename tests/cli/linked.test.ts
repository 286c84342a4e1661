import { symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ENGINE, sessionOf } from '../shopOf.ts';
import { benchFolder } from './calling.ts';

const SESSION = sessionOf('rebuild', '- { measure: crankshaft_end_play, value: 0.0070 }');

describe('a linked document named in a call', () => {
  const bench = benchFolder();

  it('is refused by the name of what it leads to, and does not stand for the whole engine', async () => {
    bench.put({ 'engine.yaml': ENGINE, 'one.yaml': SESSION });
    symlinkSync('one.yaml', join(bench.folder(), 'link.yaml'));
    const { exitCode, out, err } = await bench.call('check', 'link.yaml');
    expect([exitCode, out]).toEqual([2, '']);
    expect(err).toContain('link.yaml is a link, and links are not followed');
    expect(err).toContain('name one.yaml itself');
  });

  it('a linked folder may lead to an engine', async () => {
    bench.put({ 'here/engine.yaml': ENGINE, 'here/one.yaml': SESSION });
    symlinkSync('here', join(bench.folder(), 'there'));
    expect((await bench.call('check', 'there')).exitCode).toBe(0);
  });
});
