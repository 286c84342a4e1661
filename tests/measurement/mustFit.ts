import { fitLine, type LineFit, type LinePoint } from '../../src/measurement/line.ts';

/** The fit, which the data of these checks always allow. */
export function mustFit(points: readonly LinePoint[], throughOrigin = false): LineFit {
  const fit = fitLine(points, { throughOrigin });
  if (fit === null) throw new Error('the points make no line');
  return fit;
}
