import { describe, expect, it } from 'vitest';
import { toNumber } from '../../../src/quantity/fraction.ts';
import { ENGINE, refusalsOf, shopOf } from '../../shopOf.ts';

const head = (date = '2026-02-03') => `kind: session\nstage: teardown\ndate: ${date}\n`;
const files = (text: string) => ({ 'e/engine.yaml': ENGINE, 'e/2026-02-03-teardown.yaml': text });
const sessionIn = (text: string) => {
  const session = shopOf(files(text)).engine?.sessions[0];
  if (session === undefined) throw new Error(`not read: ${refusalsOf(files(text)).join(', ')}`);
  return session;
};
const refused = (text: string) => refusalsOf(files(text)).map((each) => each.replace(/^[^:]*:/, ''));

describe('a session', () => {
  it('is called after its file, and carries its stage, date, hours and people', () => {
    const session = sessionIn(`${head()}by: RK\nhours: 11840\ntemperature: 68 degF\n`);
    expect(session).toMatchObject({
      name: '2026-02-03-teardown',
      stage: 'teardown',
      date: '2026-02-03',
      by: 'RK',
    });
    expect(session.hours && toNumber(session.hours.amount)).toBe(11_840);
    expect(session.temperature && toNumber(session.temperature.amount)).toBe(20);
  });

  it('keeps blocks and work in the order in which they stand', () => {
    const session = sessionIn(
      `${head()}readings:\n  - { measure: cylinder_bore, at: { 1: 4.1 } }\n  - { work: honed, on: cylinder 1, by: RK }\n  - { measure: cylinder_bore, with: bore, set_with: mic, at: { 1: 4.2 } }\n`,
    );
    expect(session.blocks.map(({ index }) => index)).toEqual([0, 2]);
    expect(session.work.map(({ index, work, on }) => [index, work, on.name])).toEqual([
      [1, 'honed', 'cylinder 1'],
    ]);
    expect(session.blocks[1]).toMatchObject({ instrument: { name: 'bore' }, setWith: { name: 'mic' } });
  });

  it('conditions of a block stand over those of the session', () => {
    const session = sessionIn(
      `${head()}conditions: { bearings: dry, oil_pump: off }\nreadings:\n  - { measure: cylinder_bore, conditions: { bearings: oiled }, at: { 1: 4.1 } }\n`,
    );
    expect([...(session.blocks[0]?.conditions ?? [])]).toEqual([
      ['bearings', 'oiled'],
      ['oil_pump', 'off'],
    ]);
  });

  describe('what was found', () => {
    const seen = (on: string) =>
      sessionIn(
        `${head()}found: [{ on: ${on}, is: scored, do: renew, by: RK }]\n`,
      ).observations[0]?.parts.map(({ part, positions }) =>
        [part.id, ...positions.map(({ name }) => name)].join(' '),
      );

    it.each([
      ['main 3 shell lower', ['main_shell 3']],
      ['rod bearing 2', ['rod_shell 2']],
      ['pistons', ['piston']],
      ['[crankpin 1, Crankpin 2]', ['crankpin 1', 'crankpin 2']],
      ['"liner 3, piston 3"', ['cylinder 3', 'piston 3']],
      ['oil cooler', []],
      ['fan bracket', []],
      ['valve cover', []],
      ['sump gasket', []],
      ['[cap 1, cap 2]', []],
    ])('on %s', (on, parts) => expect(seen(on)).toEqual(parts));

    it('keeps its words', () => {
      const { observations } = sessionIn(`${head()}found: [{ on: oil pump, is: gears scored, do: hold }]\n`);
      expect(observations).toEqual([
        expect.objectContaining({ on: ['oil pump'], is: 'gears scored', remedy: 'hold', by: undefined }),
      ]);
    });

    it.each([
      [
        'found: [{ on: main 3 shel lower, is: wiped }]',
        'did you mean main shell? if it is something else, describe it in other words',
      ],
      [
        'found: [{ on: crankpn 2, is: blued }]',
        'did you mean crankpin? if it is something else, describe it in other words',
      ],
      ['found: [{ on: rod 7, is: bent }]', 'it has 1, 2, 3, 4'],
      ['found: [{ on: [piston 1, piston 12], is: scuffed }]', 'did you mean 1?'],
      [
        'replaced: [{ part: main shels }]',
        'did you mean main shell? if it is something else, describe it in other words',
      ],
      ['machined: [{ part: crankshaft 9 }]', 'it has 1, 2, 3'],
    ])('refuses %s', (line, help) => {
      const { diagnostics } = shopOf(files(`${head()}${line}\n`));
      expect(diagnostics.map((each) => each.help)).toEqual([help]);
    });

    it.each(['head gasket', 'oil pump', 'valve springs', 'rod bolt nuts'])(
      'may be a thing that is not measured: %s replaced',
      (part) => expect(refusalsOf(files(`${head()}replaced: [{ part: ${part} }]\n`))).toEqual([]),
    );
  });

  it('may use an earlier session of the engine, and no other', () => {
    const earlier = {
      'e/earlier.yaml': head('2026-01-03'),
      'e/later.yaml': head('2026-03-03'),
      'e/2026-02-03-zz.yaml': head('2026-02-03'),
    };
    const uses = (name: string) => refusalsOf({ ...files(`${head()}uses: [${name}]\n`), ...earlier });
    expect(uses('earlier')).toEqual([]);
    for (const name of ['earliest', 'later', '2026-02-03-zz', '2026-02-03-teardown'])
      expect(uses(name), name).toEqual(['e/2026-02-03-teardown.yaml:4:8 value']);
  });
});

