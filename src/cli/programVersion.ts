import { readFileSync } from 'node:fs';

/** The version of the program, as its package says: beside the built program, one folder up. */
export function programVersion(): string {
  return JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')).version;
}
