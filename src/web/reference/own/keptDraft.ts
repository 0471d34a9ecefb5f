import { z } from 'zod';
import { keep, names, readKeptAs } from '../../drawer/drawer.ts';
import type { Draft } from './draft.ts';

/**
 * Where a draft is kept in this browser: one for each entry that is being changed, one for each kind that is being added, and
 * one for each observation that is proposed as a sign.
 */
export function draftKey(kind: string, id: string | undefined, proposal?: string): string {
  return names.own(`${kind}.${id ?? (proposal === undefined ? 'new' : `from.${proposal}`)}`);
}

/** The draft that was kept, or nothing. A browser without a store keeps none. */
export function readDraft(key: string): Draft | undefined {
  return readKeptAs(key, z.record(z.string(), z.unknown())) as Draft | undefined;
}

/** Keeps a draft as it is typed; without one, lets go of what was kept. */
export function keepDraft(key: string, draft: Draft | undefined): void {
  keep(key, draft && JSON.stringify(draft));
}
