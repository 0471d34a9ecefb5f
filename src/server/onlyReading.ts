import type { MiddlewareHandler } from 'hono';
import { type ReadOnly, readOnlyRefusal } from '../record/readOnly/readOnly.ts';
import { readOnlyCode } from '../record/readOnly/refuseWriting.ts';
import { faultAnswer } from './faultAnswer.ts';

/** What is asked by POST and records nothing: a calculation, the PDF of a draft, a piece taken out as a file. */
const onlyComputes = [/^\/api\/calc\/[^/]+$/, /^\/api\/pieces\/[^/]+\/(opinion|file)$/];

/** Refuses whatever would change a record that is open to be looked at only: anything but a question that is known to record nothing. */
export function onlyReading(readOnly: ReadOnly): MiddlewareHandler {
  return async (context, next) => {
    const { method, path } = context.req;
    const isQuestion =
      method === 'GET' ||
      method === 'HEAD' ||
      (method === 'POST' && onlyComputes.some((each) => each.test(path)));
    return isQuestion ? next() : faultAnswer(context, 403, readOnlyCode, readOnlyRefusal(readOnly));
  };
}
