import { fitLine, type LineFit, type LinePoint } from '../../src/measurement/line.ts';

/** The fit, which the data of these checks always allow. */
export function mustFit(points: readonly LinePoint[]): LineFit {
  const fit = fitLine(points);
  if (fit === null) throw new Error('the points make no line');
  return fit;
}
