import { STANDARD_TEMPERATURE, type StatedTemperature } from '../../measurement/temperature.ts';
import { type DocumentContext, readAmount, report, withUnit } from '../amount.ts';
import type { Measure } from '../measure.ts';
import { childOf, entriesOf } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';
import { BAND_NAMES, type BandName } from './bands.ts';

/** The temperature of each band that states one; of what states none it is 20 °C. */
export type BandTemperatures = Readonly<Partial<Record<BandName, StatedTemperature>>>;

export function readTemperature(node: Node, context: DocumentContext): StatedTemperature | undefined {
  const stated = readAmount(childOf(node, 'temperature'), 'temperature', context);
  return stated && { amount: stated.amount, text: withUnit(stated) };
}

/** Only a length is another number when it is warm: of anything else the temperature would be passed over. */
export function reportNoLength(node: Node, { id, quantity }: Measure, context: DocumentContext): void {
  const stated = entriesOf(node).find(({ key }) => key === 'temperature');
  if (quantity === 'length' || stated === undefined) return;
  const message = `\`temperature\` says how warm a part is that grows, and ${id} is not a length`;
  report(context, 'value', stated.keySpan, message, 'take it out; a note may say it');
}

/** Where bands of several temperatures meet: at the first that is stated. */
export function commonTemperature(stated: BandTemperatures): StatedTemperature {
  const first = BAND_NAMES.find((name) => stated[name] !== undefined);
  return (first && stated[first]) ?? STANDARD_TEMPERATURE;
}
