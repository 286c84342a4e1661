import { ENGINE } from '../../layout/family.ts';
import type { Characteristic } from '../characteristic.ts';
import { read, readSize } from '../readFigure.ts';
import { freeLength } from '../valveGear/springs.ts';

const RUNNING =
  'The engine runs and is hot: hands, hair, sleeves and hoses clear of belts, fan and exhaust; hot oil under pressure burns; exhaust led outside. Know how to stop it: a diesel that runs away is stopped by blocking its air.';

const oilPressure = (id: string, label: string, at: string): Characteristic =>
  read({
    id,
    under: ['speed', 'temperature'],
    isNeverBelowZero: true,
    label,
    of: 'oil_pump',
    dependsOn: ['relief_valve', 'relief_spring', 'main_shell', 'rod_shell', 'cam_bearing'],
    isSymptom: true,
    isAssemblyFigure: true,
    description: `Pressure of the oil ${at}, by a gauge of known error at the main gallery.`,
    note: 'Without its speed and the temperature of the oil it says little: write both under conditions.',
    caution: RUNNING,
    quantity: 'pressure',
    family: ENGINE,
    usual: 'pressure gauge',
    words: { above: 'high', below: 'low' },
    source: 'TM 5-3825-225-14&P: 30 to 60 psi at maximum speed, hot',
  });

/** What limits the pressure of the oil, and what the engine shows of it when it runs. */
export const pressures: readonly Characteristic[] = [
  freeLength({ name: 'relief_spring', label: 'relief spring', family: ENGINE }),
  readSize({
    id: 'relief_spring_load',
    under: ['length'],
    label: 'relief spring load',
    of: 'relief_spring',
    description: 'Load of the spring of the oil pressure relief valve at the length that the manual gives.',
    note: 'Without its length a load says nothing: write it under conditions, such as `length: 1.44 in`.',
    caution: 'A spring under load flies when it slips: eye protection, and nobody in line with it.',
    quantity: 'force',
    family: ENGINE,
    usual: 'spring scale',
    words: { above: 'strong', below: 'weak' },
    source: 'TM 10-3930-638-24P, p. 4-72: 18 to 19 lb at 1.44 in',
  }),
  read({
    id: 'relief_opening_pressure',
    isNeverBelowZero: true,
    label: 'relief opening pressure',
    of: 'relief_valve',
    dependsOn: ['relief_spring'],
    isAssemblyFigure: true,
    description: 'Pressure of the oil at which the relief valve opens.',
    caution: RUNNING,
    quantity: 'pressure',
    family: ENGINE,
    usual: 'pressure gauge',
    words: { above: 'high', below: 'low' },
    source: 'TM 5-3895-382-24: 340 to 395 kPa',
  }),
  oilPressure('oil_pressure_idle', 'oil pressure, idling', 'as the engine idles'),
  oilPressure('oil_pressure_running', 'oil pressure, running', 'at the speed that the manual gives'),
  read({
    id: 'crankcase_pressure',
    under: ['orifice'],
    label: 'crankcase pressure',
    of: 'ring',
    dependsOn: ['piston', 'cylinder', 'valve_guide'],
    isSymptom: true,
    isAssemblyFigure: true,
    description:
      'Pressure in the crankcase against the air outside, by a water manometer on the stated orifice.',
    note: 'It depends on the orifice and the speed: write both under conditions.',
    caution: RUNNING,
    quantity: 'pressure',
    family: ENGINE,
    usual: 'pressure gauge',
    words: { above: 'high', below: 'low' },
    source: 'TM 5-3820-256-24-5, p. 32: 5.5 in of water at most, at high idle',
  }),
];
