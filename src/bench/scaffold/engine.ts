import type { Characteristic } from '../../characteristics/characteristic.ts';
import { NOT_STATED } from '../../documents/unstatedSource.ts';
import { keyText, valueText } from '../../documents/writing/keyText.ts';
import { inBenchOrder } from '../order.ts';
import { comment, schemaLine } from '../sessionText.ts';
import { type MadeFile, madeFile, schemaPath } from './madeFile.ts';
import type { RodsOnPins } from './rods.ts';

export interface EngineRequest {
  readonly name: string;
  /** Relative to the shop's root. */
  readonly folder: string;
  readonly cylinders: number;
  readonly mains: number;
  /** A pin each, or the rods on each pin. */
  readonly crankpins: number | RodsOnPins;
  readonly characteristics: readonly Characteristic[];
  /** The unit of plain lengths in its shop, as written: examples are in it. */
  readonly length: string;
}

/** Invented figures, to show the form alone. */
const EXAMPLES = {
  in: {
    sizes: 'bore: 4.1250, stroke: 5.0000, main_journal_diameter: 3.2480, crankpin_diameter: 2.8740',
    clearance: '0.0028 to 0.0036',
  },
  mm: {
    sizes: 'bore: 103.00, stroke: 127.00, main_journal_diameter: 81.480, crankpin_diameter: 71.960',
    clearance: '0.058 to 0.087',
  },
} as const;

const examplesIn = ({ length }: EngineRequest): (typeof EXAMPLES)['in' | 'mm'] =>
  EXAMPLES[length === 'mm' ? 'mm' : 'in'];

/** An engine's own document, and an empty one for its limits: this program ships no limits as truth. */
export const engineFiles = (request: EngineRequest): readonly MadeFile[] => [
  madeFile(`${request.folder}/engine.yaml`, engineText(request)),
  madeFile(`${request.folder}/limits.yaml`, limitsText(request)),
];

function engineText(request: EngineRequest): string {
  const { name, folder, mains } = request;
  const lines = [
    schemaLine(schemaPath(folder, 'engine')),
    'kind: engine',
    `name: ${valueText(name)}`,
    '',
    comment('How many there are of each. Names instead of a count: mains: [1, 2, 3, 4, 5]'),
    layoutText(request),
    '',
    comment('What people call a position, shown beside its number.'),
    comment(`labels: { main: { 1: front, ${mains}: flywheel end } }`),
    '',
    comment(
      'Nominal sizes, from the manual. They help to see a slip of the pen; limits may be worked out from them.',
    ),
    comment(`sizes: { ${examplesIn(request).sizes} }`),
    '',
    comment('materials: { block: cast iron, crankshaft: steel, pistons: aluminium }'),
    comment('job: { number: 2417, customer: Reservoir water company, engine_serial: P2-118 }'),
  ];
  return `${lines.join('\n')}\n`;
}

/** Cylinders that are named on the pins need no counting, unless they are numbered and stand in another order there. */
function layoutText({ cylinders, mains, crankpins }: EngineRequest): string {
  if (typeof crankpins === 'number') {
    return `layout: { cylinders: ${cylinders}, mains: ${mains}, crankpins: ${crankpins} }`;
  }
  const names = crankpins.flat();
  const isNumbered = Array.from({ length: cylinders }, (_, index) => `${index + 1}`).every((each) =>
    names.includes(each),
  );
  const pins = crankpins.map((rods, index) => `${index + 1}: [${rods.map(keyText).join(', ')}]`);
  const counted = isNumbered ? `cylinders: ${cylinders}, ` : '';
  return `layout: { ${counted}mains: ${mains}, crankpins: { ${pins.join(', ')} } }`;
}

function limitsText(request: EngineRequest): string {
  const { folder, characteristics, mains } = request;
  const measured = inBenchOrder(characteristics, 'teardown');
  const width = Math.max(...measured.map(({ id }) => id.length));
  const lines = [
    schemaLine(schemaPath(folder, 'limits')),
    comment('The limits that readings are judged by. Three bands, each with min, max or both:'),
    comment('  target  what this builder aims for; it never fails a check'),
    comment('  new     sizes and fits of new parts'),
    comment('  wear    the wear limit: beyond it a part is not to be used again'),
    comment(`A position with limits of its own: at: { ${mains}: { new: ${examplesIn(request).clearance} } }`),
    'kind: limits',
    comment('Where the figures come from: the manual, its page, its year.'),
    `source: ${NOT_STATED}`,
    comment('For the first limit remove the {}. Remove the # before each line that you fill in.'),
    'limits: {}',
    ...measured.map((each) => comment(`  ${exampleOf(each).padEnd(width + 22)}  # ${each.label}`)),
    comment('Limits of any other figure may be written here: docs/characteristics.md lists them.'),
  ];
  return `${lines.join('\n')}\n`;
}

/** The form of a part has a greatest and no least; to be filled in, so that no figure of ours is taken for a limit. */
const exampleOf = ({ id, onlyWithLimits }: Characteristic): string =>
  onlyWithLimits === true ? `${id}: { wear: { max: … } }` : `${id}: { new: … to … }`;
