import type { Engine } from '../../documents/assemble.ts';
import { gradeText } from '../../documents/grades/grade.ts';
import type { ThicknessList } from '../../documents/stock/stock.ts';
import { tableName } from '../../layout/naming.ts';
import type { GasketFit, WasherFit } from '../../plan/fit/otherFits.ts';
import type { ThicknessFit } from '../../plan/fit/thicknessFits.ts';
import { figuresOf, wantedText } from './figures.ts';
import type { Section } from './page.ts';

export function washerSection({ read, wanted, chosen }: WasherFit, engine: Engine): Section {
  const figures = figuresOf(engine);
  const title = `thrust washers: crankshaft end play, ${wantedText(wanted, figures)}`;
  if (chosen === undefined)
    return { title, lines: [`read ${figures.number(read)}: no set in stock brings it inside`] };
  const { washer, endPlay } = chosen;
  return {
    title,
    lines: [
      `${washer.code}, ${gradeText(washer.size)}: ${figures.number(read)} as read becomes ${figures.number(endPlay)} ${figures.unit.name}`,
    ],
  };
}

export function gasketSection({ position, protrusion, gasket, free }: GasketFit, engine: Engine): Section {
  const figures = figuresOf(engine);
  const most = `cylinder ${position.name} stands out most, ${figures.number(protrusion)} ${figures.unit.name} on the mean`;
  const title = 'head gasket, by the protrusion of the pistons';
  if (gasket === undefined) return { title, lines: [`${most}: no gasket is meant for that`] };
  const thick =
    gasket.thickness === undefined ? '' : `, ${figures.number(gasket.thickness)} ${figures.unit.name} thick`;
  const stock = free > 0 ? `${free} in stock` : 'none in stock';
  return { title, lines: [`${most}: gasket ${gasket.code}${thick}; ${stock}`] };
}

const LIST_WORDS: Readonly<Record<ThicknessList, string>> = {
  gaskets: 'head gaskets',
  liner_shims: 'shims under the liners that do not stand out as they should',
  lash_buckets: 'lash buckets of the valves whose lash is not inside',
};

export function thicknessSection(
  { list, of, wanted, places, isShort }: ThicknessFit,
  engine: Engine,
): Section {
  const figures = figuresOf(engine);
  return {
    title: `${LIST_WORDS[list]}: ${of.label}, ${wantedText(wanted, figures)}`,
    table: {
      heading: ['', 'read', 'ideal', 'take', 'becomes'],
      align: ['left', 'left', 'left', 'left', 'left'],
      rows: places.map(({ position, read, ideal, code, becomes }) => [
        tableName(position),
        figures.number(read),
        ideal === undefined ? '' : figures.number(ideal),
        code ?? 'none',
        becomes === undefined ? '' : figures.range(becomes.least, becomes.greatest),
      ]),
    },
    lines: isShort ? ['what is in stock does not bring all of them inside'] : [],
  };
}
