import {
  type Characteristic,
  type Derivation,
  type InputPlace,
  placesOf,
} from '../../characteristics/characteristic.ts';
import type { Registry } from '../../characteristics/registry.ts';
import type { Place } from '../../diagnostic/place.ts';
import { nameAt } from '../../documents/measure.ts';
import type { Position } from '../../layout/position.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import { limitsOfFitted } from '../grades/madeSize.ts';
import { nominalSizes } from '../grades/nominalSizes.ts';
import { isWanted } from '../judge/found.ts';
import type { SessionView } from '../judge/row.ts';
import { oncePer } from '../once.ts';
import type { Route } from '../value/route.ts';

const NO_VALUE: FindingKind = {
  code: 'reading/formula',
  severity: 'warning',
  means:
    'The formula of a characteristic cannot be evaluated with what was read at a position: it divides by zero, takes the root of a negative number, names a size that the engine document does not give, or takes several positions of which one was not read.',
  matters: 'There is no value to judge, and without this finding it would look as if nobody had measured it.',
  usually: 'Look at the readings that the formula names; then correct the formula.',
  example: 'wear rate 2 cannot be worked out as 1 / (cylinder_bore - 4.125): this divides by zero',
};

export const ownFormulaKinds: readonly FindingKind[] = [NO_VALUE];

export const ownFormulaFindings = (view: SessionView): readonly Finding[] =>
  formulasIn(view.registry)
    .filter((each) => view.routes.mayHave(each))
    .flatMap((characteristic) =>
      characteristic.derivations
        .filter(isOfShop)
        .flatMap((derivation) =>
          view.engine.document.layout
            .positionsOf(characteristic.family)
            .flatMap((position) => failureAt({ characteristic, derivation, position }, view) ?? []),
        ),
    );

const formulasIn = oncePer(({ all }: Registry) =>
  all.filter(({ derivations }) => derivations.some(isOfShop)),
);

/** Ours come to something of whatever was read. */
const isOfShop = ({ problem }: Derivation): boolean => problem !== undefined;

interface Figure {
  readonly characteristic: Characteristic;
  readonly derivation: Derivation;
  readonly position: Position;
}

function failureAt(figure: Figure, view: SessionView): Finding | undefined {
  const { characteristic, derivation, position } = figure;
  const { registry, routes, engine, session } = view;
  if (!isWanted(characteristic, limitsOfFitted(engine, session, characteristic, position), session)) return;
  const places = placesOf(derivation, registry, engine.document.layout, position);
  if (places === undefined) return undefined;
  const inputs = places.map((place) => routes.inputsAt(place)[0]);
  const read = inputs.flatMap((input) => input ?? []);
  const place = read[0]?.place ?? session.start;
  if (read.length < inputs.length) return incomplete(figure, places, inputs, view);
  const problem = derivation.problem?.(
    read.map(({ grid }) => grid),
    { sizes: nominalSizes(engine, session, registry, position) },
    places,
  );
  return problem && cannot(figure, problem.message, place);
}

/** Of several positions that stand together some were read and others not: a spread of some of them proves nothing. */
function incomplete(
  figure: Figure,
  places: readonly InputPlace[],
  inputs: readonly (Route | undefined)[],
  { registry }: SessionView,
): Finding | undefined {
  const wanting = places.filter((_, index) => inputs[index] === undefined);
  const [first] = wanting;
  const read = inputs.find(
    (input, index) => input !== undefined && places[index]?.reference === first?.reference,
  );
  if (first === undefined || read === undefined) return undefined;
  const { label = first.id } = registry.find(first.id) ?? {};
  const where = wanting.filter(({ id }) => id === first.id).map((each) => each.position.name);
  return cannot(figure, `there is no ${label} ${where.join(', ')}`, read.place);
}

function cannot({ characteristic, derivation, position }: Figure, why: string, place: Place): Finding {
  const message = `${nameAt(characteristic, position)} cannot be worked out as ${derivation.route}: ${why}`;
  return finding(NO_VALUE, place, message, { measure: characteristic.id, position });
}
