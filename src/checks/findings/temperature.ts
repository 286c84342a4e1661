import { pointsOf, type ReadingBlock } from '../../documents/session/reading.ts';
import { correction, isMoved, type Warmth } from '../../measurement/temperature.ts';
import { formatUncertainty } from '../../quantity/format.ts';
import { type Fraction, fraction, multiply, toDecimal, toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
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

/** Readings that are judged as something else than what was written: never silently. */
export const temperatureFindings = (
  view: SessionView,
  unitFor: (row: Pick<Row, 'characteristic'>) => Unit,
): readonly Finding[] => view.session.blocks.flatMap((block) => corrected(block, view, unitFor) ?? []);

function corrected(
  block: ReadingBlock,
  { engine, registry, session }: SessionView,
  unitFor: (row: Pick<Row, 'characteristic'>) => Unit,
): Finding | undefined {
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
  const moved = movedText(correction(first.amount, warmth), warmth, unitFor({ characteristic }));
  const message = `${characteristic.label}: readings made at ${warmth.from.text} were converted to ${warmth.to.text}, ${moved}`;
  return finding(CORRECTED, session.placeOf(block.span), message, { measure: block.measure.id });
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
