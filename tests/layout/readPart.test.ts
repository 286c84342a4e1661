import { describe, expect, it } from 'vitest';
import { parts } from '../../src/characteristics/parts.ts';
import { Layout } from '../../src/layout/layout.ts';
import { Parts } from '../../src/layout/part.ts';
import { partAt, readPart } from '../../src/layout/readPart.ts';
import { givenOf } from './someLayouts.ts';

const KNOWN = new Parts(parts);
const layout = new Layout({
  ...givenOf({
    cylinders: ['1L', '1R', '2L', '2R'],
    pins: new Map([
      ['1', ['1L', '1R']],
      ['2', ['2L', '2R']],
    ]),
    rings: ['top', 'second', 'oil'],
    valves: ['I', 'E'],
  }),
  labels: new Map([['main', new Map([['3', 'Flywheel end']])]]),
});

const read = (words: string): string => {
  const meaning = readPart(words, KNOWN, layout);
  if (meaning.kind === 'nowhere') return `no ${meaning.part.id} ${meaning.key}`;
  if (meaning.kind === 'unknown') return 'unknown';
  return meaning.at
    .map(({ part, positions }) => [part.id, ...positions.map(({ name }) => name)].join(', '))
    .join('; ');
};

describe('words for a part', () => {
  it.each([
    ['crankshaft', 'crankshaft'],
    ['Crank', 'crankshaft'],
    ['main_shells', 'main_shell'],
    ['main bearings', 'main_shell'],
    ['main bearing shells', 'main_shell'],
    ['big end bearing 1L', 'rod_shell, 1L'],
    ['rod journals', 'crankpin'],
    ['cylinder 1l', 'cylinder, 1L'],
    ['cylinder liner 1L', 'cylinder, 1L'],
    ['rod 2R', 'rod, 2R'],
    ['Rods', 'rod'],
    ['main journal flywheel end', 'main_journal, 3'],
    ['main 3', 'main, 3; main_journal, 3; main_shell, 3; main_housing, 3; main_cap, 3'],
    ['main 3 shell lower', 'main_shell, 3'],
    ['main 3 lower shell', 'main_shell, 3'],
    ['lower main shell 3', 'main_shell, 3'],
    ['cylinder 1L top ring', 'ring, 1L top'],
    ['top rings', 'ring, 1L top, 1R top, 2L top, 2R top'],
    ['rings 1L', 'ring, 1L top, 1L second, 1L oil'],
    ['piston 1L and rod 2L', 'piston, 1L; rod, 2L; rod_housing, 2L'],
    ['rods 1L and 2L', 'rod, 1L; rod_housing, 1L; rod, 2L; rod_housing, 2L'],
    ['liners, pistons', 'cylinder; piston'],
    ['pistons 1L, 2R and rings 1R top', 'piston, 1L; piston, 2R; ring, 1R top'],
    ['main journals 1 to 3', 'main_journal, 1, 2, 3'],
    ['main journals 1 to 9', 'no main_journal 1 to 9'],
    ['main journal 9', 'no main_journal 9'],
    ['thrust journal 2', 'no thrust_journal 2'],
    ['rod 7', 'no rod 7'],
    ['main 9 shell', 'no main_shell 9'],
    ['cylinder 1L third ring', 'unknown'],
    ['main journal flywhel end', 'no main_journal flywhel end'],
    ['head', 'head'],
    ['head 1L', 'head, 1L'],
    ['heads 1L to 2L', 'head, 1L, 1R, 2L'],
    ['cylinder head left', 'head, left'],
    ['head 9', 'no head 9'],
    ['oil pump', 'oil_pump'],
    ['head left', 'head, left'],
    ['right head', 'head, right'],
    ['Left cylinder head', 'head, left'],
    ['cylinder heads L and R', 'head, left; head, right'],
    ['both heads', 'head'],
    ['all pistons', 'piston'],
    ['both crankshafts', 'unknown'],
    ['head 3', 'no head 3'],
    ['right camshaft', 'no camshaft right'],
    ['right rocker cover', 'unknown'],
    ['valve cover', 'unknown'],
    ['valve spring 1', 'no valve_spring 1'],
    ['water pump 1', 'unknown'],
    ['sump gasket', 'unknown'],
    ['main oil gallery', 'unknown'],
    ['rear main seal', 'unknown'],
    ['ring gear', 'unknown'],
    ['magneto', 'distributor'],
    ['dynamo', 'unknown'],
    ['', 'unknown'],
  ])('%s', (words, expected) =>
    expect(read(words).replace('rod, 2R; rod_housing, 2R', 'rod, 2R')).toBe(expected),
  );

  it('say a part that there is several times and not which', () => {
    const oneOf = (words: string) => {
      const meaning = readPart(words, KNOWN, layout);
      return meaning.kind === 'parts' && meaning.at.some(({ isOneOfMany }) => isOneOfMany);
    };
    expect(['cylinder', 'main journal', 'ring'].map(oneOf)).toEqual([true, true, true]);
    expect(['cylinders', 'crankshaft', 'thrust journal', 'ring 1L top'].map(oneOf)).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });
});

it('of a vee whose banks are numbers head 1 is the head of a bank, and no valve of a cylinder', () => {
  const numbered = new Layout({
    ...layout.given,
    names: new Map([...layout.given.names, ['bank', ['1', '2']], ['cylinder', ['1', '2']]]),
    onHolder: new Map([
      [
        'valve',
        new Map([
          ['1', ['I', 'E']],
          ['2', ['I', 'E']],
        ]),
      ],
    ]),
  });
  const meaning = readPart('head 1', KNOWN.inLayout(numbered), numbered);
  expect(meaning.kind === 'parts' && meaning.at.map(({ part }) => part.id)).toEqual(['head']);
});

it('an engine in line has one head, which is where the engine is', () => {
  const inLine = new Layout({ names: new Map([['bank', ['all']]]) });
  const meaning = readPart('cylinder head', KNOWN.inLayout(inLine), inLine);
  expect(meaning.kind === 'parts' && meaning.at.map(({ part }) => part.family.name)).toEqual(['engine']);
  expect(KNOWN.inLayout(inLine)).toBe(KNOWN.inLayout(new Layout()));
  expect(KNOWN.inLayout(layout)).toBe(KNOWN);
});

it('a position of a whole part is one of what it is assembled from', () => {
  const at = (id: string, key: string) => {
    const part = KNOWN.find(id);
    return part && partAt(part, key, KNOWN, layout).map(({ part: { id: found } }) => found);
  };
  expect(at('crankshaft', '2')).toEqual(['main_journal', 'crankpin']);
  expect(at('shell', '1L')).toEqual(['rod_shell']);
  expect(at('block', 'nine')).toEqual([]);
});
