import { bandsText } from '../../bench/bandsText.ts';
import type { PlannedBlock } from '../../bench/plan.ts';
import { halfAt, type PlannedPoint } from '../../bench/points.ts';
import { COMMANDS } from '../../bench/record/command.ts';
import { typingUnit } from '../../bench/record/expectation.ts';
import type { LiveFeedback } from '../../bench/record/liveFeedback.ts';
import type { RecordEvent } from '../../bench/record/state.ts';
import type { GaugeZero } from '../../bench/sessionText.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import { positionText } from '../../layout/naming.ts';
import { headedWithUnit } from '../../quantity/format.ts';
import { BELL, type Line, line } from '../escape/line.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { widthOf } from '../terminal/width.ts';
import { wrap } from '../terminal/wrap.ts';

export interface PromptAbout {
  readonly engine: Engine;
  readonly registry: Registry;
  readonly style: TextStyle;
}

export interface BlockSetting {
  readonly instrument: string | undefined;
  readonly zero: GaugeZero | undefined;
  /** What can hurt, where it is said here. */
  readonly caution: string | undefined;
}

/** Above the first place of a characteristic: what it is, in what, with what, and what to mind. */
export function blockHeading(
  block: PlannedBlock,
  { instrument, zero, caution }: BlockSetting,
  { engine, registry, style }: PromptAbout,
): readonly Line[] {
  const characteristic = registry.find(block.measure);
  const unit = characteristic && typingUnit(characteristic.quantity, engine);
  const name = characteristic?.label ?? block.measure;
  const label = unit === undefined ? name : headedWithUnit(name, unit);
  const tool =
    instrument === undefined ? '  (no instrument stated; name it: w NAME)' : `  with ${instrument}`;
  const about = `${tool}${settingText(zero, unit?.name ?? '')}`;
  const fits = widthOf(label + about) <= textWidth(style);
  const mind = characteristic?.atTheBench;
  return [
    '',
    line`${style.paint.strong(label)}${style.paint.faint(fits ? about : '')}`,
    ...(fits ? [] : faintLines(about.trim(), style)),
    ...(mind === undefined ? [] : faintLines(mind, style)),
    ...(caution === undefined ? [] : cautionLines(caution, style)),
  ];
}

export const cautionLines = (caution: string, style: TextStyle): readonly Line[] =>
  wrap(`Caution: ${caution}`, textWidth(style) - 2).map((each) => style.paint.notice(`  ${each}`));

/** Limits that the prompts below have no room for. */
export const faintLines = (text: string, style: TextStyle): readonly Line[] =>
  wrap(text, textWidth(style) - 2).map((each) => style.paint.faint(`  ${each}`));

/** Why a line was not taken, with a bell. */
export const refusalLines = (why: string, style: TextStyle): readonly Line[] =>
  wrap(why, textWidth(style) - INDENT).map(
    (each, index) => line`${index === 0 ? BELL : ''}${' '.repeat(INDENT)}${each}`,
  );

const textWidth = ({ width }: TextStyle): number => Math.min(width, 100);

/** `, set to 3.2500, tenths from there`. */
function settingText(zero: GaugeZero | undefined, unit: string): string {
  if (zero === undefined) return '';
  const counts = zero.counts ?? unit;
  if (zero.setTo !== undefined) return `, set to ${zero.setTo}, ${counts} from there`;
  return zero.base === undefined ? `, in ${counts}` : `, ${counts} to be added to ${zero.base}`;
}

/** What is known of a place before it is read. */
export interface AskedPlace {
  readonly point: PlannedPoint;
  /** The reading of the latest earlier session. */
  readonly last: string | undefined;
  /** What was just taken here and will be replaced. */
  readonly now: string | undefined;
  /** The nominal size as it is written. */
  readonly nominal: string | undefined;
  readonly again: boolean;
}

export interface Prompt {
  readonly text: string;
  /** What is known of the place and does not fit beside it. */
  readonly above: string;
}

/** `3 (centre) front, throw  [new 3.2475 to 3.2485; last 3.2478] > `. */
export function promptAt(place: AskedPlace, { engine, registry, style }: PromptAbout): Prompt {
  const { point, last, now, nominal, again } = place;
  const along = [point.station, point.direction].filter((part) => part !== undefined).join(', ');
  const head = [again ? 'once more' : undefined, positionText(point.position), along]
    .filter(Boolean)
    .join(' ');
  const characteristic = registry.find(point.measure);
  const bands =
    characteristic === undefined ? '' : bandsText(characteristic, point.position, engine, halfAt(point));
  const size = bands === '' && nominal !== undefined ? `nominal ${nominal}` : bands;
  const before = now === undefined ? (last === undefined ? '' : `last ${last}`) : `now ${now}`;
  const room = Math.min(style.width, 100) - widthOf(head) - ROOM_FOR_READING;
  const known = [size, before].filter(Boolean);
  const shown = [known, [before], [size], []].find((each) => widthOf(each.join('; ')) <= room) ?? [];
  const beside = shown.filter(Boolean).join('; ');
  return {
    text: `  ${[head, beside && `[${beside}]`].filter(Boolean).join('  ')} > `,
    above: known.filter((each) => !shown.includes(each)).join('; '),
  };
}

/** Brackets, the sign and what is typed behind it. */
const ROOM_FOR_READING = 20;

/** A word with its bell, then what is known; the words alone where nobody sits before it. */
export function feedbackLine(
  { severity, word, message }: LiveFeedback,
  { paint, width }: TextStyle,
  bell: boolean,
): readonly Line[] {
  const colour = { error: paint.bad, warning: paint.notice, remark: paint.notice }[severity];
  const [first = '', ...rest] = wrap(message, width - word.length - INDENT - 2);
  const indent = ' '.repeat(word.length + INDENT + 2);
  return [
    line`${bell ? BELL : ''}${' '.repeat(INDENT)}${colour(word.toUpperCase())}  ${first}`,
    ...rest.map((each) => indent + each),
  ];
}

const INDENT = 4;

/** What an event did that no prompt shows. */
export function eventLines(event: RecordEvent, last: string | undefined): readonly Line[] {
  switch (event.do) {
    case 'note':
      return [`    noted with ${last ?? 'the last reading'}`];
    case 'skip':
      return ['    not read'];
    case 'leave':
      return [`    left out: ${event.reason}`];
    default:
      return [];
  }
}

export const helpLines = ({ width }: TextStyle): readonly Line[] => {
  const widest = Math.max(...COMMANDS.map(({ usage }) => usage.length));
  const indent = ' '.repeat(widest + 4);
  const commands = COMMANDS.flatMap(({ usage, does }) => {
    const [first = '', ...rest] = wrap(does, Math.min(width, 100) - indent.length);
    return [`  ${usage.padEnd(widest)}  ${first}`, ...rest.map((each) => indent + each)];
  });
  const prose = HELP.flatMap((text) => wrap(text, Math.min(width, 100) - 2)).map((each) => `  ${each}`);
  return [...prose, ...commands];
};

const HELP = [
  'Type a reading as the instrument shows it, or its last digits, where only one number can be meant.',
  'Strips: 0.003 to 0.004, under 0.004, over 0.006. Feelers: go 0.017 no 0.018. Another unit: 63.45 mm.',
  'Ctrl-C leaves and keeps everything; tenths record goes on from there.',
];
