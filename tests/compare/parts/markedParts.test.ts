import { describe, expect, it } from 'vitest';
import { conflictsOf } from '../../../src/compare/parts/conflicts.ts';
import { type MarkedPart, markedParts } from '../../../src/compare/parts/markedParts.ts';
import { measuredPart, partTrend } from '../../../src/compare/parts/measuredPart.ts';
import type { Judgeable } from '../../../src/compare/state.ts';
import { openDocument } from '../../../src/documents/opened.ts';
import { readShelfPart } from '../../../src/documents/parts/shelfPart.ts';
import { toNumber } from '../../../src/quantity/fraction.ts';
import { shopOf } from '../../shopOf.ts';

const LIMITS =
  'kind: limits\nsource: Invented.\nunits: { length: in }\nlimits:\n  crankpin_diameter: { new: 2.4990 to 2.5000, wear: { min: 2.4970 } }\n';
const REGISTER =
  'kind: instruments\ninstruments: { mic: { type: micrometer, resolution: 0.0001 in, max_error: 0.0001 in } }\n';

/** An engine of two crankpins; each session by its date, with what it says. */
function engine(name: string, sessions: Readonly<Record<string, string>>, more = ''): Judgeable {
  const read = shopOf({
    'instruments.yaml': REGISTER,
    'limits.yaml': LIMITS,
    [`${name}/engine.yaml`]: `kind: engine\nname: ${name}\nunits: { length: in }\nlayout: { crankpins: 2, cylinders: 2 }\n${more}`,
    ...Object.fromEntries(
      Object.entries(sessions).map(([date, text]) => [
        `${name}/${date}.yaml`,
        `kind: session\nstage: service\ndate: ${date}\n${text}`,
      ]),
    ),
  });
  if (read.engine === undefined || read.diagnostics.length > 0)
    throw new Error(read.diagnostics.map(({ message }) => message).join('\n'));
  return { engine: read.engine, registry: read.registry };
}

const pin = (first: string): string =>
  `readings: [{ measure: crankpin_diameter, with: mic, at: { 1: ${first} } }]\n`;
const crank = (mark: string, more = ''): string => `fitted: { crankshaft: { mark: ${mark}${more} } }\n`;

function shelf(engines: readonly Judgeable[], text: string) {
  const problems: Parameters<typeof readShelfPart>[2] = [];
  const opened = openDocument('parts/K1.yaml', 'parts/K1.yaml', new TextEncoder().encode(text));
  const part = readShelfPart(
    opened,
    (name) => engines.find((each) => each.engine.document.name === name),
    problems,
  );
  expect([...opened.problems, ...problems].map(({ message }) => message)).toEqual([]);
  return part === undefined ? [] : [part];
}

const partOf = (engines: readonly Judgeable[], text?: string): MarkedPart => {
  const found = markedParts(engines, text === undefined ? [] : shelf(engines, text)).find(
    ({ mark }) => mark === 'K1',
  );
  if (found === undefined) throw new Error('no K1');
  return found;
};

const stays = (part: MarkedPart): readonly string[] =>
  part.stays.map(({ of, from, to }) => `${of.engine.document.name} ${from} to ${to ?? 'now'}`);
const hours = (part: MarkedPart): readonly (number | undefined)[] =>
  part.sittings.map((each) => each.hours && toNumber(each.hours));
const codes = (part: MarkedPart): readonly string[] =>
  conflictsOf(measuredPart(part)).map(({ severity, message }) => `${severity}: ${message}`);

it('a head of a vee is in it until that head is replaced, and not until the other one is', () => {
  const layout =
    'layout: { cylinders: 4, crankpins: { 1: [1, 3], 2: [2, 4] }, banks: { L: [1, 2], R: [3, 4] } }';
  const read = shopOf({
    'A/engine.yaml': `kind: engine\nname: A\n${layout}\nfitted: { head: { at: { L: { mark: K1 }, R: { mark: K2 } } } }\n`,
    ...Object.fromEntries(
      ['', 'replaced: [{ part: cylinder head, at: R }]', 'replaced: [{ part: head L }]', ''].map(
        (text, index) => [
          `A/${index}.yaml`,
          `kind: session\nstage: service\ndate: 202${index}-01-01\nreadings: []\n${text}`,
        ],
      ),
    ),
  });
  if (read.engine === undefined) throw new Error('not sound');
  const found = markedParts([{ engine: read.engine, registry: read.registry }], []);
  expect(found.map((part) => `${part.mark} ${stays(part)}`)).toEqual([
    'K1 A 2020-01-01 to 2022-01-01',
    'K2 A 2020-01-01 to 2021-01-01',
  ]);
});

