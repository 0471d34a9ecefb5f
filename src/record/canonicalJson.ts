/**
 * The one way of writing a value as JSON: keys sorted by code unit, nothing between. Keys that stand for nothing
 * (undefined) are left out. Two documents are the same act exactly when these texts are equal.
 *
 * @source RFC 8785, whose number and text forms are those of ECMAScript's JSON.stringify
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const entries = Object.entries(value).filter(([, inner]) => inner !== undefined);
  entries.sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([key, inner]) => `${JSON.stringify(key)}:${canonicalJson(inner)}`).join(',')}}`;
}
