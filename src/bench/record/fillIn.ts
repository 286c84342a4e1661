import type { Registry } from '../../characteristics/registry.ts';
import { type Filling, fillScalars } from '../../documents/writing/fill.ts';
import { keyText, valueText } from '../../documents/writing/keyText.ts';
import { appendItem, insertEntry, type SpliceResult } from '../../documents/writing/splice.ts';
import type { PlannedBlock } from '../plan.ts';
import { keyOf } from '../points.ts';
import { blockText } from '../sessionText.ts';
import type { OpenBlock, OpenPlace } from './openPlaces.ts';
import type { Taken } from './state.ts';
import { cellText, settingKey, writtenBlocks } from './writtenBlocks.ts';

export type FilledIn =
  | { readonly ok: true; readonly value: string }
  | {
      readonly ok: false;
      readonly problem: { readonly reason: string; readonly message: string; readonly help: string };
    };

/**
 * Readings put into an existing session: where a `~` waits for them, else as blocks behind those that are there.
 * Comments, order and digits of everything else stay as they are.
 */
export function fillIn(
  text: string,
  open: readonly OpenBlock[],
  taken: ReadonlyMap<string, Taken>,
  blocks: readonly PlannedBlock[],
  registry: Registry,
): FilledIn {
  const waiting = open.map((block) => fitting(block, taken)).filter(({ fits }) => fits.length > 0);
  const filled = new Set(waiting.flatMap(({ fits }) => fits.map(({ place }) => keyOf(place.point))));
  const rest = new Map([...taken].filter(([key]) => !filled.has(key)));
  const steps: ((before: string) => FilledIn)[] = [
    (before) =>
      fillScalars(
        before,
        waiting.flatMap(({ fits }) => fits.map(fillingOf)),
      ),
    ...waiting.flatMap(({ fits }) => fits.flatMap(noteStep)),
    ...waiting.flatMap(({ block, fits }) => settingSteps(block, fits[0]?.reading)),
    ...writtenBlocks(blocks, rest, registry).map(
      (block) => (before: string) => spliced(appendItem(before, ['readings'], blockText(block))),
    ),
  ];
  return steps.reduce<FilledIn>((before, step) => (before.ok ? step(before.value) : before), {
    ok: true,
    value: text,
  });
}

interface Fit {
  readonly place: OpenPlace;
  readonly reading: Taken;
}

/** The readings that belong into a block's open places: taken with the instrument and the setting that the block has, or may get. */
function fitting(
  block: OpenBlock,
  taken: ReadonlyMap<string, Taken>,
): { readonly block: OpenBlock; readonly fits: readonly Fit[] } {
  const all = block.places.flatMap((place): readonly Fit[] => {
    const reading = taken.get(keyOf(place.point));
    return reading === undefined ? [] : [{ place, reading }];
  });
  const candidates = all.filter(({ reading }) => mayStandIn(block, reading));
  const [first] = candidates;
  if (first === undefined) return { block, fits: [] };
  const key = settingKey(first.reading);
  return { block, fits: candidates.filter(({ reading }) => settingKey(reading) === key) };
}

/** Instrument and setting hold for a whole block, so they may be stated only while it is empty. */
function mayStandIn({ block, untouched, statesInstrument, zero }: OpenBlock, reading: Taken): boolean {
  const sameInstrument = reading.instrument === block.instrument || (untouched && !statesInstrument);
  const sameZero =
    settingKey({ instrument: undefined, zero }) === settingKey({ instrument: undefined, zero: reading.zero });
  return sameInstrument && (sameZero || (untouched && zero === undefined));
}

/** A note goes beside a value that stands in a map already. */
const fillingOf = ({ place, reading }: Fit): Filling => ({
  path: place.path,
  text: place.holder === undefined ? cellText(reading) : cellText({ ...reading, note: undefined }),
});

function noteStep({ place, reading }: Fit): readonly ((before: string) => FilledIn)[] {
  const { holder } = place;
  const { note } = reading;
  if (holder === undefined || note === undefined) return [];
  return [(before) => spliced(insertEntry(before, holder, 'note', valueText(note)))];
}

function settingSteps(
  block: OpenBlock,
  reading: Taken | undefined,
): readonly ((before: string) => FilledIn)[] {
  const entry = (key: string, text: string) => (before: string) =>
    spliced(insertEntry(before, block.path, key, text));
  const { instrument, zero } = reading ?? {};
  return [
    ...(instrument === undefined || block.statesInstrument ? [] : [entry('with', keyText(instrument))]),
    ...(zero?.setTo === undefined || block.zero !== undefined ? [] : [entry('set_to', zero.setTo)]),
    ...(zero?.counts === undefined || block.zero !== undefined ? [] : [entry('in', zero.counts)]),
  ];
}

const spliced = (result: SpliceResult): FilledIn =>
  result.ok ? { ok: true, value: result.value.text } : { ok: false, problem: result.problem };
