import type { Place } from '../../diagnostic/place.ts';
import type { Instrument } from '../../measurement/instrument.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';

const OVERDUE: FindingKind = {
  code: 'instrument/overdue',
  severity: 'warning',
  means: 'The instrument was due for calibration before the day on which it was used.',
  matters: 'Its stated error may no longer be true: it may have been dropped, or may have worn.',
  usually: 'Have it calibrated, or check it on a standard before measuring, and record that with `checked:`.',
  example: 'mic-3-4 was due for calibration on 2026-01-31, and was used on 2026-02-03',
};

export const overdueKinds: readonly FindingKind[] = [OVERDUE];

/** Of an instrument used after its due date; due on the day is not overdue. */
export function overdue(
  instrument: Instrument | undefined,
  day: string,
  place: () => Place,
  about: { readonly measure?: string } = {},
): Finding | undefined {
  if (instrument?.due === undefined || instrument.due >= day) return undefined;
  const message = `${instrument.id} was due for calibration on ${instrument.due}, and was used on ${day}`;
  return finding(OVERDUE, place(), message, about);
}
