import { join } from 'node:path';
import { expect, it } from 'vitest';
import { callHere } from '../../inProcess.ts';
import { readCommand } from '../../output/check/formats/readCommand.ts';
import { type Element, readXml } from '../../output/check/formats/readXml.ts';
import { isCommand } from '../../output/escape/commands.ts';
import { HIDDEN } from '../../output/escape/hidden.ts';
import { nodesOf, parsedMarkdown, REFERENCE, textsOf } from '../../output/escape/readMarkdown.ts';
import { isLong } from '../../propertyRuns.ts';
import { benchFolder } from '../calling.ts';
import { numbered, REFUSED_SHOPS, sample, TAKEN_SHOPS, WIDTHS } from './attacks.ts';
import { type Call, JUDGED, LAID_OUT, OF_NO_WIDTH, OF_PROBLEMS, OF_PROBLEMS_OF_NO_WIDTH } from './calls.ts';
import { harmlessAs, NAME, oneLineAs, putShops } from './hostileShop.ts';
import { FAULTY_SHOP } from './madeDocuments.ts';
import { shownOn } from './screen.ts';
import { SOUND_SHOP } from './soundShop.ts';

const bench = benchFolder();

/** Many calls print much of what others do. */
const A_FEW = 6;

const COLOUR = /\u001b\[[\d;]*m/g;

/** What is printed of one of the two shops, both streams as a log has them. */
async function print(folder: string, { words, language }: Call, columns: number | undefined) {
  const cwd = join(bench.folder(), folder);
  const ran = await callHere(words, { cwd, ...(columns === undefined ? {} : { columns }) });
  const text = ran.stdout + ran.stderr;
  return { ...ran, text, lines: text.replaceAll(COLOUR, '').split(language === 'csv' ? /\r?\n/ : '\n') };
}

const withoutSpaces = (text: string): string => text.replaceAll(/\s+/g, '');

async function expectUnmoved(call: Call, columns: number | undefined): Promise<void> {
  const hostile = await print('hostile', call, columns);
  const plain = await print('plain', call, columns);
  // Of many problems commands show a few alone, which need not name anything.
  if (call.language !== 'commands') expect(plain.text).toMatch(NAME);
  expect(hostile.exitCode).toBe(plain.exitCode);
  expect(hostile.lines.filter((line) => HIDDEN.test(line))).toEqual([]);
  expect(hostile.lines.filter(isCommand).length).toBe(commandsOf(call, plain.lines));
  if (!namesParts(call) && suggestionsIn(hostile.text) === suggestionsIn(plain.text))
    expect(hostile.lines).toHaveLength(plain.lines.length);
  const screen = await shownOn(columns ?? WIDE, hostile.text);
  expect(screen.obeyed).toEqual([]);
  expect(screen.lines.map(withoutSpaces)).toEqual(hostile.lines.slice(0, -1).map(withoutSpaces));
  if (call.language === 'markdown') expectSameNodes(hostile.stdout, plain.stdout);
  if (call.language === 'xml') expect(shapeOfXml(hostile.stdout)).toEqual(shapeOfXml(plain.stdout));
  if (call.language === 'json') expect(shapeOf(hostile.stdout)).toEqual(shapeOf(plain.stdout));
}

/** Only where commands are asked for are there any, and no more for what stands in them. */
function commandsOf({ language }: Call, lines: readonly string[]): number {
  const commands = language === 'commands' ? lines.filter(isCommand) : [];
  for (const line of commands) expect(Object.keys(readCommand(line)?.properties ?? {})).toContain('title');
  return commands.length;
}

const shapeOfXml = (text: string): unknown => text !== '' && nested(readXml(text));

const nested = ({ name, attributes, children }: Element): unknown => [
  name,
  Object.keys(attributes),
  children.map(nested),
];

/** As people say them, without the hyphens that a harmless name has not: such a line breaks at other places. */
const namesParts = ({ words }: Call): boolean => words.includes('plan');

/** Which names are near each other depends on the texts, and a suggestion more takes lines of its own. */
const suggestionsIn = (text: string): number => text.match(/did\s+you\s+mean/g)?.length ?? 0;

/** Of no width is a log that is looked at. */
const WIDE = 400;

function expectSameNodes(hostile: string, plain: string): void {
  const [page, plainPage] = [parsedMarkdown(hostile), parsedMarkdown(plain)];
  expect(nodesOf(page)).toEqual(nodesOf(plainPage));
  expect(textsOf(page).filter((each) => REFERENCE.test(each))).toEqual([]);
}

/** How many lists, maps and values there are, and how deep. */
const shapeOf = (text: string): unknown => (text === '' ? undefined : shape(JSON.parse(text)));

function shape(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(shape);
  return typeof value === 'object' && value !== null ? Object.values(value).map(shape) : typeof value;
}

it.each(numbered(TAKEN_SHOPS))('of hostile shop %i no text is obeyed', async (_, textFor) => {
  putShops(bench, SOUND_SHOP, textFor, harmlessAs(textFor));
  const { stdout } = await print('hostile', JUDGED, undefined);
  expect(JSON.parse(stdout)).toMatchObject({ diagnostics: [] });
  for (const columns of WIDTHS)
    for (const call of sample(LAID_OUT, A_FEW)) await expectUnmoved(call, columns);
  for (const call of sample(OF_NO_WIDTH, A_FEW)) await expectUnmoved(call, undefined);
});

async function expectProblemsUnmoved(): Promise<void> {
  for (const columns of WIDTHS) for (const call of sample(OF_PROBLEMS, 2)) await expectUnmoved(call, columns);
  for (const call of sample(OF_PROBLEMS_OF_NO_WIDTH, A_FEW)) await expectUnmoved(call, undefined);
}

it.each(numbered(TAKEN_SHOPS))('no text is obeyed where hostile shop %i has problems', async (_, textFor) => {
  putShops(bench, FAULTY_SHOP, textFor, oneLineAs(textFor));
  await expectProblemsUnmoved();
});

it.each(numbered(REFUSED_SHOPS))(
  'no text is obeyed of hostile shop %i, which is refused',
  async (_, textFor) => {
    for (const shop of isLong ? [SOUND_SHOP, FAULTY_SHOP] : [FAULTY_SHOP]) {
      putShops(bench, shop, textFor, oneLineAs(textFor));
      await expectProblemsUnmoved();
    }
  },
);
