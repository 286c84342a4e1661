import type { Certificate, CertifiedPoint } from '../../measurement/calibration/certificate.ts';
import type { Instrument } from '../../measurement/instrument.ts';
import { compare } from '../../quantity/fraction.ts';
import type { Quantity } from '../../quantity/units.ts';
import { type DocumentContext, readAmount, report } from '../amount.ts';
import { readDate } from '../date.ts';
import { childOf, itemsOf, scalarOf, textAt } from '../yaml/access.ts';
import type { Node } from '../yaml/node.ts';

/** `certificates:` of an instrument, by date; a day that two of them have is reported. */
export function readCertificates(
  instrument: Node,
  quantity: Quantity,
  context: DocumentContext,
): readonly Certificate[] {
  const items = itemsOf(childOf(instrument, 'certificates'));
  const seen = new Set<string>();
  const all = items.flatMap((item) => {
    const date = readDate(childOf(item, 'date'), context);
    if (date === undefined) return [];
    if (seen.has(date))
      report(context, 'value', item.span, `two certificates are of ${date}`, 'keep the one that counts');
    seen.add(date);
    return [readCertificate(item, date, quantity, context)];
  });
  return all.sort((a, b) => (a.date < b.date ? -1 : 1));
}

const readCertificate = (
  item: Node,
  date: string,
  quantity: Quantity,
  context: DocumentContext,
): Certificate => ({
  date,
  due: readDate(childOf(item, 'due'), context),
  by: textAt(item, 'by'),
  number: textAt(item, 'number'),
  points: itemsOf(childOf(item, 'errors'))
    .flatMap((point) => readPoint(point, quantity, context) ?? [])
    .sort((a, b) => compare(a.at, b.at)),
  uncertainty: readUncertainty(item, quantity, context),
});

function readPoint(node: Node, quantity: Quantity, context: DocumentContext): CertifiedPoint | undefined {
  const [at, asFound, asLeft] = ['at', 'as_found', 'as_left'].map(
    (key) => readAmount(childOf(node, key), quantity, context)?.amount,
  );
  return at && { at, asFound, asLeft: asLeft ?? asFound };
}

/** `uncertainty` and `k`, as a certificate states them. */
export function readUncertainty(
  node: Node | undefined,
  quantity: Quantity,
  context: DocumentContext,
): Instrument['calibration'] {
  const uncertainty = readAmount(childOf(node, 'uncertainty'), quantity, context)?.amount;
  const k = scalarOf(childOf(node, 'k'))?.value ?? 2;
  return uncertainty === undefined || typeof k !== 'number' || k <= 0 ? undefined : { uncertainty, k };
}
