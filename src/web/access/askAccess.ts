import type { Asked } from '../record/pieceServer.ts';

/**
 * Asks who may come in, or tries to. Unlike what is asked of the record, every refusal is told in its words, "wait" too: a person stands before
 * the page, and nothing is in the line.
 *
 * @param path  after /api/access/; empty for how it stands
 * @param body  sent by POST; a GET where left out
 */
export async function askAccess<Answer>(path: string, body?: unknown): Promise<Asked<Answer>> {
  try {
    const answer = await fetch(`/api/access${path === '' ? '' : `/${path}`}`, {
      ...(body === undefined
        ? {}
        : {
            method: 'POST',
            body: JSON.stringify(body),
            headers: { 'content-type': 'application/json', 'x-underside': '1' },
          }),
      signal: AbortSignal.timeout(30_000),
    });
    const told = (await answer.json()) as Answer & { faults?: { code: string; message: string }[] };
    if (answer.ok) return { came: 'answer', answer: told };
    const [fault] = told.faults ?? [];
    if (fault === undefined) return { came: 'nothing' };
    return { came: 'refusal', status: answer.status, message: fault.message, code: fault.code };
  } catch {
    return { came: 'nothing' };
  }
}

/** What stood in the way, in words; empty where nothing did. */
export function troubleOf(asked: Asked<unknown>): string {
  if (asked.came === 'answer') return '';
  return asked.came === 'refusal' ? asked.message : 'The office computer did not answer: try again.';
}
