/** Light, dark, or as the device is set. */
export type ThemeChoice = 'device' | 'light' | 'dark';

const keptUnder = 'underside.theme';

/** The choice kept on this device; as the device is set where none was made. */
export function readTheme(): ThemeChoice {
  const kept = readKept(keptUnder);
  return kept === 'light' || kept === 'dark' ? kept : 'device';
}

/** Keeps the choice on this device and shows it at once. */
export function chooseTheme(choice: ThemeChoice): void {
  keep(keptUnder, choice);
  applyTheme(choice);
}

/** Shows a choice without keeping it. */
export function applyTheme(choice: ThemeChoice): void {
  const root = document.documentElement;
  if (choice === 'device') root.removeAttribute('data-theme');
  else root.setAttribute('data-theme', choice);
}

/** A small thing kept on this device, or null where the browser keeps nothing. */
export function readKept(name: string): string | null {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

/** Keeps a small thing on this device; a browser that keeps nothing is no fault. */
export function keep(name: string, value: string): void {
  try {
    localStorage.setItem(name, value);
  } catch {
    // Storage is shut (a private window): the choice holds until the page is left.
  }
}
