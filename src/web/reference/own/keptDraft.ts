import type { Draft } from './draft.ts';

/**
 * Where a draft is kept in this browser: one for each entry that is being changed, one for each kind that is being added, and
 * one for each observation that is proposed as a sign.
 */
export function draftKey(kind: string, id: string | undefined, proposal?: string): string {
  return `underside.own.${kind}.${id ?? (proposal === undefined ? 'new' : `from.${proposal}`)}`;
}

/** The draft that was kept, or nothing. A browser without a store keeps none. */
export function readDraft(key: string): Draft | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(key) ?? 'null');
    return typeof kept === 'object' && kept !== null ? (kept as Draft) : undefined;
  } catch {
    return undefined;
  }
}

/** Keeps a draft as it is typed. */
export function keepDraft(key: string, draft: Draft): void {
  try {
    localStorage.setItem(key, JSON.stringify(draft));
  } catch {
    // No store in this browser: what is typed lasts as long as the page.
  }
}

/** Lets a draft go, once it is kept with the program or given up. */
export function dropDraft(key: string): void {
  try {
    localStorage.removeItem(key);
  } catch {
    // No store: nothing was kept.
  }
}
