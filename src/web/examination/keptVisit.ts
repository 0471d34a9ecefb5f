import { z } from 'zod';
import { keep, readKept } from '../theme/themeChoice.ts';
import type { Visit } from './planLooks.ts';

const kept = z.object({
  minutes: z.number().positive().optional(),
  mayNot: z.array(z.enum(['turned-over', 'seat-lifted', 'part-removed', 'owners-leave', 'laboratory'])),
});

/** What was said on this device of the time and leave for a piece; nothing if nothing was said. */
export function readVisit(pieceId: string): Visit | undefined {
  const text = readKept(keptUnder(pieceId));
  return text === null ? undefined : visitFrom(text);
}

/** Keeps the time and leave for a piece on this device, so that going to another room does not forget them. */
export function keepVisit(pieceId: string, visit: Visit): void {
  keep(keptUnder(pieceId), JSON.stringify(visit));
}

/** The visit that a kept text tells of; nothing if it can't be read. */
export function visitFrom(text: string): Visit | undefined {
  try {
    const read = kept.safeParse(JSON.parse(text));
    return read.success ? { minutes: read.data.minutes, mayNot: read.data.mayNot } : undefined;
  } catch {
    return undefined;
  }
}

function keptUnder(pieceId: string): string {
  return `underside.visit.${pieceId}`;
}
