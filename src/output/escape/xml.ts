import { escapeHidden } from '../../diagnostic/quoted.ts';
import { type Escaped, joined, letOut, tagWith, type Written } from './language.ts';

export type Xml = Escaped<'xml'>;

/** Text of others inside XML, between tags or in an attribute: never markup, and no character that XML 1.0 forbids. */
export const xml = tagWith<'xml', string | number>((value) =>
  escapeHidden(String(value)).replace(MEANS_MORE, (found) => `&#${found.charCodeAt(0)};`),
);

/** `##` would begin a command to a log. */
const MEANS_MORE = /[&<>"']|#(?=#)/g;

/** An element that holds others, each on lines of its own. */
export const element = (
  name: 'testsuites' | 'testsuite' | 'testcase' | 'failure' | 'error' | 'skipped' | 'system-out',
  attributes: Readonly<Record<string, string | number>>,
  children: readonly Xml[],
): Xml => {
  const said = joined(
    Object.entries(attributes).map(([key, value]) => xml` ${key}="${value}"`),
    xml``,
  );
  return children.length === 0
    ? xml`<${name}${said}/>`
    : xml`<${name}${said}>\n${joined(children, xml`\n`)}\n</${name}>`;
};

export const writtenXml = (root: Xml): Written =>
  letOut(xml`<?xml version="1.0" encoding="UTF-8"?>\n${root}\n`.source);
