import type { SessionDocument } from '../../documents/session/session.ts';

/** The steps of a characteristic in the order in which they are written, each once; also those not read (`~`). */
export const stepsOf = (session: SessionDocument, id: string): readonly string[] => [
  ...new Set(
    session.blocks
      .filter((block) => block.measure.id === id)
      .flatMap((block) => block.positions.map(({ position }) => position)),
  ),
];
