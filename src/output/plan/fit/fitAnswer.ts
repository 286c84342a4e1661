import { tableName } from '../../../layout/naming.ts';
import { type Fits, isShort } from '../../../plan/fit/fits.ts';
import type { ShellFit } from '../../../plan/fit/shellFit.ts';
import type { ThicknessFit } from '../../../plan/fit/thickness/thicknessFits.ts';
import { thicknessCalled } from '../../../plan/order/thicknessText.ts';
import type { Section } from '../page.ts';

/** Whether each place has its part; and what has none yet, with what it waits for. */
export const fitAnswer = (sections: readonly Section[], fits: Fits): readonly string[] => [
  answer(sections, fits),
  ...waiting(fits),
];

function answer(sections: readonly Section[], fits: Fits): string {
  if (sections.length === 0)
    return 'nothing in stock is for this engine: documents of kind: stock and kind: part say what is';
  if (isNothingLeft(fits)) return 'nothing is left to choose: what is fitted is inside its limits';
  if (isShort(fits)) return 'not everything has its part: what lacks one says why';
  if (waiting(fits).length === 0)
    return 'each place has its part; taken together they lie as near to the middle as stock allows';
  return sections.length >
    fits.shells.filter(isAllWaiting).length + fits.thicknesses.filter(isAllUnread).length
    ? 'what could be chosen has its part; this has not'
    : 'nothing is chosen yet';
}

const isAllWaiting = ({ waitsFor }: ShellFit): boolean => waitsFor !== undefined;

const isAllUnread = ({ places }: ThicknessFit): boolean => places.length === 0;

/** Everything that would be chosen is in already. */
const isNothingLeft = ({
  wholes,
  shells,
  pistons,
  washers,
  gasket,
  thicknesses,
  notInStock,
}: Fits): boolean =>
  wholes.length + thicknesses.length + notInStock.length === 0 &&
  (gasket === undefined || gasket.inPlace !== undefined) &&
  shells.every(({ places, waitsFor }) => places.length === 0 && waitsFor === undefined) &&
  (pistons === undefined ||
    (pistons.places.length + pistons.toBeRenewed.length === 0 && pistons.problem === undefined)) &&
  (washers === undefined || washers.inPlace !== undefined);

/** What has no part yet, and for what it waits. */
const waiting = ({ shells, thicknesses, notInStock }: Fits): readonly string[] => [
  ...shells.flatMap(({ part, waitsFor }) =>
    waitsFor === undefined
      ? []
      : [
          `${part.plural} wait until the ${waitsFor.family.isSingle ? `new ${waitsFor.label} is` : `ground ${waitsFor.plural} are`} measured`,
        ],
  ),
  ...thicknesses.flatMap(({ list, of, waiting: places }) =>
    places.length === 0
      ? []
      : [
          `${thicknessCalled(list, places.length)} ${places.length === 1 ? 'waits' : 'wait'} for a new reading of ${of.label} ${places.map(({ position }) => tableName(position)).join(', ')}`,
        ],
  ),
  ...notInStock.map(({ plural }) => `${plural}: none in stock`),
];
