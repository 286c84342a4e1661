import type { Engine } from '../../../documents/assemble.ts';
import { gradeText } from '../../../documents/grades/grade.ts';
import { tableName } from '../../../layout/naming.ts';
import type { PistonProblem } from '../../../plan/fit/pistonChoice.ts';
import { formatNumber } from '../../../quantity/format.ts';
import { unitNamed } from '../../../quantity/units.ts';
import { figuresOf } from '../figures.ts';

/** Why no pistons are chosen, and what to do. */
export function pistonProblemLines(problem: PistonProblem, engine: Engine): readonly string[] {
  switch (problem.kind) {
    case 'no limits':
      return ['no limits of new parts on both sides of the clearance: nothing to aim at'];
    case 'not measured':
      return ['not every bore is measured'];
    case 'no step':
      return ['the size that the bores are finished to is not known yet'];
    case 'too few':
      return [
        ...problem.lacking.map(({ size, needed, free }) => {
          const stock = `${areOrIs(needed)} needed, ${free === 0 ? 'none' : free} ${areOrIs(Math.max(1, free))} in stock`;
          return `${gradeText(size)}: ${needed} ${stock}: get ${needed - free} more`;
        }),
        WHOLE_SET,
      ];
    case 'nothing fits': {
      const { number, unit } = figuresOf(engine);
      return [
        ...problem.ideal.map(
          ({ position, diameter }) =>
            `${tableName(position)}: none that is left in stock brings it inside: get one of ${number(diameter)} ${unit.name}`,
        ),
        WHOLE_SET,
      ];
    }
    case 'of no one weight':
      return [
        `by size each cylinder has its own, and their weights differ by more than ${formatNumber(problem.spread, unitNamed('g'), 1)} g: get some of one weight`,
        WHOLE_SET,
      ];
  }
}

const areOrIs = (count: number): string => (count === 1 ? 'is' : 'are');

const WHOLE_SET = 'a set is chosen whole or not at all: none is, until each cylinder has its own';
