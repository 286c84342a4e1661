import { expect, test } from 'vitest';
import { keyTrouble } from '../../../src/documents/yaml/key.ts';

const WORDS =
  'yes no off y n true false null ~ On ON Y N YES NO OFF TRUE FALSE NULL Yes No Off True False Null';

test.each(WORDS.split(' '))('%s is refused as a bare key, though its entry is read', (word) => {
  expect(keyTrouble(word, true)).toEqual({
    message: `the key \`${word}\` is a word that some readers take for true, false or nothing`,
    help: `put it in quotes: "${word}"`,
    usable: true,
  });
  expect(keyTrouble(word, false)).toBeUndefined();
});

test.each(['on', 'at', 'x', 'nulls', 'yess', 'off2', 'oN', '1', '05', 'caf\u00e9', 'toString'])(
  '%s is a sound key',
  (key) => {
    expect(keyTrouble(key, true)).toBeUndefined();
  },
);

test.each([
  ['', { message: 'a key is empty', help: 'give it a name', usable: false }],
  ['__proto__', { message: '`__proto__` cannot be a key', help: 'choose another name', usable: false }],
  ['constructor', { message: '`constructor` cannot be a key', help: 'choose another name', usable: false }],
  ['prototype', { message: '`prototype` cannot be a key', help: 'choose another name', usable: false }],
  [
    'cafe\u0301',
    {
      message: 'the accents in the key `cafe\u0301` are separate characters: it looks like another key',
      help: 'write it in composed form (NFC): `caf\u00e9`',
      usable: true,
    },
  ],
])('%j is refused, bare or in quotes', (key, wanted) => {
  expect([keyTrouble(key, true), keyTrouble(key, false)]).toEqual([wanted, wanted]);
});
