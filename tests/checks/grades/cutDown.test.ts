import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/checks/finding.ts';
import { ENGINE, limitsOf, reportOf, sessionOf } from '../../shopOf.ts';

const LEAST = 'new: 3.990 to 4.000, least_thickness: 3.960';
const BY_WEAR = 'new: 3.990 to 4.000, wear: { min: 3.960 }';

/** How a thickness is judged where an engine stands: its verdict, and what is said of it where it is out. */
function judged(measure: string, limits: string, reading: string, says: string, stage: string): string {
  const { state } = reportOf({
    'e/engine.yaml': ENGINE,
    'e/limits.yaml': limitsOf(`${measure}: { ${limits} }`),
    'e/session.yaml': sessionOf(stage, `- { measure: ${measure}, at: { all: ${reading} } }`, says),
  });
  const [row] = state?.rows ?? [];
  const out = (state?.findings ?? []).filter(({ code }: Finding) => code === 'reading/out');
  return [row?.judgement.verdict, ...out.map(({ message }) => message.replace(/^.*\(|\)$/g, ''))].join(', ');
}

describe('the thickness of a head or block that may be cut down', () => {
  it.each([
    ['above its least', '3.9800', '', 'teardown', 'ok'],
    ['on its least', '3.9600', '', 'teardown', 'ok'],
    ['below it', '3.9599', '', 'teardown', 'out, last min 3.9600'],
    ['above it at a rebuild, where nothing is said of the head', '3.9800', '', 'rebuild', 'ok'],
    ['above it, used again', '3.9800', 'fitted: { head: { condition: used } }\n', 'rebuild', 'ok'],
    ['above it, surfaced', '3.9800', 'machined: [{ part: head }]\n', 'rebuild', 'ok'],
    ['below it, surfaced', '3.9599', 'machined: [{ part: head }]\n', 'rebuild', 'out, last min 3.9600'],
    [
      'above it, of a new head',
      '3.9800',
      'fitted: { head: { condition: new } }\n',
      'rebuild',
      'out, new min 3.9900',
    ],
    [
      'above it, of a head that was renewed',
      '3.9800',
      'replaced: [{ part: head }]\n',
      'rebuild',
      'out, new min 3.9900',
    ],
    ['thicker than a new one', '4.0100', '', 'teardown', 'out, new max 4.0000'],
  ])('%s', (_, reading, says, stage, verdict) => {
    expect(judged('head_thickness', LEAST, reading, says, stage)).toBe(verdict);
    const byWear = verdict.replace('last min', 'wear min');
    expect(judged('head_thickness', BY_WEAR, reading, says, stage)).toBe(byWear);
  });

  it.each([
    ['deck_height', LEAST, 'ok'],
    ['head_thickness', 'new: 3.990 to 4.000', 'out, new min 3.9900'],
  ])('%s with %s', (measure, limits, verdict) =>
    expect(judged(measure, limits, '3.9800', '', 'teardown')).toBe(verdict),
  );
});
