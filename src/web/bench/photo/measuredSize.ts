import type { Fault } from '../../../ground/fault.ts';
import type { Found } from '../benchContext.ts';

/** What a mark on a photo came to, or why it came to nothing. */
export type Measured =
  | { ok: true; found: Found; says: string; length?: { mm: number; sigmaMm: number } }
  | { ok: false; faults: Fault[] };
