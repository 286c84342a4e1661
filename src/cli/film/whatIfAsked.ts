import { inMetres } from '../../oiling/inSi.ts';
import { type WhatIf, whatIf } from '../../oiling/whatIf.ts';
import type { ToldFilms } from '../../output/film/filmText.ts';
import { amountOption } from '../amountOption.ts';
import { UsageError } from '../usage.ts';

const HELP = 'write a range from small to great, such as 0.0020..0.0045';

/** `--clearance 0.0020..0.0045` of the only bearings that were asked for. */
export function whatIfAsked(range: string, { kinds, units }: ToldFilms): WhatIf {
  const known = kinds.filter(({ bearings, films }) => !('lacking' in bearings) && films.length > 0);
  const [kind] = known;
  if (known.length > 1) {
    const names = known.map((each) => each.kind.measure).join(', ');
    throw new UsageError('--clearance is of one kind of bearing', `name one of ${names}`);
  }
  const row = kind?.films[0]?.now.row;
  if (kind === undefined || row === undefined || 'lacking' in kind.bearings) {
    throw new UsageError('no bearing of which a film can be worked out', 'tenths film says what is lacking');
  }
  const [from, to] = range.split('..').map((text) => {
    const amount = amountOption('--clearance', text, 'length', units.ofRow(row));
    return amount && inMetres(amount);
  });
  if (from === undefined || to === undefined || from <= 0 || from >= to) {
    throw new UsageError(`--clearance ${range} is not a range`, HELP);
  }
  return whatIf(kind, kind.bearings, from, to);
}
