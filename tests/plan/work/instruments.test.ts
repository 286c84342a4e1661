import { describe, expect, it } from 'vitest';
import { deciderOf, finerInstruments } from '../../../src/plan/work/instruments.ts';
import { formatUncertainty } from '../../../src/quantity/format.ts';
import { unitNamed } from '../../../src/quantity/units.ts';
import { ENGINE, type Files, limitsOf, sessionOf } from '../../shopOf.ts';
import { contextOf } from '../planOf.ts';

const CLEARANCE = 'main_bearing_clearance: { new: 0.0010 to 0.0020, wear: { max: 0.0030 } }';
const JOURNAL = 'main_journal_diameter: { new: 2.9980 to 2.9990, wear: { min: 2.9970 } }';

const micrometer = (name: string, tenths: number, more = ''): string =>
  `  ${name}: { type: micrometer, resolution: ${(tenths / 10_000).toFixed(5)} in, max_error: ${(tenths / 10_000).toFixed(5)} in${more} }\n`;
const bore = (name: string, tenths: number): string =>
  micrometer(name, tenths).replace('micrometer', 'bore gauge');
const register = (...instruments: readonly string[]): string =>
  `kind: instruments\ninstruments:\n${instruments.join('')}  strip: { type: gauging strip, marks: [0.001 in, 0.002 in, 0.003 in, 0.004 in] }\n`;

const shop = (limits: string, instruments: string, blocks: string): Files => ({
  'shop.yaml': 'kind: shop\nunits: { length: in }\ndecision_rule: guarded\n',
  'register.yaml': instruments,
  'e/engine.yaml': ENGINE,
  'e/limits.yaml': limitsOf(limits),
  'e/session.yaml': sessionOf('teardown', blocks),
});

const printed = (expanded: number): string => formatUncertainty(expanded, unitNamed('in'));

/** Of the characteristic of which limits stand first. */
function knownBy(files: Files) {
  const context = contextOf(files);
  const of = /limits:\s+(\w+):/.exec(files['e/limits.yaml'] ?? '')?.[1];
  const [row] = context.state.rows.filter(
    ({ characteristic, position, routes }) =>
      characteristic.id === of && position.name === '1' && routes.length > 0,
  );
  if (row === undefined) throw new Error('not read');
  const decider = deciderOf(row, context);
  return {
    decider: decider && `${decider.instruments.join(' and ')} ${printed(decider.expanded)}`,
    finer: finerInstruments(row, context).map(
      ({ instruments, expanded, decides }) =>
        `${instruments.join(' and ')} ${printed(expanded)}${decides ? ' decides' : ''}`,
    ),
  };
}

const journal = (size: string, by = 'rough'): string =>
  `- { measure: main_journal_diameter, with: ${by}, at: { 1: ${size} } }`;

describe('what the register has that is finer', () => {
  const three = register(
    micrometer('rough', 10),
    micrometer('middle', 5),
    micrometer('fine', 1),
    micrometer('finest', 0.1),
  );

  it('is the next better and the first that decides', () => {
    expect(knownBy(shop(JOURNAL, three, journal('2.9972')))).toEqual({
      decider: 'finest 0.000013',
      finer: ['middle 0.00063', 'fine 0.00013 decides'],
    });
  });

  it('is the next better alone where that decides, or where none does', () => {
    expect(
      knownBy(
        shop(
          JOURNAL,
          register(micrometer('rough', 10), micrometer('fine', 1), micrometer('finest', 0.1)),
          journal('2.9974'),
        ),
      ),
    ).toEqual({ decider: 'finest 0.000013', finer: ['fine 0.00013 decides'] });
    expect(
      knownBy(
        shop(
          JOURNAL,
          register(micrometer('rough', 10), micrometer('middle', 5), micrometer('better', 4)),
          journal('2.9970'),
        ),
      ),
    ).toEqual({ decider: undefined, finer: ['middle 0.00063'] });
  });

  it('is nothing that is a twentieth finer at most', () => {
    expect(
      knownBy(shop(JOURNAL, register(micrometer('rough', 10), micrometer('like', 9.6)), journal('2.9972')))
        .finer,
    ).toEqual([]);
    expect(
      knownBy(shop(JOURNAL, register(micrometer('rough', 10), micrometer('less', 9.4)), journal('2.9972')))
        .finer,
    ).toEqual(['less 0.0012']);
  });

  it.each([
    ['in range, on its edges too', ', range: { from: 2.9972 in, to: 4 in }', true],
    ['in range to the other edge', ', range: { from: 1 in, to: 2.9972 in }', true],
    ['below its range', ', range: { from: 3 in, to: 4 in }', false],
    ['above its range', ', range: { from: 1 in, to: 2 in }', false],
    ['due on that day', ', due: 2026-02-03', true],
    ['overdue', ', due: 2026-02-02', false],
  ])('counts only where it may be used: %s', (_, more, isUsable) => {
    const files = shop(
      JOURNAL,
      register(micrometer('rough', 10), micrometer('fine', 1, more)),
      journal('2.9972'),
    );
    expect(knownBy(files).finer.length > 0).toBe(isUsable);
    expect(knownBy(files).decider !== undefined).toBe(isUsable);
  });

  it('is a gauge of the usual type', () => {
    const files = shop(JOURNAL, register(micrometer('rough', 10), bore('gauge', 1)), journal('2.9972'));
    expect(knownBy(files)).toEqual({ decider: undefined, finer: [] });
  });
});

