import { about, date, type Schema, word } from '../scalars.ts';
import { map } from '../shared.ts';

export const job: Schema = map(about('Job', "The shop's own papers.", { number: 2417 }), {
  number: word(about('Job number', "The shop's number for this job.", 2417)),
  customer: word(about('Customer', 'Whose engine it is.', 'Reservoir water company')),
  engine_serial: word(
    about('Engine serial number', 'As stamped; in quotes when it begins with 0.', 'P2-118'),
  ),
  received: word(about('Received', 'When and how it came in.', '2026-01-28, on a pallet')),
  delivered: date(
    about('Delivered', 'The day on which it left; a later session says that it is back.', '2026-05-20'),
  ),
  caps: word(about('Caps', 'How the caps are marked and face.', 'stamped 1-5, arrows to free end')),
});
