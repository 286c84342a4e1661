import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sarifText, uriReference } from '../../../src/output/escape/sarifText.ts';
import { writtenCommands } from '../../../src/output/escape/workflowCommands.ts';
import { element, writtenXml, xml } from '../../../src/output/escape/xml.ts';
import { anyCharacter } from '../../anyCharacter.ts';
import { runs } from '../../propertyRuns.ts';
import { readCommand } from '../check/formats/readCommand.ts';
import { readXml } from '../check/formats/readXml.ts';
import { isCommand } from './commands.ts';
import { HIDDEN } from './hidden.ts';
import { COMMANDS, CONTROLS, MARKUP, NAUGHTY } from './hostileTexts.ts';

const XML: readonly string[] = [
  ']]>',
  '<!--',
  '-->',
  '<![CDATA[x]]>',
  '<?a b?>',
  '&amp;',
  '&#0;',
  '"\'>',
  '<failure/>',
];
const PARTS: readonly string[] = [
  'a,b',
  'a=b',
  'a:b',
  '%',
  '%25',
  '%3A',
  '%0A::error::x',
  'file=a::b',
  '##[error]',
];
const LINKS: readonly string[] = ['[a](http://b)', '[a](1)', '{0}', '{{0}}', '[[a]](b)', '\\[a](b)'];
const HOSTILE = [...COMMANDS, ...CONTROLS, ...MARKUP, ...NAUGHTY, ...XML, ...PARTS, ...LINKS];

/** What a reader is shown of it: the same, hidden characters written out. */
const shown = (text: string): string =>
  text.replaceAll('\n', '\\n').replaceAll('\r', '\\r').replaceAll('\t', '\\t');

const everyText = (holds: (text: string) => void): void => {
  for (const text of HOSTILE) holds(text);
  fc.assert(fc.property(fc.string({ unit: anyCharacter }), holds), runs(1000, 50));
};

describe('a text of others', () => {
  it('is text in XML, between tags and in an attribute', () => {
    const holds = (texts: readonly string[]): void => {
      const cases = texts.map((text) => element('testcase', { name: text }, [xml`a${text}b`]));
      const written = writtenXml(element('testsuite', {}, cases));
      expect(written.split('\n').filter(isCommand)).toEqual([]);
      const { children } = readXml(written);
      expect(children).toHaveLength(texts.length);
      for (const [index, { attributes, children: below, text }] of children.entries()) {
        expect({ keys: Object.keys(attributes), below }).toEqual({ keys: ['name'], below: [] });
        expect(text).toBe(`\na${attributes.name}b\n`);
        const meant = shown(texts[index] ?? '');
        if (!new RegExp(HIDDEN, 'u').test(meant)) expect(attributes.name).toBe(meant);
      }
    };
    holds(HOSTILE);
    fc.assert(
      fc.property(fc.string({ unit: anyCharacter }), (text) => holds([text])),
      runs(1000, 50),
    );
  });

  it('stays in its place in a command to the log of a job', () =>
    everyText((text) => {
      const written = writtenCommands([
        { name: 'error', properties: { file: text, line: 1 }, message: text },
      ]);
      const [line = '', ...rest] = written.split('\n');
      expect(rest).toEqual(['']);
      expect(line).not.toMatch(HIDDEN);
      expect(line).not.toMatch(/##\w*\[/);
      const read = readCommand(line);
      expect({ name: read?.name, keys: Object.keys(read?.properties ?? {}) }).toEqual({
        name: 'error',
        keys: ['file', 'line'],
      });
      expect(read?.properties).toEqual({ file: read?.message, line: '1' });
    }));

  it('is no link and no placeholder in a message of a SARIF log', () =>
    everyText((text) => {
      const unescaped = sarifText(text).replaceAll('{{', '').replaceAll('}}', '');
      expect(unescaped).not.toMatch(/[{}]|(?<!\\)\]\(/);
    }));

  it('is one path in a reference', () =>
    everyText((text) => {
      const reference = uriReference(text);
      expect(reference).toMatch(/^[\x21-\x7e]*$/);
      expect(reference).not.toMatch(/[?#:]/);
    }));
});
