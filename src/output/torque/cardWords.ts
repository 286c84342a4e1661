import { toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import type { CardPass, TighteningCard } from '../../torque/card.ts';
import type { PassLoad } from '../../torque/fasteners/jointLoads.ts';
import type { Joint } from '../../torque/joint.ts';
import { GENERATED_NOTE } from '../../torque/order/orders.ts';
import { exactly } from '../../torque/sequence.ts';
import { visible } from '../escape/line.ts';
import { wrap } from '../terminal/wrap.ts';
import { drawJoint } from './jointDrawing.ts';
import { convertedSpan, exactSpan, otherUnit } from './torqueWords.ts';

const REUSE: Readonly<Record<Joint['reuse'], string>> = {
  once: 'fit new ones: not to be used twice',
  allowed: 'may be used again',
  unstated: 'whether they may be used again is not stated',
};

/** `10 fasteners, 9/16-12 UNC, SAE J429 grade 8, may be used again; engine oil`. */
export function boltsLine({ sequence, thread, strength, grade, reuse, lubricant }: Joint): string {
  const count = sequence.fasteners.length;
  const parts = [
    `${count} fastener${count === 1 ? '' : 's'}`,
    thread?.designation,
    strength?.grade ?? (grade === undefined ? undefined : `grade ${grade}`),
    REUSE[reuse],
  ].filter((each) => each !== undefined);
  return `${parts.join(', ')}; lubricant: ${lubricant ?? 'not stated'}`;
}

/** What stands between the hand and the fastener, and what is added for it. */
export function toolsLine({ tools, joint }: TighteningCard): string | undefined {
  const { adapter, wrenchLength, runOn } = tools;
  const length = (of: typeof wrenchLength): string =>
    of === undefined ? '' : exactSpan(exactly(of), joint.lengthUnit);
  const at = { straight: 'straight on', shortening: 'back along the wrench', angled: '' };
  const angle =
    adapter?.kind === 'angled' ? `at ${toNumber(adapter.angle)} deg` : at[adapter?.kind ?? 'straight'];
  const parts = [
    adapter === undefined
      ? undefined
      : `wrench ${length(wrenchLength)} with an adapter of ${length(adapter.length)} ${angle}`,
    runOn === undefined
      ? undefined
      : `run-on torque added: ${exactSpan(exactly(runOn), joint.torqueUnit)} (${convertedSpan(exactly(runOn), otherUnit(joint.torqueUnit))})`,
  ].filter((each) => each !== undefined);
  return parts.length === 0 ? undefined : parts.join('; ');
}

const ORDER_NOTE: Readonly<Record<Joint['orderFrom'], string | undefined>> = {
  maker: undefined,
  generated: GENERATED_NOTE,
  listed: 'no order is stated: these are as they are listed',
};

/** The joint with its order numbered, and how the order came about. */
export function drawingLines(joint: Joint, width: number): readonly string[] {
  const { sequence, places, orderFrom } = joint;
  const positions = places?.positions ?? [];
  const drawn =
    places === undefined || orderFrom === 'listed'
      ? wrap(
          sequence.order
            .map((name, index) => (orderFrom === 'listed' ? name : `(${index + 1}) ${name}`))
            .join('  '),
          width,
        )
      : drawJoint({
          kind: places.kind,
          positions: positions.map((each) => ({ ...each, name: visible(each.name) })),
          order: sequence.order.map(visible),
          width,
        });
  const note = ORDER_NOTE[orderFrom];
  return sequence.order.length < 2 ? [] : [...drawn, ...(note === undefined ? [] : [note])];
}

/** Which fasteners, where not all of them, and from which end where not from the first. */
export function placesText({ fasteners, named, reversed }: CardPass): string | undefined {
  const names = fasteners?.join(', ');
  const isWritten = named === undefined || named.every((each) => fasteners?.includes(each) === true);
  const only =
    names === undefined ? undefined : isWritten ? `only ${names}` : `only ${named.join(', ')}: ${names}`;
  const parts = [only, reversed ? 'last to first' : undefined].filter((each) => each !== undefined);
  return parts.length === 0 ? undefined : parts.join('; ');
}

const NEWTONS_IN_A_POUND = 4.4482216152605;

export interface LoadRow {
  /** Passes that come to the same: `1, 3`. */
  readonly passes: string;
  /** In both systems. */
  readonly load: string;
  /** In that of the document. */
  readonly oneSystem: string;
  /** Likewise; empty where the ends are the same. */
  readonly between: string;
  readonly ofProof: string;
  readonly atMost: string;
}

/** The loads of a card; three digits of an estimate, since no more of them mean anything. */
export function loadRows(passes: readonly CardPass[], torqueUnit: Unit): readonly LoadRow[] {
  const rows = new Map<string, LoadRow>();
  for (const { pass, load } of passes) {
    if (load === undefined) continue;
    const row = loadRow(load, torqueUnit);
    const key = Object.values(row).join(' ');
    const before = rows.get(key)?.passes;
    rows.set(key, { ...row, passes: before === undefined ? `${pass}` : `${before}, ${pass}` });
  }
  return [...rows.values()];
}

function loadRow(load: PassLoad, torqueUnit: Unit): LoadRow {
  const kn = (newtons: number): string => threeDigitsOf(newtons / 1000);
  const lbf = (newtons: number): string => Number((newtons / NEWTONS_IN_A_POUND).toPrecision(3)).toFixed(0);
  const percent = (value: number | undefined): string => (value === undefined ? '' : `${value.toFixed(0)} %`);
  const [write, unit] = otherUnit(torqueUnit).name === 'N m' ? [lbf, 'lbf'] : [kn, 'kN'];
  const [least, greatest] = [write(load.leastN), write(load.greatestN)];
  return {
    passes: '',
    load: `${kn(load.loadN)} kN  ${lbf(load.loadN)} lbf`,
    oneSystem: `${write(load.loadN)} ${unit}`,
    between: least === greatest ? '' : `${least} to ${greatest} ${unit}`,
    ofProof: percent(load.percent),
    atMost: percent(load.greatestPercent),
  };
}

/** What the friction formula says beside the nut factor. */
export function frictionWords(passes: readonly CardPass[]): readonly string[] {
  const loads = passes.flatMap(({ pass, load }) =>
    load?.byFrictionN === undefined ? [] : [`pass ${pass} ${threeDigitsOf(load.byFrictionN / 1000)} kN`],
  );
  return loads.length === 0 ? [] : [`by the friction formula: ${loads.join(', ')}`];
}

/** What the figures take for granted, in one sentence. */
export const assumptionWords = (assumptions: readonly string[]): readonly string[] =>
  assumptions.length === 0 ? [] : [`assumed: ${assumptions.join('; ')}`];

const threeDigitsOf = (value: number): string => value.toFixed(value >= 99.95 ? 0 : value >= 9.995 ? 1 : 2);