describe('a date is one of the calendar', () => {
  it.each([
    ['2024-02-29', []],
    ['2026-02-29', ['3:7 value']],
    ['2026-13-01', ['3:7 value']],
    ['2026-04-31', ['3:7 value']],
    ['2000-02-29', []],
    ['1900-02-29', ['3:7 value']],
    ['2026-2-3', ['3:7 value']],
  ])('%s', (date, expected) => expect(refused(head(date))).toEqual(expected));
});

describe('a session with a fault is not judged, and the engine is', () => {
  it('leaves the sessions without one', () => {
    const { engine, diagnostics } = shopOf({
      ...files(head()),
      'e/bad.yaml': `${head()}readings:\n  - { measure: cylinder_boer, at: { 1: 4.1 } }\n`,
    });
    expect(diagnostics.map(({ code }) => code)).toEqual(['document/unknown-measure']);
    expect(engine?.sessions.map(({ name }) => name)).toEqual(['2026-02-03-teardown']);
  });

  it('offers the name that was meant', () => {
    const [found] = shopOf(
      files(`${head()}readings:\n  - { measure: cylinder_boer, at: { 1: 4.1 } }\n`),
    ).diagnostics;
    expect(found?.help).toContain('cylinder_bore');
  });

  it('reports every fault, not the first', () => {
    const text = `${head('2026-02-30')}readings:\n  - { measure: cylinder_boer, at: { 1: 4.1 } }\n  - { measure: cylinder_bore, at: { 9: 4.1, 1: 5 psi } }\n`;
    expect(refused(text)).toEqual([
      '3:7 value',
      '5:16 unknown-measure',
      '6:37 unknown-position',
      '6:48 wrong-quantity',
    ]);
  });
});

describe('the positions of parts that were changed', () => {
  it.each([
    ['replaced: [{ part: liners, at: [1, 9] }]', ['4:36 unknown-position']],
    ['machined: [{ part: block, at: nine }]', ['4:31 unknown-position']],
    [
      'fitted: { pistons: { at: { 1: { condition: new }, 9: { condition: new } } } }',
      ['4:51 unknown-position'],
    ],
    ['replaced: [{ part: liners, at: [1, 2] }]', []],
  ])('%s', (line, expected) => {
    expect(refused(`${head()}${line}\n`)).toEqual(expected);
  });

  it('are offered as the layout has them', () => {
    const [found] = shopOf(files(`${head()}replaced: [{ part: liners, at: 9 }]\n`)).diagnostics;
    expect([found?.message, found?.help]).toEqual(['the engine has no cylinder 9', 'it has 1, 2, 3, 4']);
  });
});

describe('a concession that ends', () => {
  const until = (day: string) =>
    refused(
      `${head()}concessions: [{ measure: crankshaft_end_play, up_to: 1, reason: agreed, until: ${day} }]\n`,
    ).map((each) => each.replace(/.* /, ''));

  it('before its own session is questioned', () => {
    expect(until('2026-02-02')).toEqual(['value']);
  });

  it('on the day of its session or later is taken', () => {
    expect(until('2026-02-03')).toEqual([]);
    expect(until('2026-06-30')).toEqual([]);
  });
});
