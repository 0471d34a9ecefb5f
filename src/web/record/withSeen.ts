import type { Change, Json } from '../../piece/event.ts';
import { withBefore } from '../../piece/fold.ts';

/** Changes that also say what this device saw in each place, so that the record can tell whether another value stood there. */
export function withSeen(document: Json | undefined, changes: readonly Change[]): Change[] {
  return withBefore(document, changes).map(({ path, to, from }) => ({
    path,
    ...(to === undefined ? {} : { to }),
    saw: from === undefined ? {} : { value: from },
  }));
}
