import type { Fault } from '../ground/fault.ts';
import type { EventOrigin, RecordedEvent } from '../piece/event.ts';
import { hashEvent } from './chain.ts';

type Adopted = { event: RecordedEvent & { origin: EventOrigin }; path: string };

/**
 * Whether an act that came from another record comes to the hash that it says it had there. Nothing is to be held against an
 * act that was made here.
 */
export function originHolds({ origin, ...event }: RecordedEvent): boolean {
  return (
    origin === undefined || hashEvent({ ...event, seq: origin.seq, before: origin.before }) === origin.hash
  );
}

/**
 * Whether what the acts brought in from other records say of their places there is so, as far as it can be told without those
 * records: each must come to the hash it had there, and one that hangs on another that is here too must be of the same record and
 * device, and the next after it.
 *
 * A chain that went on in a record and in its copy is no fault, and is told. Who rewrites an act with all that it says of its
 * origin is found only against the record it came from, or an opinion issued there.
 */
export function checkOrigins(acts: readonly { position: number; event: RecordedEvent }[]): {
  faults: Fault[];
  remarks: string[];
} {
  const adopted = acts.flatMap(({ position, event }): Adopted[] =>
    event.origin === undefined
      ? []
      : [{ event: { ...event, origin: event.origin }, path: `event ${position} (${event.id})` }],
  );
  const faults = adopted
    .filter(({ event }) => !originHolds(event))
    .map(({ path }) => ({
      code: 'verify.origin-differs',
      path,
      message: 'What this act says it was in the record it came from is not so: its hash there differs.',
    }));
  const byHash = new Map(adopted.map((one) => [one.event.origin.hash, one]));
  for (const { event, path } of adopted) {
    const last = byHash.get(event.origin.before)?.event;
    if (last !== undefined && !isNext(event, last))
      faults.push({
        code: 'verify.origin-place',
        path,
        message: `This act says it was act ${event.origin.seq} of ${event.device} in the record ${event.origin.record}, and hangs on one that says it was act ${last.origin.seq} of ${last.device} in the record ${last.origin.record}.`,
      });
  }
  return { faults, remarks: forks(adopted) };
}

/** A record of the first version had no id yet: its acts may go on in the same record under the id it was given. */
function isNext(event: Adopted['event'], last: Adopted['event']): boolean {
  const sameRecord =
    event.origin.record === last.origin.record || event.origin.record === '' || last.origin.record === '';
  return sameRecord && event.device === last.device && event.origin.seq === last.origin.seq + 1;
}

/** Neighbors in a chain that do not hang together, and two acts in one place of it. */
function forks(adopted: readonly Adopted[]): string[] {
  const places = new Map<string, Set<string>>();
  const placeOf = ({ event: { origin, device } }: Adopted, seq = origin.seq) =>
    JSON.stringify([origin.record, device, seq]);
  for (const one of adopted)
    places.set(placeOf(one), (places.get(placeOf(one)) ?? new Set()).add(one.event.origin.hash));
  const forked = adopted.filter((one) => {
    const before = places.get(placeOf(one, one.event.origin.seq - 1));
    const twice = (places.get(placeOf(one))?.size ?? 0) > 1;
    return twice || (before !== undefined && !before.has(one.event.origin.before));
  });
  const chains = new Set(forked.map(({ event }) => JSON.stringify([event.device, event.origin.record])));
  return [...chains].map((chain) => {
    const [device, record] = JSON.parse(chain) as [string, string];
    return `The acts of ${device} that came from the record ${record} do not all hang together: that record went on in two copies, or one of these acts was changed before it was brought in.`;
  });
}
