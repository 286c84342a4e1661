import type { Characteristic, Derivation } from '../../characteristics/characteristic.ts';
import { nameAt } from '../../documents/measure.ts';
import type { Position } from '../../layout/position.ts';
import { relateOne } from '../../layout/relate.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';
import { nominalSizes } from '../grades/nominalSizes.ts';
import type { SessionView } from '../judge/row.ts';
import type { Route } from '../value/route.ts';

const NO_VALUE: FindingKind = {
  code: 'reading/formula',
  severity: 'warning',
  means:
    "The formula of a shop's own characteristic comes to nothing with what was read at a position: it divides by zero, takes the root of a negative number, or names a size that the engine document does not give.",
  matters: 'There is no value to judge, and without a word it would pass for not measured.',
  usually: 'Look at the readings that the formula names; then correct the formula.',
  example: 'wear rate 2 cannot be worked out as 1 / (cylinder_bore - 4.125): this divides by zero',
};

export const ownFormulaKinds: readonly FindingKind[] = [NO_VALUE];

export const ownFormulaFindings = (view: SessionView): readonly Finding[] =>
  view.registry.all.flatMap((characteristic) =>
    characteristic.derivations.flatMap((derivation) =>
      derivation.problem === undefined || !view.routes.mayHave(characteristic)
        ? []
        : view.engine.document.layout
            .positionsOf(characteristic.family)
            .flatMap((position) => failureAt(characteristic, derivation, position, view) ?? []),
    ),
  );

function failureAt(
  characteristic: Characteristic,
  derivation: Derivation,
  position: Position,
  view: SessionView,
): Finding | undefined {
  const inputs = derivation.inputs.map((id) => inputAt(id, position, view));
  const read = inputs.flatMap((input) => input ?? []);
  const [first] = read;
  if (first === undefined || read.length < inputs.length) return undefined;
  const problem = derivation.problem?.(
    read.map(({ grid }) => grid),
    { sizes: nominalSizes(view.engine, view.session, view.registry, position) },
  );
  if (problem === undefined) return undefined;
  const message = `${nameAt(characteristic, position)} cannot be worked out as ${derivation.route}: ${problem.message}`;
  return finding(NO_VALUE, first.place, message, { measure: characteristic.id, position });
}

function inputAt(
  id: string,
  position: Position,
  { registry, routes, engine }: SessionView,
): Route | undefined {
  const input = registry.find(id);
  const at = input && relateOne(engine.document.layout, position, input.family);
  return input === undefined || at === undefined ? undefined : routes.at(input, at, {})[0];
}
