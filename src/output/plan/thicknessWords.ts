import type { Engine } from '../../documents/assemble.ts';
import type { ThicknessList } from '../../documents/stock/stock.ts';
import type { NeededThickness } from '../../plan/order/thicknesses.ts';
import { thicknessCalled, thicknessText } from '../../plan/order/thicknessText.ts';
import type { Job } from '../../plan/work/job.ts';
import { placesText } from '../../plan/work/placesText.ts';

/** `2, 3: 2 liner shims S05 of the shelf, 0.050 mm thick`. */
export function thicknessWords({ list, positions, answer }: NeededThickness, engine: Engine): string {
  const count = positions.length;
  const where = placesText(positions, engine.document.layout);
  const many = `${where}: ${count} ${thicknessCalled(list, count)}`;
  const each = count === 1 ? 'thick' : 'thick each';
  switch (answer.kind) {
    case 'take':
      return `${many} ${answer.code} of the shelf, ${thicknessText(answer.thickness, engine)} ${each}`;
    case 'get':
      return `${many} to order, about ${thicknessText(answer.thickness, engine)} ${each}`;
    case 'get at least':
      return `${many} to order, at least ${thicknessText(answer.thickness, engine)} ${each}: limits state no other side`;
    case 'read again':
      return `${where}: ${readAgainText(answer.after, list)} (plan --fit)`;
    case 'none lowers it':
      return `${where}: ${TOO_HIGH}`;
  }
}

/** Common practice, no source. */
export const TOO_HIGH =
  'stands too high, and no shim lowers it: take a shim out where there is one, or have the counterbore cut deeper';

export const readAgainText = ({ name }: Job, list: ThicknessList): string =>
  `first ${name}; then read it again, and choose the ${thicknessCalled(list, 1)}`;
