import { quoted } from '../../diagnostic/quoted.ts';

export interface KeyTrouble {
  readonly message: string;
  readonly help: string;
  /** An entry can still be made of it, so that its value is looked at too. */
  readonly usable: boolean;
}

/** Names that every JavaScript object answers to: an entry of that name could change the program itself. */
const DANGEROUS: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

/**
 * Words that some reader of YAML takes for true, false or nothing. A small `on` is not among them: it is a key of
 * work done and of what was found (`on: cylinder 3`).
 */
const WORD =
  /^(yes|no|off|y|n|true|false|null|~|O[Nn])$|^(Y|N|YES|NO|OFF|TRUE|FALSE|NULL|Yes|No|Off|True|False|Null)$/;

/** What is wrong with a key, if anything is. `plain`: written without quotes. */
export function keyTrouble(key: string, plain: boolean): KeyTrouble | undefined {
  if (key === '') return { message: 'a key is empty', help: 'give it a name', usable: false };
  if (DANGEROUS.has(key)) {
    return { message: `${quoted(key)} cannot be a key`, help: 'choose another name', usable: false };
  }
  if (plain && WORD.test(key)) {
    const message = `the key ${quoted(key)} is a word that some readers take for true, false or nothing`;
    return { message, help: `put it in quotes: "${key}"`, usable: true };
  }
  const composed = key.normalize('NFC');
  if (key === composed) return undefined;
  const message = `the accents in the key ${quoted(key)} are separate characters: it looks like another key`;
  return { message, help: `write it in composed form (NFC): ${quoted(composed)}`, usable: true };
}
