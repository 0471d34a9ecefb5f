import { keep, names, readKept } from '../drawer/drawer.ts';

/** Light, dark, or as the device is set. */
export type ThemeChoice = 'device' | 'light' | 'dark';

/** The choice kept on this device; as the device is set where none was made. */
export function readTheme(): ThemeChoice {
  const kept = readKept(names.theme);
  return kept === 'light' || kept === 'dark' ? kept : 'device';
}

/** Keeps the choice on this device and shows it at once. */
export function chooseTheme(choice: ThemeChoice): void {
  keep(names.theme, choice);
  applyTheme(choice);
}

/** Shows a choice without keeping it. */
export function applyTheme(choice: ThemeChoice): void {
  const root = document.documentElement;
  if (choice === 'device') root.removeAttribute('data-theme');
  else root.setAttribute('data-theme', choice);
}
