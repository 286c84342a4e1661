import { type Fraction, fraction, parseDecimal } from '../../src/quantity/fraction.ts';
import { toBase, unitNamed } from '../../src/quantity/units.ts';
import { type AmountRange, exactly, type Pass, type Sequence } from '../../src/torque/sequence.ts';

/** `70 lbf ft` as newton metres, `.019 in` as a length, exact. */
export function amount(written: string): Fraction {
  const [number = '', ...unit] = written.split(' ');
  return toBase(parseDecimal(number), unitNamed(unit.join(' ')));
}

/** `70 lbf ft`, or `58 to 69 lbf ft`. */
export function span(written: string): AmountRange {
  const [, least, greatest, unit] = /^(\S+) to (\S+) (.+)$/.exec(written) ?? [];
  if (least === undefined || greatest === undefined) return exactly(amount(written));
  return { least: amount(`${least} ${unit}`), greatest: amount(`${greatest} ${unit}`) };
}

export const to = (written: string): Pass => ({ action: { kind: 'to', torque: span(written) } });
export const toShare = (percent: number): Pass => ({
  action: { kind: 'to', torque: { percent: fraction(percent) } },
});
export const turn = (written: string): Pass => ({ action: { kind: 'turn', angle: span(written) } });
export const loosen: Pass = { action: { kind: 'loosen' } };
export const only = (pass: Pass, ...fasteners: readonly string[]): Pass => ({ ...pass, fasteners });

/** A sequence of the passes for fasteners a, b, c, d, unless it says more. */
export const sequence = (passes: readonly Pass[], more: Partial<Sequence> = {}): Sequence => ({
  joint: 'main caps',
  fasteners: ['a', 'b', 'c', 'd'],
  groups: new Map(),
  order: ['b', 'c', 'a', 'd'],
  generated: false,
  passes,
  before: [],
  after: [],
  ...more,
});
