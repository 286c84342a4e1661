import { grouped } from './grouped.js';

/** A source with its mutants in it, each behind a switch: `globalThis.mutantIs(7) ? mutant : original`. */
export function switched(text, mutants) {
  // The outer before the inner, those side by side in their order.
  const places = [...grouped(mutants, placeOf).values()].sort(
    ([a], [b]) => a.start - b.start || b.end - a.end,
  );
  return within(text, { start: 0, end: text.length }, places);
}

const placeOf = ({ start, end }) => `${start} ${end}`;

/** The text of a span, in which the places inside it are switched. */
function within(text, span, places) {
  let result = '';
  let at = span.start;
  for (let index = 0; index < places.length; ) {
    const [outer] = places[index];
    const inside = places
      .slice(index + 1)
      .filter(([each]) => each.end <= outer.end && each.start < outer.end);
    const original = within(text, outer, inside);
    const choices = places[index].map(
      ({ id, replacement }) => `globalThis.mutantIs(${id}) ? (${replacement}) : `,
    );
    result += `${text.slice(at, outer.start)}(${choices.join('')}(${original}))`;
    at = outer.end;
    index += 1 + inside.length;
  }
  return result + text.slice(at, span.end);
}
