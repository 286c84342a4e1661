import { familyOf } from '../layout/family.ts';
import type { Characteristic } from './characteristic.ts';

/** What is measured on the engine as it stands or runs, and follow-ups ask for. */
export const running: readonly Characteristic[] = [
  {
    id: 'compression_pressure',
    label: 'compression pressure',
    of: 'cylinder',
    dependsOn: ['piston', 'ring', 'valve', 'head'],
    figure: 'other',
    isAssemblyFigure: true,
    description: 'Greatest pressure in a cylinder while the engine is cranked.',
    quantity: 'pressure',
    family: familyOf('cylinder'),
    usual: 'pressure gauge',
    formula: 'read directly',
    derivations: [],
    words: { above: 'high', below: 'low' },
    source: 'common practice, no source',
    examples: [],
  },
];
