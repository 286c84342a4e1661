import type { ReadingBlock } from '../../documents/session/reading.ts';
import { correction, expandUnlike } from '../../measurement/temperature.ts';
import { formatUncertainty } from '../../quantity/format.ts';
import { fraction, multiply, toDecimal, toNumber } from '../../quantity/fraction.ts';
import type { Unit } from '../../quantity/units.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import type { Row, SessionView } from '../judge/row.ts';
import { blockInstrument, setterOf } from '../value/blockInstrument.ts';
import { type BlockWarmth, blockWarmth } from '../value/blockWarmth.ts';
import { readingPointsOfBlock } from '../value/readingPoints.ts';

const CORRECTED: FindingKind = {
  code: 'temperature/corrected',
  severity: 'remark',
  means:
    'The session states a temperature, and part and gauge expand so unlike that the readings were taken to 20 °C (ISO 1) before they were judged.',
  matters: 'A warm aluminium piston in a steel micrometer reads larger than it is at 20 °C, by tenths.',
  usually: 'Let the part stand until it is as warm as the shop, or leave the correction as it is.',
  example:
    'piston diameter: read at 35 degC and taken to 20 degC, 0.00057 in less (aluminium 20.75, steel gauge 11.5 millionths for 1 degC)',
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
  const [point] = readingPointsOfBlock(block);
  if (characteristic === undefined || point === undefined) return undefined;
  const gauge =
    setterOf(block, point.point, engine) ?? blockInstrument(characteristic, block, point.point, engine);
  const warmth = blockWarmth(characteristic, block, session, gauge, engine, registry);
  if (warmth === undefined || !expandUnlike(warmth)) return undefined;
  const by = toNumber(correction(point.point.amount, warmth));
  const unit = unitFor({ characteristic });
  const moved = `${formatUncertainty(Math.abs(by), unit)} ${unit.name} ${by < 0 ? 'less' : 'more'}`;
  const message = `${characteristic.label}: read at ${warmth.written} and taken to 20 degC, ${moved} (${coefficients(warmth)})`;
  return finding(CORRECTED, session.placeOf(block.span), message, { measure: block.measure.id });
}

/** `aluminium 23, steel gauge 11.5 millionths for 1 degC`. */
function coefficients({ part, gauge }: BlockWarmth): string {
  const text = (coefficient: typeof part.coefficient): string =>
    toDecimal(multiply(coefficient, fraction(1_000_000)), 2).replace(/\.?0+$/, '');
  const ofGauge = gauge === undefined ? '' : `, ${gauge.material} gauge ${text(gauge.coefficient)}`;
  return `${part.material} ${text(part.coefficient)}${ofGauge} millionths for 1 degC`;
}
