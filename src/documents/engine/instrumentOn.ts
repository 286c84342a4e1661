import { type Certificate, certifiedSpan, inForce } from '../../measurement/calibration/certificate.ts';
import type { RegisteredInstrument } from './instruments.ts';

/** An instrument as the certificate that counts on a day has it. */
export function instrumentOn(
  instrument: RegisteredInstrument | undefined,
  day: string,
): RegisteredInstrument | undefined {
  if (instrument === undefined || instrument.certificates.length === 0) return instrument;
  const { certificate, next } = inForce(instrument.certificates, day);
  const known = inForceOf.get(instrument) ?? new Map<string, RegisteredInstrument>();
  inForceOf.set(instrument, known);
  const found = known.get(certificate?.date ?? '') ?? certified(instrument, certificate, next);
  known.set(certificate?.date ?? '', found);
  return found;
}

/** Asked for with every block: one instrument has few certificates. */
const inForceOf = new WeakMap<RegisteredInstrument, Map<string, RegisteredInstrument>>();

function certified(
  instrument: RegisteredInstrument,
  certificate: Certificate | undefined,
  next: string | undefined,
): RegisteredInstrument {
  const { calibrated: _, due: __, calibration, ...rest } = instrument;
  const until = next === undefined ? {} : { until: next };
  if (certificate === undefined) return { ...rest, ...(calibration && { calibration }), ...until };
  const { date, due, uncertainty = calibration } = certificate;
  const putRight = instrument.isPutRight && certificate.uncertainty ? certifiedSpan(certificate) : undefined;
  return {
    ...rest,
    calibrated: date,
    ...(due !== undefined && { due }),
    ...(uncertainty && { calibration: uncertainty }),
    ...(putRight && { putRight }),
    ...until,
  };
}
