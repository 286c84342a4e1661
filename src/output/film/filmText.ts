import { withUnit } from '../../documents/amount.ts';
import type { Engine } from '../../documents/assemble.ts';
import { ASSUMED_INLET } from '../../oiling/assumptions.ts';
import type { Demand, KindFilms } from '../../oiling/engineFilms.ts';
import { assumptionsOf, type Supply } from '../../oiling/supply.ts';
import { plural } from '../../quantity/words.ts';
import { positionText } from '../check/view/rowView.ts';
import { type Line, line, withGaps } from '../escape/line.ts';
import type { TextStyle } from '../terminal/textStyle.ts';
import { wrap } from '../terminal/wrap.ts';
import { type FilmUnits, kindLines } from './filmTables.ts';
import { CAUTION, flowText } from './filmWords.ts';

export interface ToldFilms {
  readonly engine: Engine;
  readonly supply: Supply;
  readonly kinds: readonly KindFilms[];
  readonly demand: Demand | undefined;
  /** What the pump delivers, in m³/s. */
  readonly delivery: number | undefined;
  readonly units: FilmUnits;
}

/** The oil films of an engine: of each kind a table, the oil they take, what was assumed and what it is worth. */
export function filmLines(reported: ToldFilms, style: TextStyle): readonly Line[] {
  return withGaps([
    headLines(reported, style),
    ...reported.kinds.map((kind) => kindLines(kind, reported.units, style)),
    ...(reported.demand === undefined ? [] : [demandLines(reported.demand, reported, style)]),
    endLines(reported, style),
  ]);
}

/** What is behind every number, and what to make of them. */
export const endLines = ({ engine }: ToldFilms, style: TextStyle): readonly Line[] => [
  ...wrap(`assumed: ${assumptionsOf(engine).join('; ')}`, style.width).map(style.paint.faint),
  ...wrap(CAUTION, style.width),
];

export function headLines({ engine: { document }, supply }: ToldFilms, style: TextStyle): readonly Line[] {
  const { duty, oil } = document;
  const stated = duty.oilTemperature === undefined ? `${ASSUMED_INLET} degC` : withUnit(duty.oilTemperature);
  const viscosity = (supply.viscosityAt(supply.inlet) * 1000).toFixed(1);
  const facts = [
    ...(duty.speed === undefined ? [] : [withUnit(duty.speed)]),
    `${oil?.name ?? 'oil'} at ${stated}, ${viscosity} mPa s`,
    ...(duty.oilPressure === undefined ? [] : [`fed at ${withUnit(duty.oilPressure)}`]),
  ];
  return [
    line`${style.paint.strong(document.name)}  oil films`,
    ...wrap(`  ${facts.join(', ')}; spreads are those of the clearance's uncertainty`, style.width),
  ];
}

function demandLines(
  { flow, least, greatest, most, count }: Demand,
  { delivery, kinds }: ToldFilms,
  style: TextStyle,
): readonly Line[] {
  const lacking = kinds.filter(({ bearings }) => 'lacking' in bearings).map(({ kind }) => kind.plural);
  const share = ((100 * most.figures.flow) / flow).toFixed(0);
  const name = `${most.row.characteristic.label} ${positionText(most.row)}`.trim();
  const said = [
    `oil demand of ${plural(count, 'bearing')}: ${flowText(flow)} L/min (${flowText(least)} to ${flowText(greatest)}), ${share} % of it by ${name}`,
    ...(lacking.length === 0 ? [] : [`without ${lacking.join(' and ')}`]),
    ...(delivery === undefined ? [] : [pumpText(flow, greatest, delivery)]),
  ];
  return wrap(said.join('; '), style.width);
}

function pumpText(flow: number, greatest: number, delivery: number): string {
  const text = `the pump delivers ${flowText(delivery)} L/min`;
  if (greatest <= delivery) return `${text}, more than that`;
  return flow <= delivery
    ? `${text}, which the greatest demand passes`
    : `${text}, less than they take: pressure will fall`;
}
