import type { Json } from '../piece/event.ts';

/**
 * The one way of writing a value as JSON: keys sorted by code unit, nothing between. Keys that stand for nothing
 * (undefined) are left out. Two documents are the same act exactly when these texts are equal.
 *
 * @source ours; the number and text forms are those of ECMAScript's JSON.stringify, as in RFC 8785
 */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(sorted(value as Json | undefined)) ?? 'null';
}

function sorted(value: Json | undefined): Json | undefined {
  if (Array.isArray(value)) return value.map((one) => sorted(one) ?? null);
  if (typeof value !== 'object' || value === null) return value;
  const keys = Object.keys(value).sort();
  return Object.fromEntries(keys.map((key) => [key, sorted(value[key])])) as Json;
}
