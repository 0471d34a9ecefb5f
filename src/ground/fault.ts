/** What is wrong with an input, a file or a request, as data: a code for programs, where it is, and what to do about it in words. */
export type Fault = { code: string; path: string; message: string };

/** The value that was asked for, or what stands in its way. */
export type Outcome<Value> = { ok: true; value: Value } | Refused;

/** Nothing but faults. */
export type Refused = { ok: false; faults: Fault[] };

/** A good answer. */
export function done<Value>(value: Value): Outcome<Value> {
  return { ok: true, value };
}

/** One fault as an answer. */
export function refuse(code: string, message: string, path = ''): Refused {
  return { ok: false, faults: [{ code, path, message }] };
}
