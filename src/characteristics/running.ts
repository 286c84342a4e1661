import { familyOf } from '../layout/family.ts';
import type { Characteristic } from './characteristic.ts';
import { read } from './readFigure.ts';

export const compressionPressure = read({
  id: 'compression_pressure',
  under: ['altitude'],
  isNeverBelowZero: true,
  label: 'compression pressure',
  of: 'cylinder',
  dependsOn: ['piston', 'ring', 'valve', 'head'],
  isAssemblyFigure: true,
  isSymptom: true,
  description: 'Greatest pressure in a cylinder while the engine is cranked.',
  note: 'It falls with the height above the sea and with a slow starter: write altitude, speed and temperature under conditions.',
  caution:
    'Ignition and fuel off, and injectors or plugs out: the starter turns the engine. Hands, hair and sleeves clear of belts and fan, out of gear, wheels chocked, and no face over an open plug hole.',
  quantity: 'pressure',
  family: familyOf('cylinder'),
  usual: 'pressure gauge',
  words: { above: 'high', below: 'low' },
  source: 'TM 5-3895-359-14&P: at 600 rpm, by altitude',
});

/** What is measured on the engine as it stands or runs, and follow-ups ask for. */
export const running: readonly Characteristic[] = [compressionPressure];
