/** What is wrong with the rods on the pins, and what to do. */
export interface RodsProblem {
  readonly message: string;
  readonly help?: string;
}

/** The rods on each crankpin, pin by pin. */
export type RodsOnPins = readonly (readonly string[])[];

/** `1 5, 2 6`: a comma between pins, a space between the rods of a pin. */
export const readRods = (text: string): RodsOnPins => text.split(',').map(readRodsOfPin);

export const readRodsOfPin = (text: string): readonly string[] =>
  text
    .trim()
    .split(/\s+/)
    .filter((name) => name !== '');

/** Undefined where every pin has a rod and every rod one pin. */
export function rodsProblem(
  rods: RodsOnPins,
  crankpins: number | undefined,
  cylinders: number | undefined,
): RodsProblem | undefined {
  const names = rods.flat();
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  const bare = rods.findIndex((pin) => pin.length === 0);
  if (bare >= 0) return { message: `no rod is on pin ${bare + 1}`, help: EXAMPLE_HELP };
  if (twice !== undefined) return { message: `rod ${twice} is on two pins`, help: 'a rod runs on one pin' };
  if (crankpins !== undefined && rods.length !== crankpins) {
    return {
      message: `rods are given for ${rods.length} pins, and there are ${crankpins}`,
      help: EXAMPLE_HELP,
    };
  }
  if (cylinders !== undefined && names.length !== cylinders) {
    return { message: `${names.length} rods are on the pins, and there are ${cylinders} cylinders` };
  }
  return undefined;
}

const EXAMPLE_HELP = 'write a comma between pins and a space between rods, such as --rods "1 5, 2 6"';

/** Rods as one maker might number them: an example to be corrected, never an answer. */
export function exampleRods(cylinders: number, crankpins: number): string {
  const pins = Array.from({ length: crankpins }, (_, pin) =>
    Array.from({ length: cylinders }, (_rod, rod) => rod + 1).filter((rod) => (rod - 1) % crankpins === pin),
  );
  return pins.map((rods) => rods.join(' ')).join(', ');
}
