import type { Engine } from '../../../documents/assemble.ts';
import { gradeText } from '../../../documents/grades/grade.ts';
import type { ThicknessList } from '../../../documents/stock/stock.ts';
import { tableName } from '../../../layout/naming.ts';
import type { GasketFit, WasherFit } from '../../../plan/fit/otherFits.ts';
import type { ThicknessChoice, ThicknessFit } from '../../../plan/fit/thickness/thicknessFits.ts';
import { placesText } from '../../../plan/work/placesText.ts';
import { figuresOf, wantedText } from '../figures.ts';
import { nameCell, type Section } from '../page.ts';
import { readAgainText, TOO_HIGH } from '../thicknessWords.ts';
import { inPlaceLines } from './inPlaceLines.ts';

export function washerSection({ read, wanted, inPlace, chosen }: WasherFit, engine: Engine): Section {
  const figures = figuresOf(engine);
  const title = `thrust washers: crankshaft end play, ${wantedText(wanted, figures)}`;
  const before = { read: figures.value(read) };
  if (inPlace !== undefined)
    return { title, values: [{ ...before, take: null, becomes: null }], lines: inPlaceLines([inPlace]) };
  if (chosen === undefined) {
    const none = `read ${figures.number(read)}: no set in stock brings it inside`;
    return { title, values: [{ ...before, take: null, becomes: null }], lines: [none] };
  }
  const { washer, endPlay } = chosen;
  return {
    title,
    values: [{ ...before, take: washer.code, becomes: figures.value(endPlay) }],
    lines: [
      `${washer.code}, ${gradeText(washer.size)}: ${figures.number(read)} as read becomes ${figures.number(endPlay)} ${figures.unit.name}`,
    ],
  };
}

export function gasketSection(fit: GasketFit, engine: Engine): Section {
  const { position, protrusion, inPlace, gasket, count, free } = fit;
  const figures = figuresOf(engine);
  const most = `cylinder ${position.name} stands out most, ${figures.number(protrusion)} ${figures.unit.name} on the mean`;
  const title = 'head gasket, by the protrusion of the pistons';
  const values = [
    {
      position: position.name,
      protrusion: figures.value(protrusion),
      take: inPlace === undefined ? (gasket?.code ?? null) : null,
      thickness: gasket?.thickness === undefined ? null : figures.value(gasket.thickness),
      in_stock: free,
    },
  ];
  if (inPlace !== undefined) {
    const { stage, date } = inPlace.fittedIn;
    const fitted = `fitted in ${stage} ${date}, after the pistons were read: not chosen again`;
    return { title, values, lines: [fitted] };
  }
  if (gasket === undefined) return { title, values, lines: [`${most}: no gasket is meant for that`] };
  const thick =
    gasket.thickness === undefined ? '' : `, ${figures.number(gasket.thickness)} ${figures.unit.name} thick`;
  const asked = 0 < free && free < count ? `, ${count} needed` : '';
  const stock = free > 0 ? `${free} in stock${asked}` : 'none in stock';
  return { title, values, lines: [`${most}: gasket ${gasket.code}${thick}; ${stock}`] };
}

const LIST_WORDS: Readonly<Record<ThicknessList, string>> = {
  gaskets: 'head gaskets',
  liner_shims: 'shims under the liners that do not stand out as they should',
  lash_buckets: 'lash buckets of the valves whose lash is not inside',
};

export function thicknessSection(
  { list, of, wanted, places, waiting }: ThicknessFit,
  engine: Engine,
): Section {
  const figures = figuresOf(engine);
  const lacking = places.filter(({ code }) => code === undefined);
  const isTooHigh = ({ ideal }: ThicknessChoice): boolean => list === 'liner_shims' && ideal.n < 0n;
  const linesOf = (some: readonly ThicknessChoice[], why: string): readonly string[] =>
    some.length === 0 ? [] : [`${some.map(({ position }) => tableName(position)).join(', ')}: ${why}`];
  const waitingLines = [...new Set(waiting.map(({ after }) => after))].map((after) => {
    const positions = waiting.filter((each) => each.after === after).map(({ position }) => position);
    return `${placesText(positions, engine.document.layout)}: ${readAgainText(after, list)}`;
  });
  const title = `${LIST_WORDS[list]}: ${of.label}, ${wantedText(wanted, figures)}`;
  if (places.length === 0) return { title, lines: waitingLines };
  return {
    title,
    table: {
      columns: [
        { heading: '', key: 'position' },
        { heading: 'read', key: 'read' },
        { heading: 'ideal', key: 'ideal' },
        { heading: 'take', key: 'take' },
        { heading: 'becomes', key: 'becomes' },
      ],
      rows: places.map(({ position, read, ideal, code, becomes }) => [
        nameCell(position),
        figures.cell(read),
        figures.cell(ideal),
        code ?? { text: 'none', value: null },
        figures.rangeCell(becomes),
      ]),
    },
    lines: [
      ...linesOf(
        lacking.filter((each) => !isTooHigh(each)),
        'what is in stock brings no more of them inside; the ideal thickness is what to get',
      ),
      ...linesOf(lacking.filter(isTooHigh), TOO_HIGH),
      ...waitingLines,
    ],
  };
}
