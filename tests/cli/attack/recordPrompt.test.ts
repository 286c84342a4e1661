import { join } from 'node:path';
import { expect, it } from 'vitest';
import { isCommand } from '../../output/escape/commands.ts';
import { HIDDEN } from '../../output/escape/hidden.ts';
import { benchFolder } from '../calling.ts';
import { numbered, TAKEN_SHOPS, WIDTHS } from './attacks.ts';
import { harmlessAs, NAME, putShops } from './hostileShop.ts';
import { typed } from './keyboard.ts';
import { shownOn } from './screen.ts';
import { SOUND_SHOP } from './soundShop.ts';

const bench = benchFolder();

const WORDS = ['record', 'engines/pump', '--stage', 'trial', '--measure', 'ring_end_gap,stud_height'];

/** Of every answer that the prompt gives. */
const LINES = [
  '?',
  '0.5',
  'n note',
  's',
  'at 9',
  '0.6',
  'back',
  '0.5',
  'nonsense',
  'w none',
  '0.017',
  '0.018',
  'r',
  '0.5',
  'finish',
];

/** Colours and whatever else is drawn; beside them the bell is the prompt's own. */
const DRAWING = /\u001b\[[\d;]*[A-Za-z]/g;

/**
 * How node draws the line anew that is typed: each in a write of its own. How often depends on where the line wraps, and so
 * on how wide this node takes a character to be.
 */
const REDRAWING = /^\u001b\[(?:\d+[ABCDG]|0J)$/;

async function entry(folder: string, columns: number) {
  const { exitCode, text, writes } = await typed(LINES, WORDS, join(bench.folder(), folder), columns);
  const screen = await shownOn(columns, text);
  const drawn = writes.filter((each) => !REDRAWING.test(each)).flatMap((each) => each.match(DRAWING) ?? []);
  return {
    exitCode,
    ...screen,
    drawn,
    rest: text.replaceAll(DRAWING, '').replaceAll(/\r(?=\n)|\u0007/g, ''),
  };
}

const TERMINALS = WIDTHS.flatMap((columns) => columns ?? []);

it.each(numbered(TAKEN_SHOPS))(
  'the prompt of record obeys no text of hostile shop %i',
  async (_, textFor) => {
    for (const columns of TERMINALS) {
      putShops(bench, SOUND_SHOP, textFor, harmlessAs(textFor));
      const [hostile, plain] = [await entry('hostile', columns), await entry('plain', columns)];
      expect(plain.rest).toMatch(NAME);
      expect(hostile.exitCode).toBe(plain.exitCode);
      expect(hostile.obeyed).toEqual(plain.obeyed);
      expect(hostile.drawn).toEqual(plain.drawn);
      expect(hostile.rest.split('\n')).toHaveLength(plain.rest.split('\n').length);
      expect(hostile.rest.split('\n').filter((line) => HIDDEN.test(line))).toEqual([]);
      expect(hostile.lines.filter(isCommand)).toEqual([]);
    }
  },
);
