import { coordinatesByAxis, type Position } from '../layout/position.ts';

/** As it is printed, and what it is along each axis. */
export const positionJson = (position: Position) => ({
  position: position.name,
  at: coordinatesByAxis(position),
});
