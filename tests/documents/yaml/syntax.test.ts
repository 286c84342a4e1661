import { describe, expect, test } from 'vitest';
import { type Complaint, translate } from '../../../src/documents/yaml/syntax.ts';
import { found, load, told } from '../load.ts';

/** What is wrong, the text, and what is said of it: from where to where, of what kind, and what to do. */
const CASES: readonly (readonly [string, string, readonly string[]])[] = [
  ['a tab as indentation', 'a:\n\tb: 1\n', ['2:1-2 yaml: a tab is used to indent; indent with spaces']],
  [
    'two keys on a line',
    'a: b: c\n',
    [
      '1:4-5 yaml: a second key or a list begins on the line of a key; begin a new line, indented; or put text that holds a colon and a space in quotes',
    ],
  ],
  [
    'an open bracket',
    'a: [1, 2\n',
    [
      '1:9-9 yaml: the file ends here, and a bracket or a quote is still open; close it where the list, the map or the text ends',
    ],
  ],
  [
    'an open brace',
    'a: { b: 1\n',
    [
      '1:10-10 yaml: the file ends here, and a bracket or a quote is still open; close it where the list, the map or the text ends',
    ],
  ],
  [
    'a bracket left open above a key',
    'a:\n  - b: [x, y\n    c: 1\n',
    [
      '2:8-9 yaml: this `[` is not closed before the next line begins anew; write the ] where the list or the mapping ends',
    ],
  ],
  [
    'a brace left open above an item',
    'a:\n  - { b: 1\n  - c: 1\n',
    [
      '2:5-6 yaml: this `{` is not closed before the next line begins anew; write the } where the list or the mapping ends',
    ],
  ],
  [
    'a bracket left open within braces',
    'a: { b: [1, 2 }\nc: 1\n',
    [
      '1:9-10 yaml: this `[` is not closed before the next line begins anew; write the ] where the list or the mapping ends',
    ],
  ],
  [
    'a brace left open within brackets',
    'a: [1, { b: 2 ]\nc: 1\n',
    [
      '1:8-9 yaml: this `{` is not closed before the next line begins anew; write the } where the list or the mapping ends',
    ],
  ],
  [
    'a stray bracket below empty braces',
    'a: {}\n]\n',
    [
      '2:1-2 yaml: `]` does not belong here; compare it with the lines around it; put text with special characters in quotes',
    ],
  ],
  [
    'an open double quote',
    'a: "x\n',
    [
      '1:6-6 yaml: the file ends here, and a bracket or a quote is still open; close it where the list, the map or the text ends',
    ],
  ],
  [
    'an open single quote',
    "a: 'x\n\n",
    [
      '1:6-6 yaml: the file ends here, and a bracket or a quote is still open; close it where the list, the map or the text ends',
    ],
  ],
  [
    'an open brace below a stray bracket, above a comment',
    'a: ]\n{\n# note\n',
    [
      '1:4-5 yaml: `]` does not belong here; compare it with the lines around it; put text with special characters in quotes',
      '2:1-2 yaml: `{` does not belong here; compare it with the lines around it; put text with special characters in quotes',
      '3:7-7 yaml: the file ends here, and a bracket or a quote is still open; close it where the list, the map or the text ends',
    ],
  ],
  [
    'an unknown escape',
    'a: "\\q"\n',
    ['1:5-7 yaml: `\\q` is not an escape that YAML knows; write \\\\ for a backslash, or use single quotes'],
  ],
  [
    'a forgotten colon',
    'kind session\nstage: teardown\n',
    [
      '1:1-2:6 yaml: `kind session` has no colon and space, so it runs on into the next line; write the key, a colon and a space on one line: `measure: main_journal_diameter`',
    ],
  ],
  [
    'a forgotten space',
    'kind:session\nstage: teardown\n',
    [
      '1:1-2:6 yaml: `kind:session` has no colon and space, so it runs on into the next line; write the key, a colon and a space on one line: `measure: main_journal_diameter`',
    ],
  ],
  [
    'a forgotten colon at the end',
    'a: 1\nfoo\n',
    [
      '2:1-4 yaml: `foo` is where a key and its colon are expected; look for a colon and a space after a key, a comma between items, a space before #, a closing quote or bracket',
    ],
  ],
  ['a reserved first character', 'a: @x\n', ['1:4-5 yaml: a value cannot begin with `@`; put it in quotes']],
  [
    'a list out of line',
    'a:\n  - 1\n - 2\n',
    [
      '3:1-2 yaml: a second key or a list begins on the line of a key; begin a new line, indented; or put text that holds a colon and a space in quotes',
    ],
  ],
  [
    'keys out of line',
    'a:\n  b: 1\n c: 2\n',
    [
      '3:1-2 yaml: the indentation does not fit the lines above; start the keys of one map, and the items of one list, in the same column; close every bracket and quote',
    ],
  ],
  [
    'keys out of line below a comment',
    'a:\n  b: 1\n# c\n\n c: 2\n',
    [
      '5:2-3 yaml: the indentation does not fit the lines above; start the keys of one map, and the items of one list, in the same column; close every bracket and quote',
    ],
  ],
  [
    'keys below empty braces',
    'a: {}\n#   b: 1\n  c: 2\n',
    ['3:3-4 yaml: lines follow `{}`, which says that there are none; take the {} away'],
  ],
  [
    'items below empty brackets',
    'a: [] # none\n  - 1\n',
    ['2:1-2 yaml: lines follow `[]`, which says that there are none; take the [] away'],
  ],
  [
    'a stray bracket',
    'a: 1\n]\n',
    [
      '2:1-2 yaml: `]` does not belong here; compare it with the lines around it; put text with special characters in quotes',
    ],
  ],
  [
    'a comment without a space',
    'a: "x"#c\n',
    [
      '1:7-9 yaml: `#c` is where a key and its colon are expected; look for a colon and a space after a key, a comma between items, a space before #, a closing quote or bracket',
    ],
  ],
  [
    'a block in brackets',
    'a: [\n  - 1\n  ]\n',
    ['2:3-3:1 yaml: an indented list or map is inside brackets; write it in brackets too: [ ] or { }'],
  ],
  [
    'a second document',
    'a: 1\n---\nb: 2\n',
    [
      '2:1-3:5 yaml: a second document begins here (after --- or ...); put each document in a file of its own',
    ],
  ],
  [
    'text after the end',
    'a: 1\n...\nb: 2\n',
    ['3:1-5 yaml: a second document begins here (after --- or ...); put each document in a file of its own'],
  ],
  [
    'a quoted key over lines',
    '"a\n b": 1\n',
    [
      '1:1-2:4 yaml: a key goes over several lines; write the key, a colon and a space on one line: `measure: main_journal_diameter`',
    ],
  ],
  [
    'a very long key',
    `${'k'.repeat(1100)}: 1\n`,
    ['1:1-1101 yaml: a key is longer than 1024 characters; shorten it'],
  ],
  [
    'two words where a colon is missing, in the middle',
    'a: 1\nb\nc: 2\n',
    [
      '2:1-2 yaml: a character is missing here; look for a colon and a space after a key, a comma between items, a space before #, a closing quote or bracket',
    ],
  ],
  [
    'a block of text with a wrong sign',
    'a: |x\n b\n',
    [
      '1:5-6 yaml: `x` does not belong here; compare it with the lines around it; put text with special characters in quotes',
    ],
  ],
  [
    'a key behind an item',
    'a:\n- b: 1\n c: 2\n',
    [
      '3:1-2 yaml: a character is missing here; look for a colon and a space after a key, a comma between items, a space before #, a closing quote or bracket',
    ],
  ],
  [
    'text behind a quote',
    'a: "b" c\n',
    [
      '1:8-9 yaml: `c` does not belong here; compare it with the lines around it; put text with special characters in quotes',
    ],
  ],
  [
    'a key below a list',
    '- a\nb: 1\n',
    [
      '2:1-2 yaml: `b` does not belong here; compare it with the lines around it; put text with special characters in quotes',
    ],
  ],
  [
    'a map below empty braces',
    'a: {}\n  c: 2\n',
    ['2:1-2 yaml: lines follow `{}`, which says that there are none; take the {} away'],
  ],
  [
    'two slips of one kind on a line',
    'a: ] ]\n',
    [
      '1:4-5 yaml: `]` does not belong here; compare it with the lines around it; put text with special characters in quotes',
    ],
  ],
  [
    'lines of two slips',
    'a: ]\nb: ]\n',
    [
      '1:4-5 yaml: `]` does not belong here; compare it with the lines around it; put text with special characters in quotes',
      '2:1-2 yaml: `b` does not belong here; compare it with the lines around it; put text with special characters in quotes',
    ],
  ],
  [
    'a word that is no key before a slip of its line',
    'yes: b: c\n',
    [
      '1:6-7 yaml: a second key or a list begins on the line of a key; begin a new line, indented; or put text that holds a colon and a space in quotes',
    ],
  ],
  [
    'an open bracket over lines, which has its end',
    'a: [1\nb: 2\n]\n',
    [
      '1:4-5 yaml: this `[` is not closed before the next line begins anew; write the ] where the list or the mapping ends',
      '3:1-2 yaml: `]` does not belong here; compare it with the lines around it; put text with special characters in quotes',
    ],
  ],
];

