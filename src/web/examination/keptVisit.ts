import { z } from 'zod';
import { keep, names, readKeptAs } from '../drawer/drawer.ts';
import type { Visit } from './planLooks.ts';

const shape = z.object({
  minutes: z.number().positive().optional(),
  mayNot: z.array(z.enum(['turned-over', 'seat-lifted', 'part-removed', 'owners-leave', 'laboratory'])),
  suspected: z.string().optional(),
});

/** What was said on this device of the time and leave for a piece, and of what is suspected; nothing if nothing was said, or nothing that can be read. */
export function readVisit(piece: string, store?: Storage): Visit | undefined {
  const read = readKeptAs(names.visit(piece), shape, store);
  return read && { minutes: read.minutes, mayNot: read.mayNot, suspected: read.suspected };
}

/** Keeps the time and leave for a piece on this device, so that going to another page does not forget them. */
export function keepVisit(piece: string, visit: Visit): void {
  keep(names.visit(piece), JSON.stringify(visit));
}
