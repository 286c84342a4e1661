import { ENGINE } from '../../layout/family.ts';
import { part } from '../../layout/makePart.ts';
import type { Part } from '../../layout/part.ts';

/** The oil pump and what limits its pressure. */
export const oilPumpParts: readonly Part[] = [
  part('oil_pump', 'oil pump', ENGINE, {
    from: ['pump_gear', 'pump_shaft', 'pump_body', 'relief_valve', 'relief_spring'],
  }),
  part('pump_gear', 'pump gear', ENGINE, { also: ['pump rotor', 'oil pump gear', 'oil pump rotor'] }),
  part('pump_shaft', 'pump shaft', ENGINE, { also: ['oil pump shaft'] }),
  part('pump_body', 'pump body', ENGINE, { plural: 'pump bodies', also: ['oil pump body', 'pump cover'] }),
  part('relief_valve', 'relief valve', ENGINE, { also: ['relief plunger', 'oil pressure valve'] }),
  part('relief_spring', 'relief spring', ENGINE, { also: ['relief valve spring'] }),
];