describe('text that is not well-formed', () => {
  test.each(CASES)('%s is reported in our own words, with its place', (_what, text, wanted) => {
    const loaded = load(text);
    expect(told(loaded)).toEqual(wanted);
    expect(Object.keys(loaded)).toEqual(['source', 'diagnostics']);
  });

  const NO_ALIAS = 'write the value out wherever it is meant';

  // Most of these are seen at the same place by the walk, which says it first; that none comes up without words is held here.
  test.each<[Complaint['code'], string, string, string]>([
    ['ALIAS_PROPS', 'alias', 'an alias carries an anchor or a tag', NO_ALIAS],
    [
      'BAD_ALIAS',
      'alias',
      'anchors (&) and aliases (*) are not used here',
      `${NO_ALIAS}; put text that begins so in quotes`,
    ],
    ['MULTIPLE_ANCHORS', 'alias', 'a value has two anchors', NO_ALIAS],
    ['BAD_PROP_ORDER', 'alias', 'an anchor or a tag is in the wrong place', 'leave it out'],
    ['MULTIPLE_TAGS', 'tag', 'a value has two tags', 'leave the tag out'],
    ['TAG_RESOLVE_FAILED', 'tag', 'tags such as `!x` are not used here', 'leave the tag out'],
    ['BAD_COLLECTION_TYPE', 'tag', 'a tag does not fit the list or map after it', 'leave the tag out'],
    ['DUPLICATE_KEY', 'duplicate-key', 'a key is written twice', 'keep one of the two'],
    ['IMPOSSIBLE', 'yaml', 'this cannot be read', 'compare it with the lines around it'],
    ['BAD_SCALAR_START', 'yaml', 'a value cannot begin with `!x`', 'put it in quotes'],
  ])('what the parser calls %s has words too', (code, kind, message, help) => {
    const problem = translate({ code, pos: [3, 5] }, 'a: !x 1\n', () => undefined);
    expect(problem).toEqual({ code: kind, span: { start: 3, end: 5 }, message, help });
  });

  test('a place where something is missing has no word to quote', () => {
    const problem = translate({ code: 'UNEXPECTED_TOKEN', pos: [1, 1] }, 'a: 1\n', () => undefined);
    expect(problem).toMatchObject({ span: { start: 1, end: 1 }, message: 'something is missing here' });
  });

  test('a place outside the text, or that ends before it begins, is brought into it', () => {
    const spanOf = (pos: [number, number]) =>
      translate({ code: 'IMPOSSIBLE', pos }, 'ab cd \n\n', () => undefined).span;
    expect([spanOf([-1, 2]), spanOf([3, 1]), spanOf([4, 99]), spanOf([7, 8])]).toEqual([
      { start: 0, end: 2 },
      { start: 3, end: 3 },
      { start: 4, end: 5 },
      { start: 5, end: 5 },
    ]);
  });

  test('a tag that has no end leaves the document readable', () => {
    const loaded = load('a: !<x\n');
    expect(told(loaded)).toEqual(['1:4-7 tag: tags such as `!<x` are not used here; leave the tag out']);
    expect(loaded.data).toEqual({ a: null });
  });

  test('all of it is reported in one run, in the order of the file', () => {
    const text = 'a: 012\nb: "\\q"\nc: @x\nd: &y 1\nd: 2\n';
    expect(found(load(text))).toEqual([
      '1:4 scalar',
      '2:5 yaml',
      '3:4 yaml',
      '4:4 alias',
      '5:1 duplicate-key',
    ]);
  });

  test('a hundred problems are listed and the rest are counted', () => {
    const { diagnostics } = load('x: 0x1\n'.repeat(250));
    expect(diagnostics).toHaveLength(101);
    expect(diagnostics.at(-1)?.message).toContain('399 more problems');
  });

  test('control characters of the file never come back in a message', () => {
    const { diagnostics } = load('a: \x1b[31m]\n\x1b]0;x\x07: &\x1b 1\nb: @\x1b\n"\x1b": "\\q\x1b"\n');
    expect(diagnostics.length).toBeGreaterThan(3);
    for (const { message, help } of diagnostics)
      expect(`${message}${help}`).not.toMatch(/[\x00-\x1f\x7f-\x9f]/);
  });
});
