import type { Fault } from '../calculations/define.ts';

/** What a store, a photo folder or a route answers: the value, or what is wrong in words. */
export type Outcome<Value> = { ok: true; value: Value } | { ok: false; faults: Fault[] };

/** A good answer. */
export function done<Value>(value: Value): Outcome<Value> {
  return { ok: true, value };
}

/** One fault as an answer. */
export function refuse(code: string, message: string, path = ''): { ok: false; faults: Fault[] } {
  return { ok: false, faults: [{ code, path, message }] };
}

/** A fault that stops the program from opening a record: its message is one sentence to print. */
export class CannotOpen extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
    this.name = 'CannotOpen';
  }
}
