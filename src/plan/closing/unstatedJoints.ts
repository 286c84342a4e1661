import type { Registry } from '../../characteristics/registry.ts';
import type { Engine } from '../../documents/assemble.ts';
import type { TorqueDocument } from '../../documents/tightening/torque.ts';

/** A joint that holds an engine together, the part that has it, and the words by which torque documents name it. */
interface Joint {
  readonly name: string;
  readonly part: string;
  readonly words: RegExp;
}

/** Common practice, no source: nobody closes an engine before these are tight. */
const JOINTS: readonly Joint[] = [
  { name: 'main caps', part: 'main_cap', words: /\bmains?\b/i },
  { name: 'rod caps', part: 'rod', words: /\b(?:rods?|big ends?|connecting)\b/i },
  { name: 'cylinder head', part: 'head', words: /\bheads?\b/i },
];

/** The joints that an engine must have by its layout, and of which no torque document says how they are tightened. */
export function unstatedJoints({ document, sequences }: Engine, { parts }: Registry): readonly string[] {
  const { layout } = document;
  const isThere = (id: string): boolean => {
    const part = parts.find(id);
    return part !== undefined && layout.positionsOf(part.family).length > 0;
  };
  const stated = sequences.map(wordsOf);
  return JOINTS.filter(({ part, words }) => isThere(part) && !stated.some((each) => words.test(each)))
    .filter(({ part }) => part !== 'head' || isThere('piston'))
    .map(({ name }) => name);
}

const wordsOf = ({ name, joint }: TorqueDocument): string =>
  `${name} ${joint.sequence.joint}`.replaceAll('_', ' ');

/** The torque documents of a joint whose fasteners go by such words: of `rod bolts` those of the rod caps. */
export const jointsHeldBy = (fasteners: string, { sequences }: Engine): readonly TorqueDocument[] =>
  /\b(?:bolt|stud|nut|screw)s?\b/i.test(fasteners)
    ? JOINTS.filter(({ words }) => words.test(fasteners)).flatMap(({ words }) =>
        sequences.filter((each) => words.test(wordsOf(each))),
      )
    : [];
