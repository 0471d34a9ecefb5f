import type { Surface } from './surface.ts';

/** A measure of the piece in mm: the first of these ids that is known, or a usual size. */
export type SizeOf = (ids: readonly string[], usualMm: number) => number;

/** How one kind of part is touched. */
export type Contact = (part: { part: string; kind: string }, size: SizeOf) => Surface[];
