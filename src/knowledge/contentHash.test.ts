import { expect, test } from 'vitest';
import { contentHash } from './contentHash.ts';

test('agrees with the published FNV-1a 64 test vectors', () => {
  // Test vectors of the FNV page by Landon Curt Noll (from memory): empty text, "a", "foobar".
  expect(contentHash([])).toBe('cbf29ce484222325');
  expect(contentHash(['a'])).toBe('af63dc4c8601ec8c');
  expect(contentHash(['foobar'])).toBe('85944171f73967e8');
});

test('texts are kept apart, and signs outside ASCII are hashed as UTF-8', () => {
  expect(contentHash(['ab', 'c'])).not.toBe(contentHash(['a', 'bc']));
  const bytes = [...new TextEncoder().encode('⅜–𝄞')];
  let hash = 0xcbf29ce484222325n;
  for (const byte of bytes) hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
  expect(contentHash(['⅜–𝄞'])).toBe(hash.toString(16).padStart(16, '0'));
});
