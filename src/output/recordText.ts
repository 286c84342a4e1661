import { bandsText } from '../bench/bandsText.ts';
import type { PlannedBlock } from '../bench/plan.ts';
import { type PlannedPoint, placeText } from '../bench/points.ts';
import { COMMANDS } from '../bench/record/command.ts';
import type { Opinion } from '../bench/record/opinion.ts';
import type { GaugeZero } from '../bench/sessionText.ts';
import type { Registry } from '../characteristics/registry.ts';
import type { Engine } from '../documents/assemble.ts';
import { labelOf } from '../documents/layout.ts';
import type { TextStyle } from './textStyle.ts';
import { visible } from './visible.ts';

export interface PromptAbout {
  readonly engine: Engine;
  readonly registry: Registry;
  readonly style: TextStyle;
}

/** Above the first place of a characteristic: what it is, in what, with what. */
export function blockHeading(
  block: PlannedBlock,
  instrument: string | undefined,
  zero: GaugeZero | undefined,
  { engine, registry, style }: PromptAbout,
): string {
  const characteristic = registry.find(block.measure);
  const unit = characteristic && engine.units.get(characteristic.quantity)?.name;
  const label = `${characteristic?.label ?? block.measure}${unit === undefined ? '' : `, ${unit}`}`;
  const tool =
    instrument === undefined ? '  (no instrument stated: w NAME)' : `  with ${visible(instrument)}`;
  const set = zero === undefined ? '' : `, set to ${zero.setTo}, ${zero.counts ?? unit ?? ''} from there`;
  return `\n${style.paint.strong(label)}${style.paint.faint(tool + set)}\n`;
}

/** `3 centre, front, throw  [3.2475 to 3.2485, last 3.2478] > `; what does not fit in half of the window goes. */
export function promptText(
  point: PlannedPoint,
  family: PlannedBlock['family'],
  last: string | undefined,
  again: boolean,
  { engine, registry, style }: PromptAbout,
): string {
  const label = labelOf(engine.document.layout, family, point.position);
  const place = placeText(
    { ...point, position: label === undefined ? point.position : `${point.position} ${label}` },
    family,
  );
  const characteristic = registry.find(point.measure);
  const bands = characteristic === undefined ? '' : bandsText(characteristic, point.position, engine);
  const known = [bands, last === undefined ? '' : `last ${last}`].filter(Boolean).join('; ');
  const head = [again ? 'once more' : '', visible(place)].filter(Boolean).join(' ');
  const room = Math.min(style.width, 100) - head.length - ROOM_FOR_READING;
  const shown = [known, last === undefined ? '' : `last ${last}`].find(
    (each) => each !== '' && visible(each).length <= room,
  );
  return `  ${[head, shown === undefined ? '' : `[${visible(shown)}]`].filter(Boolean).join('  ')} > `;
}

/** Brackets, the sign and what is typed behind it. */
const ROOM_FOR_READING = 20;

/** A word with its bell, then what is known. */
export function opinionLine(
  { severity, word, message }: Opinion,
  { paint }: TextStyle,
  bell: boolean,
): string {
  const colour = { error: paint.bad, warning: paint.notice, remark: paint.notice }[severity];
  return `${bell ? '\u0007' : ''}    ${colour(word.toUpperCase())}  ${visible(message)}\n`;
}

export const helpLines = (): string => {
  const width = Math.max(...COMMANDS.map(({ usage }) => usage.length));
  return [
    '  A reading as the instrument shows it, with Enter; the last digits alone where they can mean but one number.',
    '  Strips: 0.003 to 0.004, under 0.004. Feelers: go 0.017 no 0.018. Another unit: 63.45 mm.',
    ...COMMANDS.map(({ usage, does }) => `  ${usage.padEnd(width)}  ${does}`),
    '  Ctrl-C leaves: everything is kept, and `tenths record` goes on from there.',
    '',
  ].join('\n');
};
