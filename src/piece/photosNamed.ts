import type { Change } from './event.ts';

/** The SHA-256 of every photo that an act names, now or as what stood before. */
export function photosNamed({ changes }: { changes: readonly Change[] }): string[] {
  return [...JSON.stringify(changes).matchAll(/"sha256":"([0-9a-f]{64})"/g)].map((match) => match[1] ?? '');
}
