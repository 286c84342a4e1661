import { describe, expect, it } from 'vitest';
import { loadYaml } from '../../../src/documents/yaml/loader.ts';
import { mergeMarkers } from '../../../src/documents/yaml/mergeMarkers.ts';

const codesOf = (text: string) =>
  loadYaml('session.yaml', Buffer.from(text)).diagnostics.map(
    ({ code, place }) => `${place.line}:${place.column} ${code}`,
  );

const CONFLICT = '<<<<<<< HEAD\nby: RK\n=======\nby: JM\n>>>>>>> other\n';

describe('what git could not merge is one problem', () => {
  it.each([
    ['in a map', `kind: session\n${CONFLICT}stage: teardown\n`, 2],
    ['two of them', `kind: session\n${CONFLICT}stage: teardown\n${CONFLICT}`, 2],
    ['with the version before both', `a: 1\n<<<<<<< a\nb: 1\n||||||| c\nb: 2\n=======\nb: 3\n>>>>>>> b\n`, 2],
    ['that keys stand twice in', `<<<<<<< HEAD\na: 1\n=======\na: 2\n>>>>>>> b\n`, 1],
    ['in brackets', `a: [1,\n<<<<<<< HEAD\n2,\n=======\n3,\n>>>>>>> b\n4]\n`, 2],
    ['with the line ends of another system', `a: 1\r\n${CONFLICT.replaceAll('\n', '\r\n')}`, 2],
    ['of which only the last line was forgotten', 'a: 1\n>>>>>>> other\n', 2],
    ['without names', 'a: 1\n<<<<<<<\nb: 1\n=======\n>>>>>>>\n', 2],
  ])('%s', (_, text, line) => {
    expect(codesOf(text)).toEqual([`${line}:1 document/merge`]);
  });

  it.each([
    ['one place', `a: 1\n${CONFLICT}`, 5, 17],
    ['2 places', `${CONFLICT}${CONFLICT}`, 0, 12],
    ['one place', 'a: 1\n>>>>>>> other\r\n', 5, 18],
  ])('that is in %s is told with what to keep', (places, text, start, end) => {
    expect(mergeMarkers(text)).toEqual({
      code: 'merge',
      span: { start, end },
      message: `git could not merge ${places} of this file, and left both versions there`,
      help: 'keep the version that is right, and take out the lines that begin with <<<<<<<, ======= and >>>>>>>',
    });
  });

  it.each([
    ['quoted in a note', `note: |\n  <<<<<<< HEAD\n  =======\n  >>>>>>> other\n`],
    ['a comment', '# <<<<<<< HEAD\na: 1\n'],
    ['a merge key', '"<<": 1\n'],
  ])('%s is none', (_, text) => {
    expect(codesOf(text)).toEqual([]);
  });
});
