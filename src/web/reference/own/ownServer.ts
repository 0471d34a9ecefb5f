import type { Draft } from './draft.ts';
import type { OwnKind } from './fieldShapes.ts';

/** What the user added, as the program keeps it. */
export type OwnEntries = { signs: Draft[]; shops: Draft[]; canUndo: boolean; fault?: string };

/** What is wrong with an entry, at which field: `shows/period`, or '' for the entry as a whole. */
export type OwnFault = { path: string; message: string };

export type OwnAnswer = { ok: true; entries: OwnEntries } | { ok: false; faults: OwnFault[] };

const silent: OwnAnswer = {
  ok: false,
  faults: [
    {
      path: '',
      message:
        'Can’t reach Underside on this computer. What you typed is kept in this browser: try again when it is back.',
    },
  ],
};

/** The user's own entries. */
export function listOwn(): Promise<OwnAnswer> {
  return ask('GET', '');
}

/** Adds an entry, or puts it in the place of the one of its id. */
export function putOwn(kind: OwnKind, id: string, entry: Draft): Promise<OwnAnswer> {
  return ask('PUT', `/${kind}/${id}`, entry);
}

export function removeOwn(kind: OwnKind, id: string): Promise<OwnAnswer> {
  return ask('DELETE', `/${kind}/${id}`);
}

/** Takes the last change back. */
export function undoOwn(): Promise<OwnAnswer> {
  return ask('POST', '/undo', {});
}

async function ask(method: string, path: string, body?: unknown): Promise<OwnAnswer> {
  try {
    const answer = await fetch(`/api/own-knowledge${path}`, {
      method,
      headers: { 'content-type': 'application/json', 'x-underside': '1' },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      signal: AbortSignal.timeout(30_000),
    });
    if (answer.ok) return { ok: true, entries: (await answer.json()) as OwnEntries };
    const { faults } = (await answer.json()) as { faults?: OwnFault[] };
    return faults === undefined || faults.length === 0 ? silent : { ok: false, faults };
  } catch {
    return silent;
  }
}
