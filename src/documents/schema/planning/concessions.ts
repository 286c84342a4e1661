import { by, note } from '../document.ts';
import { about, amount, date, type Schema, text, word, wordOrWords } from '../scalars.ts';
import { list, map, mapShape, type Properties, reference } from '../shared.ts';

export const position: Schema = wordOrWords(about('At', 'The position, or a list of them.', 3));

const measured = reference(about('Measure', 'Which characteristic.', 'cylinder_taper'), 'measure');

const followUp: Properties = {
  measure: measured,
  at: position,
  min: amount(about('Least', 'The least that settles it.', '300 psi')),
  max: amount(about('Greatest', 'The greatest that settles it.', '320 psi')),
  note,
};

export const concessions: Schema = list(
  about('Concessions', 'Deviations that someone accepted: they stay visible and do not fail the check.', [
    { measure: 'cylinder_taper', at: 3, up_to: 0.003, reason: 'standby engine' },
  ]),
  mapShape(
    {
      measure: measured,
      at: position,
      up_to: amount(about('Up to', 'Accepted up to this value.', 0.003)),
      down_to: amount(about('Down to', 'Accepted down to this value.', 0.0015)),
      reason: text(about('Reason', 'Why it was accepted.', 'Standby engine; owner agreed.')),
      by,
      agreed: text(about('Agreed', 'Who agreed to it, such as the owner.', 'the owner, by telephone')),
      until: date(about('Until', 'Later sessions up to this day are covered too.', '2026-06-30')),
      follow_up: map(
        about('Follow up', 'What a later session must show; it stays open until then.', {
          measure: 'compression_pressure',
          at: 3,
          min: '300 psi',
        }),
        followUp,
        { required: ['measure'] },
      ),
      note,
    },
    { required: ['measure', 'reason'], anyOf: [{ required: ['up_to'] }, { required: ['down_to'] }] },
  ),
);

export const accepted: Schema = list(
  about('Accepted', 'Warnings that stay, with who accepted them and why: they become remarks.', [
    { warning: 'torque/wrench', of: 'rod bolts', by: 'RK', reason: 'checked with click-80, none turned' },
  ]),
  mapShape(
    {
      warning: text(about('Warning', 'Its code, as the check prints it.', 'torque/wrench')),
      of: word(
        about(
          'Of',
          'What it is about, in the words that the message begins with: the joint, the instrument, the characteristic and its position.',
          'rod bolts',
        ),
      ),
      by,
      reason: text(about('Reason', 'Why it may stay as it is.', 'checked with click-80, none turned')),
      note,
    },
    { required: ['warning', 'of', 'by', 'reason'] },
  ),
);