describe('a part is in an engine', () => {
  it.each([
    [
      'from the session that fits it to the one that fits another',
      { '2020-01-01': crank('K1'), '2021-01-01': pin('2.4995'), '2022-01-01': crank('K2') },
      'A 2020-01-01 to 2022-01-01',
    ],
    [
      'until it is said to be replaced',
      { '2020-01-01': crank('K1'), '2021-01-01': 'replaced: [{ part: crankshaft }]\n' },
      'A 2020-01-01 to 2021-01-01',
    ],
    [
      'still, where it is said again',
      { '2020-01-01': crank('K1'), '2021-01-01': crank('K1', ', condition: used') },
      'A 2020-01-01 to now',
    ],
    [
      'still, where its shells were replaced',
      { '2020-01-01': crank('K1'), '2021-01-01': 'replaced: [{ part: rod shells }]\n' },
      'A 2020-01-01 to now',
    ],
  ])('%s', (_, sessions, expected) => {
    expect(stays(partOf([engine('A', sessions)]))).toEqual([expected]);
  });

  it('from its first session, where the engine came with it', () => {
    expect(stays(partOf([engine('A', { '2020-01-01': pin('2.4995') }, crank('K1'))]))).toEqual([
      'A 2020-01-01 to now',
    ]);
  });

  it('until the day on which its own document says that it came out', () => {
    const a = engine('A', { '2020-01-01': crank('K1'), '2023-01-01': pin('2.4995') });
    const part = partOf(
      [a],
      'kind: part\npart: crank\nmark: K1\nfrom: [{ engine: A, date: 2022-05-01 }]\nfits: [A]\n',
    );
    expect(stays(part)).toEqual(['A 2020-01-01 to 2022-05-01']);
    expect(part.sittings.map(({ session }) => session.date)).toEqual(['2020-01-01']);
  });

  it('at a position of its own, where one of several has a mark', () => {
    const a = engine('A', {
      '2020-01-01': 'fitted: { rods: { at: { 1: { mark: K1 }, 2: { mark: K2 } } } }\n',
      '2021-01-01': 'replaced: [{ part: rods, at: 1 }]\n',
    });
    expect(stays(partOf([a]))).toEqual(['A 2020-01-01 to 2021-01-01']);
    expect(markedParts([a], []).map(({ name, mark }) => `${name} ${mark}`)).toEqual([
      'connecting rod K1',
      'connecting rod K2',
    ]);
  });
});

describe('the hours of a part', () => {
  const a = {
    '2020-01-01': `hours: 1000\n${crank('K1')}`,
    '2021-01-01': `hours: 1500\n${pin('2.4995')}`,
    '2022-01-01': `hours: 1500\n${crank('K2')}`,
  };

  it('are those of its engines from when it went in, one after the other', () => {
    const b = { '2023-01-01': `hours: 7000\n${crank('K1')}`, '2024-01-01': `hours: 7300\n${pin('2.4994')}` };
    expect(hours(partOf([engine('A', a), engine('B', b)]))).toEqual([0, 500, 500, 800]);
  });

  it('count on over a meter that was replaced', () => {
    const b = {
      '2023-01-01': `hours: 7000\n${crank('K1')}`,
      '2024-01-01': `hours: 40\nhours_from: 7250\n${pin('2.4994')}`,
      '2025-01-01': `hours: 90\n${pin('2.4994')}`,
    };
    expect(hours(partOf([engine('A', a), engine('B', b)]))).toEqual([0, 500, 500, 790, 840]);
  });

  it('are not known where a session does not say, nor after an engine that never said', () => {
    const b = { '2018-01-01': crank('K1'), '2019-01-01': crank('K9') };
    expect(hours(partOf([engine('A', a), engine('B', b)]))).toEqual([undefined, undefined, undefined]);
  });
});

