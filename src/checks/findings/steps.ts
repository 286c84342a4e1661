import type { SessionDocument } from '../../documents/session/session.ts';
import type { Position } from '../../layout/position.ts';

/** The steps of a characteristic in the order in which they are written, each once; also those not read (`~`). */
export const stepsOf = (session: SessionDocument, id: string): readonly Position[] => [
  ...new Set(
    session.blocks
      .filter((block) => block.measure.id === id)
      .flatMap((block) => block.positions.map(({ position }) => position)),
  ),
];
