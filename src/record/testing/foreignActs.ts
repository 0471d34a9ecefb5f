import { act } from '../../../test/kits/drafts.ts';
import type { Change, DraftEvent, Json, RecordedEvent } from '../../piece/event.ts';
import { withBefore } from '../../piece/fold.ts';
import { type ForeignActs, planAdoption } from '../adoptActs.ts';
import { chainStart, type Head, hashEvent, linkEvent } from '../chain.ts';

/** Acts as a record keeps them: with what stood before, on one chain for each device. */
export function recorded(...drafts: DraftEvent[]): RecordedEvent[] {
  let document: Json | undefined;
  const heads = new Map<string, Head>();
  return drafts.map((draft) => {
    const changes = withBefore(document, draft.changes);
    document = folded(document, changes);
    const event = linkEvent({ ...draft, changes }, heads.get(draft.device) ?? chainStart);
    heads.set(draft.device, event);
    return event;
  });
}

export function folded(document: Json | undefined, changes: readonly Change[]): Json | undefined {
  return changes.reduce<Json | undefined>((state, { path, to }) => set(state, path, to), document);
}

export function set(
  state: Json | undefined,
  [key, ...rest]: readonly string[],
  to: Json | undefined,
): Json | undefined {
  if (key === undefined) return to;
  const within = { ...(state as { [key: string]: Json }) };
  const inner = set(within[key], rest, to);
  if (inner === undefined) delete within[key];
  else within[key] = inner;
  return within;
}

export const resealed = (event: RecordedEvent): RecordedEvent => ({ ...event, hash: hashEvent(event) });
export const nobody = () => undefined;
export const foreign = (acts: readonly unknown[], more: Partial<ForeignActs> = {}): ForeignActs => ({
  piece: 'one',
  record: 'theirs',
  acts,
  issued: new Map(),
  ...more,
});
export const plan = (
  acts: readonly unknown[],
  here: readonly RecordedEvent[] = [],
  more: Partial<ForeignActs> = {},
) => planAdoption(foreign(acts, more), here, nobody);
export const faultOf = (
  acts: readonly unknown[],
  here: readonly RecordedEvent[] = [],
  more: Partial<ForeignActs> = {},
) => {
  const planned = plan(acts, here, more);
  return planned.ok ? undefined : planned.faults[0];
};
export const titled = (to: string, more: Partial<DraftEvent> = {}) =>
  act('one', 'piece-described', [{ path: ['title'], to }], more);
