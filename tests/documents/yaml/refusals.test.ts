import { expect, test } from 'vitest';
import { load, told } from '../load.ts';

const ALIAS = 'write the value out wherever it is meant';
const PLAIN = 'write it as a plain decimal, such as 3.2478; put it in quotes if it is a name';

/** What is well-formed and refused all the same, and all that is said of it. */
test.each([
  [
    'a control character',
    'a: x\0\n',
    ['1:5-6 control-character: the control character \\u{0} is not allowed here; delete it'],
  ],
  [
    'a control character on each of two lines',
    'a: \x01\x01\r\nb: x\x1b',
    [
      '1:4-5 control-character: the control character \\u{1} is not allowed here; delete it',
      '2:5-6 control-character: the control character \\u{1b} is not allowed here; delete it',
    ],
  ],
  [
    'one control as it is and once more as an escape',
    'a: x\x1b\nb: "\\e"\n',
    [
      '1:5-6 control-character: the control character \\u{1b} is not allowed here; delete it',
      '2:4-8 control-character: this text holds the control character \\u{1b}; leave it out',
    ],
  ],
  [
    'a tag at the start of the file',
    '!t 1\n',
    ['1:1-3 tag: `!t` is a tag, and tags are not used here; leave the tag out'],
  ],
  [
    'a carriage return alone',
    'a: x\ry\r\n',
    ['1:5-6 control-character: a carriage return without a line feed; end lines with LF or CRLF'],
  ],
  [
    'a byte order mark at the start of a line',
    'b: 1\n\ufeffc: 2\n',
    ['2:1-2 control-character: a byte order mark inside the text; delete it'],
  ],
  [
    'a second byte order mark',
    '\ufeff\ufeffa: 1\n',
    ['1:1-2 control-character: a byte order mark inside the text; delete it'],
  ],
  [
    'an escape that brings in a control character',
    'a: "\\e"\n',
    ['1:4-8 control-character: this text holds the control character \\u{1b}; leave it out'],
  ],
  [
    'the same as it is and as an escape',
    'a: "x\x1b\\e"\n',
    ['1:6-7 control-character: the control character \\u{1b} is not allowed here; delete it'],
  ],
  [
    'a key of such an escape',
    '"\\e": 1\n',
    ['1:1-5 control-character: this text holds the control character \\u{1b}; leave it out'],
  ],
  [
    'a key twice',
    'a: 1\nb: 2\na: 3\n',
    ['3:1-2 duplicate-key: the key `a` is written twice; first on line 1; keep one of the two'],
  ],
  ['a dangerous key', '__proto__: 1\n', ['1:1-10 key: `__proto__` cannot be a key; choose another name']],
  ['an empty key', ': 1\n', ['1:1-1 key: a key is empty; give it a name']],
  ['a list as a key', '? [a, b]\n: 1\n', ['1:3-9 key: a key is a list or a map; write a name or a number']],
  ['an anchor', 'a: &x  1\n', [`1:4-6 alias: \`&x\` is an anchor, and anchors are not used here; ${ALIAS}`]],
  [
    'an anchor of the whole document',
    '&x\nb: 1\n',
    [`1:1-3 alias: \`&x\` is an anchor, and anchors are not used here; ${ALIAS}`],
  ],
  [
    'an anchor of nothing',
    '- &x\n',
    [`1:3-5 alias: \`&x\` is an anchor, and anchors are not used here; ${ALIAS}`],
  ],
  [
    'an anchor and a tag in brackets',
    '[a,&x b,{!t c: d}]\n',
    [
      `1:4-6 alias: \`&x\` is an anchor, and anchors are not used here; ${ALIAS}`,
      '1:10-12 tag: `!t` is a tag, and tags are not used here; leave the tag out',
    ],
  ],
  [
    'an anchor and a tag of one value',
    'a: !t &x 1\n',
    [
      '1:4-6 tag: `!t` is a tag, and tags are not used here; leave the tag out',
      `1:7-9 alias: \`&x\` is an anchor, and anchors are not used here; ${ALIAS}`,
    ],
  ],
  ['an alias', 'a: *x\n', [`1:4-6 alias: \`*x\` is an alias, and aliases are not used here; ${ALIAS}`]],
  [
    'an alias as a key',
    '? *x\n: 1\n',
    [`1:3-5 alias: \`*x\` is an alias, and aliases are not used here; ${ALIAS}`],
  ],
  [
    'a directive',
    '\ufeff%FOO\n---\na: 1\n',
    ['1:1-5 directive: a directive line (%) is not used here; leave the line out: documents are YAML 1.2'],
  ],
  [
    'the version twice, with comments',
    '# x\n\n%YAML 1.2 # y\n \n%YAML 1.2\n---\na: 1\n',
    ['5:1-10 directive: a directive line (%) is not used here; leave the line out: documents are YAML 1.2'],
  ],
  [
    'nesting too deep',
    '['.repeat(34) + ']'.repeat(34),
    ['1:33-34 depth: lists and maps are nested more than 32 deep; nest them less deep'],
  ],
  [
    'nesting too deep, twice',
    `- ${'['.repeat(32)}${']'.repeat(32)}\n`.repeat(2),
    ['1:34-35 depth: lists and maps are nested more than 32 deep; nest them less deep'],
  ],
  [
    'an underscore in a number',
    'a: 1_0\n',
    [`1:4-7 scalar: \`1_0\` can be read in more than one way: some readers drop the underscore; ${PLAIN}`],
  ],
  [
    'more digits than a number keeps',
    'a: 12345678901234567890\n',
    [
      `1:4-24 scalar: \`12345678901234567890\` can be read in more than one way: it has 20 significant digits, and a number keeps 15; ${PLAIN}`,
    ],
  ],
  [
    'a number that is too small',
    `a: 0.${'0'.repeat(400)}1\n`,
    [
      `1:4-407 scalar: \`0.${'0'.repeat(58)}…\` can be read in more than one way: it is too small to be kept; ${PLAIN}`,
    ],
  ],
])('%s', (_what, text, wanted) => {
  expect(told(load(text))).toEqual(wanted);
});
