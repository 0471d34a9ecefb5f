import { formatBoth, formatInches, formatMm } from '../../units/length.ts';
import { keep, names, readKept } from '../drawer/drawer.ts';

/** Which unit stands first on the screens; both are always printed. */
export type UnitsChoice = 'inches' | 'mm';

/** The choice kept on this device; inches where none was made. */
export function readUnits(): UnitsChoice {
  return readKept(names.units) === 'mm' ? 'mm' : 'inches';
}

/** Keeps the choice on this device. */
export function chooseUnits(choice: UnitsChoice): void {
  keep(names.units, choice);
}

/** A length in both units, the chosen one first: `37 1/8 in (943 mm)` or `943 mm (37 1/8 in)`. */
export function lengthWords(mm: number, first: UnitsChoice = readUnits()): string {
  return first === 'inches' ? formatBoth(mm) : `${formatMm(mm)} (${formatInches(mm)} in)`;
}
