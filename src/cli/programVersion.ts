import { existsSync, readFileSync } from 'node:fs';

/** The version of the program, as its package says: beside the built program one folder up, two from its source. */
export function programVersion(): string {
  const places = ['../package.json', '../../package.json'].map((path) => new URL(path, import.meta.url));
  const file = places.find((place) => existsSync(place));
  if (file === undefined) throw new Error('The package of the program is not there: install it anew.');
  return JSON.parse(readFileSync(file, 'utf8')).version;
}