describe('a clearance that was read with a strip', () => {
  const strip =
    '- { measure: main_bearing_clearance, with: strip, at: { 1: 0.0026, 2: 0.0015, 3: 0.0015 } }\n';
  const sizes = 'main_bearing_bore: { new: 3.0000 to 3.0020 }\n';

  it.each([
    [
      'by bore and journal, the gauge with the micrometer that sets it',
      `${CLEARANCE}\n${sizes}${JOURNAL}`,
      register(micrometer('mic', 1), bore('gauge', 1)),
      strip,
      'gauge and mic 0.00022',
    ],
    [
      'where it has a greatest alone',
      `main_bearing_clearance: { wear: { max: 0.0030 } }\n${sizes}${JOURNAL}`,
      register(micrometer('mic', 1), bore('gauge', 1)),
      strip,
      'gauge and mic 0.00022',
    ],
    [
      'by the mean of what was read of the journal',
      `${CLEARANCE}\n${sizes}`,
      register(micrometer('mic', 1, ', range: { from: 2 in, to: 3 in }'), bore('gauge', 1)),
      `${strip}${journal('2.9985', 'mic')}`,
      'gauge and mic 0.00022',
    ],
    [
      'by nothing where no micrometer is there',
      `${CLEARANCE}\n${sizes}${JOURNAL}`,
      register(bore('gauge', 1)),
      strip,
      undefined,
    ],
    [
      'by nothing where nobody knows how large they are',
      CLEARANCE,
      register(micrometer('mic', 1), bore('gauge', 1)),
      strip,
      undefined,
    ],
  ])('is decided %s', (_, limits, instruments, blocks, decider) => {
    expect(knownBy(shop(limits, instruments, blocks))).toEqual({
      decider,
      finer: decider === undefined ? [] : [`${decider} decides`],
    });
  });

  it('is decided by bore and journal as they are drawn', () => {
    const files = shop(CLEARANCE, register(micrometer('mic', 1), bore('gauge', 1)), strip);
    const drawn = `${ENGINE}sizes: { main_bearing_bore: 3.0010, main_journal_diameter: 2.9985 }\n`;
    expect(knownBy({ ...files, 'e/engine.yaml': drawn }).decider).toBe('gauge and mic 0.00022');
  });

  it('as a range is decided by nothing', () => {
    const ranged = '- { measure: main_bearing_clearance, with: strip, at: { 1: over 0.0026 } }\n';
    expect(
      knownBy(
        shop(`${CLEARANCE}\n${sizes}${JOURNAL}`, register(micrometer('mic', 1), bore('gauge', 1)), ranged),
      ),
    ).toEqual({ decider: undefined, finer: [] });
  });
});

describe('a bore that was read with a gauge', () => {
  const BORE = 'main_bearing_bore: { new: 3.0000 to 3.0020 }';
  const read = '- { measure: main_bearing_bore, with: rough, at: { 1: 3.0018 } }';

  it.each([
    [
      'a finer gauge alone',
      register(bore('rough', 10), bore('gauge', 1)),
      'gauge 0.00013',
      ['gauge 0.00013 decides'],
    ],
    [
      'a finer gauge with the finest micrometer that sets it',
      register(bore('rough', 10), bore('gauge', 1), micrometer('coarse', 5), micrometer('mic', 1)),
      'gauge and mic 0.00018',
      ['gauge and coarse 0.00065', 'gauge and mic 0.00018 decides'],
    ],
  ])('is decided by %s', (_, instruments, decider, finer) => {
    expect(knownBy(shop(BORE, instruments, read))).toEqual({ decider, finer });
  });
});
