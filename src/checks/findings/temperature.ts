import type { Characteristic } from '../../characteristics/characteristic.ts';
import { pointsOf, type ReadingBlock } from '../../documents/session/reading.ts';
import { shortName } from '../../layout/naming.ts';
import { correction, isMoved, type Warmth } from '../../measurement/temperature.ts';
import { formatUncertainty } from '../../quantity/format.ts';
import { type Fraction, fraction, multiply, toDecimal, toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { alike, type Some } from '../alike.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import { limitsOfFitted } from '../grades/madeSize.ts';
import type { Row, SessionView } from '../judge/row.ts';
import { temperatureOf } from '../judge/warmBands.ts';
import { blockInstrument, setterOf } from '../value/blockInstrument.ts';
import { blockWarmth } from '../value/blockWarmth.ts';

const CORRECTED: FindingKind = {
  code: 'temperature/corrected',
  severity: 'remark',
  means:
    'The session states a temperature, and the part and the gauge do not expand alike. So the readings were converted to the temperature of their limits before they were judged: to 20 °C (ISO 1) where the limits state none.',
  matters: 'A warm aluminium piston in a steel micrometer reads larger than it is at 20 °C, by tenths.',
  usually: 'Let part and gauge come to one temperature and measure again, or accept the conversion.',
  example:
    'piston diameter: readings made at 35 degC were converted to 20 degC, 0.00057 in less (aluminium 20.75, steel gauge 11.5 millionths for 1 degC)',
};

export const temperatureKinds: readonly FindingKind[] = [CORRECTED];

/** A block of readings that were moved alike, as its first was. */
interface Moved {
  readonly block: ReadingBlock;
  readonly characteristic: Characteristic;
  readonly warmth: Warmth;
  readonly by: Fraction;
}

/** Readings that are judged as something else than what was written: never silently. */
export function temperatureFindings(
  view: SessionView,
  unitFor: (row: Pick<Row, 'characteristic'>) => Unit,
): readonly Finding[] {
  const moved = view.session.blocks.flatMap((block) => movedBlock(block, view) ?? []);
  return alike(moved, movedAlike).map((group) => corrected(group, view, unitFor));
}

const movedAlike = ({ characteristic, warmth }: Moved): string =>
  [characteristic.id, warmth.from.text, warmth.to.text, coefficients(warmth)].join();

function movedBlock(block: ReadingBlock, { engine, registry, session }: SessionView): Moved | undefined {
  const characteristic = registry.find(block.measure.id);
  const reading = block.positions.find((each) => pointsOf(each).length > 0);
  const [first] = reading === undefined ? [] : pointsOf(reading);
  if (characteristic === undefined || reading === undefined || first === undefined) return undefined;
  const gauge =
    setterOf(block, first, { engine, session }) ??
    blockInstrument(characteristic, block, first, { engine, session });
  const to = temperatureOf(limitsOfFitted(engine, session, characteristic, reading.position));
  const warmth = blockWarmth(characteristic, gauge, to, { block, session, engine, registry });
  if (warmth === undefined || !isMoved(warmth)) return undefined;
  return { block, characteristic, warmth, by: correction(first.amount, warmth) };
}

function corrected(
  group: Some<Moved>,
  { session }: SessionView,
  unitFor: (row: Pick<Row, 'characteristic'>) => Unit,
): Finding {
  const [{ block, characteristic, warmth, by }] = group;
  const isAll =
    group.length === session.blocks.filter(({ measure }) => measure.id === characteristic.id).length;
  const where = group.flatMap((each) => each.block.positions.map(({ position }) => shortName(position)));
  const name = [characteristic.label, isAll ? '' : where.join(', ')].filter(Boolean).join(' ');
  const moved = movedText(by, warmth, unitFor({ characteristic }));
  const message = `${name}: readings made at ${warmth.from.text} were converted to ${warmth.to.text}, ${moved}`;
  return finding(CORRECTED, session.placeOf(block.span), message, { measure: characteristic.id });
}

/** `0.00057 in less (aluminium 20.75, steel gauge 11.5 millionths for 1 degC)`: how far a reading was moved, and by what. */
export function movedText(by: Fraction, warmth: Warmth, unit: Unit): string {
  const size = formatUncertainty(Math.abs(toNumber(by)), unit);
  const moved = `${size} ${unit.name} ${by.n < 0n ? 'less' : 'more'}`;
  return `${moved} (${coefficients(warmth)})`;
}

function coefficients({ part, gauge }: Warmth): string {
  const text = (coefficient: typeof part.coefficient): string =>
    toDecimal(multiply(coefficient, fraction(1_000_000)), 2).replace(/\.?0+$/, '');
  const ofGauge = gauge === undefined ? '' : `, ${gauge.material} gauge ${text(gauge.coefficient)}`;
  return `${part.material} ${text(part.coefficient)}${ofGauge} millionths for 1 degC`;
}
