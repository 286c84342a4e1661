import type { Characteristic } from '../characteristics/characteristic.ts';
import { halvesAt, limitsOfFitted } from '../checks/grades/madeSize.ts';
import type { Engine } from '../documents/assemble.ts';
import type { Half } from '../documents/grades/movement.ts';
import { BAND_NAMES, type Band, type LimitValue } from '../documents/limits/bands.ts';
import type { Position } from '../layout/position.ts';

/**
 * The limits at a position for what is fitted, as they are written: `target 0.0026 to 0.0032, wear max 0.0050`; empty
 * where there are none. Of shells whose halves are unlike those of each half, where none is asked for.
 */
export function bandsText(
  of: Characteristic,
  position: Position | undefined,
  engine: Engine,
  asked?: Half | undefined,
): string {
  const halves = position === undefined ? [undefined] : halvesAt(engine, undefined, of, position);
  return (asked === undefined ? halves : [asked])
    .map((half) => {
      const { bands, temperatures } = limitsOfFitted(engine, undefined, of, position, half);
      const texts = BAND_NAMES.flatMap((name) => {
        const band = bands[name];
        const warm = temperatures[name];
        const where = warm === undefined ? '' : ` at ${warm.text}`;
        return band === undefined ? [] : [`${name} ${bandText(band)}${where}`];
      });
      return [asked === undefined ? half : undefined, texts.join(', ')].filter(Boolean).join(' ');
    })
    .join('; ');
}

function bandText({ min, max }: Band): string {
  if (min !== undefined && max !== undefined) return `${sideText(min)} to ${sideText(max)}`;
  if (min !== undefined) return `min ${sideText(min)}`;
  return max === undefined ? '' : `max ${sideText(max)}`;
}

const sideText = (value: LimitValue): string => value.written;
