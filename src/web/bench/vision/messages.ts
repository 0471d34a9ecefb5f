import type { CardFound } from './findCard.ts';

/** What the page asks of the vision worker. The picture's file is read there, so that the page never holds its pixels. */
export type ToVision = { ask: number; say: 'find-card'; picture: Blob };

/** What it says: how far it is (0–1), what it found, or that it failed and has to be started anew. */
export type FromVision =
  | { ask: number; say: 'progress'; share: number }
  | { ask: number; say: 'card'; card: CardFound }
  | { ask: number; say: 'failed'; why: string };
