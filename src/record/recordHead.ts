import { createHash } from 'node:crypto';
import { canonicalJson } from './canonicalJson.ts';

/** Where the chain of one device stands: the number of its acts and the hash of the last of them. */
export type DeviceHead = { device: string; seq: number; hash: string };

/** Where a whole record stands. Two records of one head hold the same acts. */
export type RecordHead = { count: number; hash: string };

/**
 * The head of a record: the number of its acts, and SHA-256, in hex, over the canonical JSON of
 * `[[device, seq, hash], …]` of all devices, sorted by the code units of their names.
 *
 * @param heads  where each device's chain stands, in any order
 * @param count  the number of acts of all devices
 */
export function recordHead(heads: readonly DeviceHead[], count: number): RecordHead {
  const sorted = heads
    .map(({ device, seq, hash }) => [device, seq, hash] as const)
    .sort(([a], [b]) => (a < b ? -1 : 1));
  return { count, hash: createHash('sha256').update(canonicalJson(sorted)).digest('hex') };
}
