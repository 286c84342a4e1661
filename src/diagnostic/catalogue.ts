import type { DocumentCode } from './diagnostic.ts';

/** What `explain` tells of a problem with a document. */
export interface DocumentCodeHelp {
  readonly means: string;
  readonly usually: string;
}

/** Every code of a problem with a document; a document that has one is not judged. */
export const DOCUMENT_CODES: Readonly<Record<DocumentCode, DocumentCodeHelp>> = {
  'too-big': {
    means: 'The file is larger, or holds more items, than any document of a shop needs.',
    usually: 'Split it: one session a file.',
  },
  depth: {
    means: 'Lists and maps are nested too deeply.',
    usually: 'Write it with fewer levels; no document needs so many.',
  },
  alias: {
    means: 'The file uses a YAML anchor (&) or alias (*).',
    usually: 'Write the value out where it is needed; limits are shared with `extends`.',
  },
  tag: { means: 'The file gives a value a YAML tag (!).', usually: 'Take the tag out.' },
  directive: {
    means: 'The file begins with a YAML directive (%) that would change what its words mean.',
    usually: 'Take the line out.',
  },
  key: {
    means: 'A key is not plain text, or is a word that some programs read as true or false.',
    usually: 'Write it in quotes, or choose another word.',
  },
  'duplicate-key': {
    means: 'A key is written twice in a map, so that one of two values would be lost.',
    usually: 'Keep the one that is meant.',
  },
  scalar: {
    means:
      'A number is written in a way that is read differently by different programs: 012, 0x1F, 1e3, 1_000, 5.',
    usually: 'Write it plainly, or in quotes where it is a name.',
  },
  'control-character': {
    means:
      'The file holds a character that cannot be seen, such as an escape or a change of writing direction.',
    usually: 'Take it out; it may have come with a copy from elsewhere.',
  },
  encoding: { means: 'The file is not in UTF-8.', usually: 'Save it as UTF-8.' },
  yaml: {
    means: 'The file is not well-formed YAML.',
    usually: 'Look at the line shown, and at the one above it.',
  },
  merge: {
    means: 'The file holds the lines that git writes where it could not merge two versions.',
    usually: 'Keep the version that is right, and take out the marker lines.',
  },
  kind: {
    means:
      'The file does not say what it is, says something unknown, or is in a place where it is never read.',
    usually: 'Begin it with `kind:`; keep sessions and sequences below the folder of their engine.',
  },
  'unknown-key': {
    means: 'A key is not part of this kind of document.',
    usually: 'Correct its spelling, or put the text in a note.',
  },
  'missing-key': { means: 'A key that this document needs is not there.', usually: 'Add it.' },
  type: {
    means: 'A value is of the wrong kind: a list for a number, yes for true.',
    usually: 'Write what the message asks for.',
  },
  value: {
    means: 'A value is of the right kind, and is not possible here.',
    usually: 'Write what the message asks for.',
  },
  'no-unit': {
    means: 'A plain number has no unit: neither the document, nor its engine, nor the shop states one.',
    usually: 'Write the unit beside it, or `units:` in shop.yaml.',
  },
  'wrong-quantity': {
    means: 'A unit is of another quantity: a torque where a length is wanted.',
    usually: 'Correct the unit.',
  },
  'number-as-text': {
    means: 'Text is written where a number is wanted, such as 4,0010 or 3 1/8.',
    usually: 'Write it with a decimal point, without quotes.',
  },
  'decimal-comma': {
    means: 'A comma in a list separates two readings, and may have been meant as a decimal comma.',
    usually: 'Write decimals with a point.',
  },
  'too-fine': {
    means: 'A length is written more finely than a tenth of a nanometre.',
    usually: 'Write the digits that the instrument shows.',
  },
  'unknown-measure': {
    means: 'There is no characteristic of this name.',
    usually: 'Correct it, or add it under `characteristics:`.',
  },
  'unknown-position': {
    means: 'The engine has no such position.',
    usually: 'Correct it, or add it to `layout` in the engine document.',
  },
  'two-engines': {
    means: 'Two engine documents are in one folder, or one engine is inside the folder of another.',
    usually: 'Keep each engine in a folder of its own.',
  },
  'limits-conflict': {
    means: 'Two documents of one folder set the same limit of the same characteristic.',
    usually: 'Keep one of the two, or let one extend the other.',
  },
  extends: {
    means: 'A document cannot be extended: it is not there, is no limits document, or leads back to itself.',
    usually: 'Correct the path.',
  },
  formula: {
    means: 'A formula cannot be read, or uses an unknown name.',
    usually: 'Use sizes, characteristics, + - * / and brackets.',
  },
  unreadable: {
    means: 'A file or a folder could not be read.',
    usually: 'Look at its permissions; links are not followed.',
  },
  unread: {
    means:
      'An engine, limits, instruments or shop document is not read: it is a link, hidden, misnamed, or no regular file. Without it verdicts would be others.',
    usually: 'Put the file itself there, under a name that ends in .yaml.',
  },
};
