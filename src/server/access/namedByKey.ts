import type { Visitor } from './visitor.ts';

/**
 * What came in, with the device named in it as the record may believe it: what comes in with a device's key carries the name of that key,
 * whatever it says; somebody who only knows the passphrase can't take the name of a paired device.
 *
 * @param body   acts in a list `events`, or one request with a `device`; of any shape
 * @param names  the names of all devices ever paired
 */
export function namedByKey(body: unknown, visitor: Visitor, names: readonly string[]): unknown {
  if (visitor.door === 'home' || !isObject(body)) return body;
  const taken = new Set(names.map((name) => name.toLowerCase()));
  const called = (said: unknown): unknown => {
    if (visitor.device !== undefined) return visitor.device.name;
    return typeof said === 'string' && taken.has(said.normalize('NFC').trim().toLowerCase())
      ? `${said.trim()} (by passphrase)`
      : said;
  };
  const named = (each: unknown) =>
    isObject(each) && 'device' in each ? { ...each, device: called(each.device) } : each;
  return Array.isArray(body.events) ? { ...body, events: body.events.map(named) } : named(body);
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
