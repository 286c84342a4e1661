import { describe, expect, it } from 'vitest';
import { type Files, findingsOf, refusalsOf, rowsOf, verdictsOf } from '../shopOf.ts';

const SHOP = `kind: shop
units: { length: in }
characteristics:
  crack_test: { label: crack test, quantity: pass or fail, positions: main, instrument: by eye, pass: sound, fail: cracked }
  leak_down: { label: leak-down, quantity: percent, positions: cylinder, too_great: leaky }
  bolt_count: { label: bolt count, quantity: count, positions: engine }
  ratio: { label: compression ratio, quantity: number, positions: cylinder, instrument: other }
`;

const files = (readings: string, limits = ''): Files => ({
  'shop.yaml': SHOP,
  'e/engine.yaml':
    'kind: engine\nname: Bench engine\nunits: { length: in }\nlayout: { cylinders: 4, mains: 3, crankpins: 4 }\n',
  'e/l.yaml': `kind: limits\nsource: Invented.\nlimits: { ${limits} }\n`,
  'e/s.yaml': `kind: session\nstage: machined\ndate: 2026-02-03\nreadings:\n  ${readings}\n`,
});

const messagesOf = (all: Files) =>
  findingsOf(all).map(({ code, severity, message }) => [code, severity, message]);

describe('a test that is passed or failed', () => {
  it('is judged without limits: a fail is out, in the words of the shop', () => {
    const all = files('- { measure: crack_test, at: { 1: pass, 2: fail, 3: pass } }');
    expect(verdictsOf(all)).toEqual({ 'crack_test 1': 'ok', 'crack_test 2': 'out', 'crack_test 3': 'ok' });
    expect(messagesOf(all)).toEqual([
      ['reading/out', 'error', 'crack test 2: cracked'],
      [
        'method/unstated',
        'remark',
        'crack test 2: no note says who tested it and how; write it beside the result',
      ],
    ]);
  });

  it('that failed is not asked about where a note says who tested and how, nor one that was passed', () => {
    const all = files(
      '- { measure: crack_test, at: { 1: pass, 2: { value: fail, note: "dye, RK" }, 3: pass } }',
    );
    expect(messagesOf(all)).toEqual([['reading/out', 'error', 'crack test 2: cracked']]);
  });

  it('that failed at one point of several has failed', () => {
    const all = files(
      '- { measure: crack_test, stations: [front, rear], at: { 1: [pass, fail], 2: [pass, pass] } }',
    );
    expect(verdictsOf(all)).toMatchObject({ 'crack_test 1': 'out', 'crack_test 2': 'ok' });
  });

  it('is told where it was not done, with who and why from the note', () => {
    const all = files(
      '- { measure: crack_test, at: { 1: pass, 2: { value: not done, note: "fixture broken, RK" } } }',
    );
    expect(verdictsOf(all)).toMatchObject({ 'crack_test 2': 'left out', 'crack_test 3': 'missing' });
    expect(messagesOf(all)).toEqual([
      ['reading/missing', 'warning', 'crack test 3 is missing; other positions were tested'],
      ['reading/left-out', 'remark', 'crack test 2 was left out on purpose: fixture broken, RK'],
    ]);
  });

  it('keeps the note of who did it and how', () => {
    const [row] = rowsOf(
      files('- { measure: crack_test, at: { 1: { value: pass, note: "wet magnetic, RK" } } }'),
    );
    expect(row?.routes[0]?.route.notes).toEqual(['wet magnetic, RK']);
  });

  it('has no error and assumes no instrument', () => {
    const all = files('- { measure: crack_test, at: { 1: pass, 2: pass, 3: pass } }');
    expect(rowsOf(all)[0]?.routes[0]?.route).toMatchObject({ u: 0, with: ['by eye'], assumed: [] });
    expect(findingsOf(all)).toEqual([]);
  });

  it.each([
    ['a number', '- { measure: crack_test, at: { 1: 1 } }', 'e/s.yaml:5:37 value'],
    ['another word', '- { measure: crack_test, at: { 1: ok } }', 'e/s.yaml:5:37 type'],
    ['feelers', '- { measure: crack_test, at: { 1: { go: 0.1, no_go: 0.2 } } }', 'e/s.yaml:5:43 value'],
    [
      'a result where a number is wanted',
      '- { measure: cylinder_bore, at: { 1: pass } }',
      'e/s.yaml:5:40 value',
    ],
    [
      'a number left out in a test word',
      '- { measure: cylinder_bore, at: { 1: not done } }',
      'e/s.yaml:5:40 value',
    ],
  ])('refuses %s', (_, readings, place) => {
    expect(refusalsOf(files(readings))).toContain(place);
  });

  it('takes no limits', () => {
    expect(
      refusalsOf(files('- { measure: crack_test, at: { 1: pass } }', 'crack_test: { new: { min: 1 } }')),
    ).toEqual(['e/l.yaml:3:11 value']);
  });
});

describe('plain numbers, percentages and counts', () => {
  it('are judged like any figure, and printed with what they are counted in', () => {
    const all = files(
      '- { measure: leak_down, at: { 1: 8, 2: "12 %", 3: 25 } }\n  - { measure: bolt_count, value: 11 }\n  - { measure: ratio, at: { 1: 8.7 } }',
      'leak_down: { new: { max: 12 } }, bolt_count: { new: { min: 12 } }, ratio: { new: { max: 8.6 } }',
    );
    expect(verdictsOf(all)).toMatchObject({
      'leak_down 1': 'ok',
      'leak_down 2': 'ok',
      'leak_down 3': 'out',
      'bolt_count engine': 'out',
      'ratio 1': 'out',
    });
    expect(findingsOf(all).flatMap(({ code, message }) => (code === 'reading/out' ? [message] : []))).toEqual(
      [
        'leak-down 3: 25 %, leaky by 13 % (new max 12)',
        'bolt count: 11, under by 1 (new min 12)',
        'compression ratio 1: 8.7, over by 0.1 (new max 8.6)',
      ],
    );
  });

  it.each([
    ['half a thing', '- { measure: bolt_count, value: 11.5 }'],
    ['less than none', '- { measure: bolt_count, value: -1 }'],
  ])('a count refuses %s', (_, readings) => {
    expect(refusalsOf(files(readings))).toEqual(['e/s.yaml:5:35 value']);
  });

  it('a count has no error', () => {
    const [row] = rowsOf(files('- { measure: bolt_count, value: 11 }'));
    expect(row?.routes[0]?.route).toMatchObject({ u: 0, assumed: [] });
  });
});
