import type { Engine } from '../../documents/assemble.ts';
import type { Sent } from '../../documents/planning/handedOver.ts';
import type { Part } from '../../layout/part.ts';
import { readPart } from '../../layout/readPart.ts';

export const sendings = (engine: Engine): readonly Sent[] =>
  [engine.document, ...engine.sessions].flatMap(({ handedOver }) => handedOver.sent);

/** Those of one part, by any of its names: `rods`, `rod 3`, `crankshaft with its gear`. */
export const sendingsOf = (part: Part, engine: Engine): readonly Sent[] =>
  sendings(engine).filter(({ part: words }) => {
    const meaning = readPart(words, engine.parts, engine.document.layout);
    return meaning.kind === 'parts'
      ? meaning.at.some((at) => engine.parts.within(part).includes(at.part))
      : words.toLowerCase().includes(part.label);
  });
