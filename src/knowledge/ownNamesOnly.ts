import type { Knowledge } from './schema.ts';

/**
 * The knowledge with tables that answer only to the ids that are in them: a table read from JSON also answers to names that
 * every object has (`constructor`, `__proto__`), and an id may come from an address or a file.
 *
 * @param knowledge  its tables are changed in place
 */
export function ownNamesOnly(knowledge: Knowledge): Knowledge {
  for (const table of Object.values(knowledge)) if (isTable(table)) Object.setPrototypeOf(table, null);
  return knowledge;
}

function isTable(value: unknown): value is object {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
