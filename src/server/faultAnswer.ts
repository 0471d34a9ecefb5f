import type { Context } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { Fault } from '../ground/fault.ts';
import { readOnlyCode } from '../record/readOnly/refuseWriting.ts';

/** Faults as an answer; the status follows from what kind they are. */
export function faultsAnswer(context: Context, faults: readonly Fault[], status?: ContentfulStatusCode) {
  return context.json({ faults }, status ?? statusOf(faults[0]?.code ?? ''));
}

/** One fault as an answer. */
export function faultAnswer(
  context: Context,
  status: ContentfulStatusCode,
  code: string,
  message: string,
  path = '',
) {
  return faultsAnswer(context, [{ code, path, message }], status);
}

/** 5xx is what may pass if tried again with the same words; the rest is for a person to mend. */
function statusOf(code: string): ContentfulStatusCode {
  if (code.endsWith('disk-full')) return 507;
  if (code === 'record.could-not-write' || code === 'record.could-not-read') return 503;
  if (code === 'record.not-opened' || code === 'record.no-piece') return 404;
  if (code === 'photo.too-large' || code === 'piece-file.too-large') return 413;
  if (code === 'photo.not-a-photo') return 415;
  if (
    [
      'record.id-used',
      'record.already-open',
      'record.nothing-to-undo',
      'record.nothing-to-redo',
      'record.not-the-last',
      'record.nothing-to-settle',
      'record.moved-on',
      'issue.signed-already',
    ].includes(code)
  )
    return 409;
  if (code === 'record.example-is-read-only' || code === readOnlyCode) return 403;
  return 422;
}
