import { parts } from '../characteristics/parts.ts';
import type { Part, Sized } from '../layout/part.ts';

export const partNamed = (id: string): string => parts.find((part) => part.id === id)?.label ?? id;

const PARTS = `## Parts

What characteristics are of, and what a session may say was done to or found on. It is made of what the first of these keys of
\`materials:\` says in the engine document. What is done to a part is done to those it consists of; a head that is machined keeps the guides,
seats, valves and springs that it had. Of what is one to a bank an engine without \`banks:\` has one, and nobody says which.

| part | also called | one for each | \`materials:\` | consists of | service sizes |
|---|---|---|---|---|---|`;

function partRow({ label, plural, also, family, material, assembledFrom, sized, runsOn }: Part): string {
  const cells = [
    plural === `${label}s` ? label : `${label}, ${plural}`,
    also.join(', '),
    runsOn === undefined ? family.name : `${family.name}, on its ${partNamed(runsOn)}`,
    material.join(', '),
    assembledFrom.map(partNamed).join(', '),
    sized === undefined ? '' : sizedText(sized),
  ];
  return `| ${cells.join(' | ')} |`;
}

const sizedText = ({ made, fits, liesIn }: Sized): string =>
  [
    made === undefined ? 'yes' : `${made} size`,
    ...(fits === undefined ? [] : [`for its ${partNamed(fits)}`]),
    ...(liesIn === undefined ? [] : [`in its ${partNamed(liesIn)}`]),
  ].join(', ');

/** The end of docs/characteristics.md: every part that something is measured of. */
export const partsTable: readonly string[] = [PARTS, ...parts.map(partRow)];
