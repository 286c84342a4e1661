import { inOneSentence } from '../../quantity/words.ts';
import type { Row } from '../judge/row.ts';

/**
 * What a worn part makes of several figures that follow from it, such as `it makes rod bearing clearance 7 and 8 loose`:
 * one cause, which would else be read three times as three.
 */
export function effectOf(cause: Row, rows: readonly Row[]): string | undefined {
  const [judged] = cause.routes;
  if (judged === undefined || !isBeyond(cause)) return undefined;
  const effects = rows.filter(
    (row) =>
      isBeyond(row) &&
      row.position.family !== cause.position.family &&
      row.routes[0]?.route.inputs.includes(judged.route),
  );
  const [first] = effects;
  const alike = effects.filter(
    (row) => wordOf(row) === wordOf(first) && row.characteristic === first?.characteristic,
  );
  if (first === undefined || alike.length < 2) return undefined;
  const where = alike.map(({ position }) => position.name);
  return `it makes ${first.characteristic.label} ${inOneSentence(where)} ${wordOf(first)}`;
}

const isBeyond = ({ judgement }: Row): boolean =>
  judgement.past !== undefined && (judgement.verdict === 'out' || judgement.verdict === 'worn');

const wordOf = (row: Row | undefined): string | undefined =>
  row?.characteristic.words[row.judgement.past?.side === 'max' ? 'above' : 'below'];