describe('a conflict', () => {
  const first = engine('A', { '2020-01-01': `${crank('K1')}${pin('2.4995')}` });

  it('is a mark in two engines at once, with both places', () => {
    const second = engine('B', { '2021-01-01': crank('K1') });
    expect(codes(partOf([first, second]))).toEqual([
      'error: crankshaft K1 is fitted in B from 2021-01-01, and A has it since 2020-01-01 (A/2020-01-01.yaml:4:11): no document says that it was taken out',
    ]);
  });

  it('is none where the first engine has another in its place', () => {
    const gone = engine('A', { '2020-01-01': crank('K1'), '2020-06-01': crank('K2') });
    expect(codes(partOf([gone, engine('B', { '2021-01-01': crank('K1') })]))).toEqual([]);
  });

  it.each([
    ['2.4998', 1],
    ['2.4996', 0],
    ['2.4990', 0],
  ])('is a pin that wore to 2.4995 and is %s in a later engine', (later, count) => {
    const from =
      'kind: part\npart: crankshaft\nmark: K1\nfrom: [{ engine: A, date: 2020-06-01 }]\nfits: [A]\n';
    const second = engine('B', { '2021-01-01': `${crank('K1')}${pin(later)}` });
    const found = codes(partOf([first, second], from));
    expect(found).toHaveLength(count);
    if (count > 0)
      expect(found[0]).toContain(
        'warning: crankshaft K1: crankpin diameter 1 was 2.4995 on 2020-01-01 (A/2020-01-01.yaml',
      );
  });

  it('is none where the pin was ground in between', () => {
    const from =
      'kind: part\npart: crankshaft\nmark: K1\nfrom: [{ engine: A, date: 2020-06-01 }]\nfits: [A]\ninspections:\n  - { date: 2020-09-01, machined: [{ part: crankpins, note: chromed and ground }] }\n';
    const second = engine('B', { '2021-01-01': `${crank('K1')}${pin('2.4999')}` });
    expect(codes(partOf([first, second], from))).toEqual([]);
  });

  it('is a meter that runs backwards', () => {
    const back = engine('A', {
      '2020-01-01': `hours: 900\n${crank('K1')}`,
      '2021-01-01': `hours: 40\n${pin('2.4995')}`,
    });
    expect(codes(partOf([back]))).toEqual([
      'warning: crankshaft K1: hours 40 after 900 (A/2020-01-01.yaml:4:8): say hours_from where the meter was replaced',
    ]);
  });
});

describe('the trend of a part', () => {
  const lines = (part: MarkedPart) => {
    const measured = measuredPart(part);
    const characteristic = measured.sittings[0]?.rows[0]?.characteristic;
    return (characteristic && partTrend(measured, characteristic)?.lines) ?? [];
  };
  const K1 = (more = ''): string => crank('K1', more);
  const a = {
    '2020-01-01': `hours: 0\n${K1()}${pin('2.4998')}`,
    '2021-01-01': `hours: 1000\n${pin('2.4996')}`,
    '2021-06-01': crank('K2'),
  };

  it('goes on from one engine into the next', () => {
    const b = {
      '2022-01-01': `hours: 8000\n${K1()}${pin('2.4996')}`,
      '2023-01-01': `hours: 9000\n${pin('2.4994')}`,
    };
    const [line, ...others] = lines(partOf([engine('A', a), engine('B', b)]));
    expect(others).toEqual([]);
    expect(line?.points.map(({ x }) => x)).toEqual([0, 1000, 1000, 2000]);
  });

  it.each([
    [
      'is said to be of another size, and nobody told of work',
      ', crankpin: 0.010 under',
      ['crankshaft K1 fitted'],
    ],
    ['is said to be standard', ', crankpin: std', []],
  ])('begins anew where it %s: %s', (_, size, starts) => {
    const b = { '2022-01-01': `hours: 8000\n${K1(size)}${pin('2.4896')}` };
    const found = lines(partOf([engine('A', a), engine('B', b)])).flatMap(({ startedBy }) => startedBy ?? []);
    expect(found).toEqual(starts);
  });
});

describe('what lies on the shelf', () => {
  it('is judged by the limits of what it fits, at the size that it was ground to', () => {
    const a = engine('A', { '2020-01-01': pin('2.4995') });
    const text =
      'kind: part\npart: crankshaft\nmark: K1\nfits: [A]\ninspections:\n  - { date: 2020-02-01, stage: machined, machined: [{ part: crankpins, size: 0.010 under }], readings: [{ measure: crankpin_diameter, with: mic, at: { 1: 2.4895, 2: 2.4885 } }] }\n';
    const [sitting] = measuredPart(partOf([a], text)).sittings;
    expect(sitting?.rows.map(({ position, judgement }) => `${position.name} ${judgement.verdict}`)).toEqual([
      '1 ok',
      '2 out',
    ]);
    expect(sitting?.isBench).toBe(true);
  });
});
