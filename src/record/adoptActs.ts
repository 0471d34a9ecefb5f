import { z } from 'zod';
import { done, type Outcome, refuse } from '../ground/fault.ts';
import {
  type Change,
  type DraftEvent,
  draftEvent,
  type EventOrigin,
  eventOrigin,
  type RecordedEvent,
} from '../piece/event.ts';
import { invertChanges, withBefore } from '../piece/fold.ts';
import { canonicalJson } from './canonicalJson.ts';
import { chainStart, hashEvent } from './chain.ts';
import { checkAct, readPiece } from './checkAct.ts';
import { afterEvent, newState, type PieceState, stateAfterAll } from './pieceState.ts';
import { readDrafts } from './readDrafts.ts';
import { originHolds } from './verifyOrigins.ts';

/** An act to be recorded here that was recorded elsewhere first. */
export type AdoptedAct = DraftEvent & { origin?: EventOrigin };

/** Acts of one piece that came from another record, in their order there, of any shape. */
export type ForeignActs = {
  piece: string;
  /** The id of the record they come from. */
  record: string;
  acts: readonly unknown[];
  /** For each revision that came with its files: the SHA-256 of its list of files. */
  issued: ReadonlyMap<string, string>;
  /** Where they come in as those of another piece: what the piece was called, and how its acts are written anew. */
  was?: string;
  renamed?: (acts: readonly RecordedEvent[]) => RecordedEvent[];
};

/** What bringing them in would do: the acts to record, and what a person should be told. */
export type Adoption = { fresh: AdoptedAct[]; known: number; remarks: string[] };

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const foreignAct = draftEvent.extend({
  seq: z.number().int().min(1),
  before: sha256,
  hash: sha256,
  origin: eventOrigin.optional(),
});

/**
 * Which acts of another record's piece are new here, checked as strictly as if each were entered here: every hash, what
 * each says stood before it, every undo against the act it takes back. Acts are one by their ids: those that are here
 * already are passed over. Where the piece grew here too, the new acts are put after those made here, unless both
 * changed the same place: then nothing is brought in, and the places are named.
 *
 * @param here     the piece's acts in this record, oldest first
 * @param standsAt the act of a device under a number in this record
 */
export function planAdoption(
  foreign: ForeignActs,
  here: readonly RecordedEvent[],
  standsAt: (device: string, seq: number) => RecordedEvent | undefined,
): Outcome<Adoption> {
  const read = readForeign(foreign);
  if (!read.ok) return read;
  const acts = foreign.renamed?.(read.value) ?? read.value;
  const alone = replay(newState(), acts, foreign);
  if (!alone.ok) return alone;
  const whole = readPiece(alone.value.document, foreign.piece, false);
  if (!whole.ok) return whole;

  const byId = new Map(here.map((event) => [event.id, event]));
  for (const act of acts) {
    const known = byId.get(act.id);
    if (known !== undefined && actText(known) !== actText(act))
      return refuse(
        'adopt.other-act',
        `The act ${act.id} is in this record too and says something else: one of the two was changed. Nothing was brought in.`,
        act.id,
      );
  }
  const fresh = acts.filter((act) => !byId.has(act.id));
  const merged = mayFollow(acts, fresh, here, foreign);
  if (!merged.ok) return merged;
  return done({
    fresh: fresh.map((act) => (foreign.renamed === undefined ? adopted(act, foreign.record) : draftOf(act))),
    known: acts.length - fresh.length,
    remarks: foreign.renamed === undefined ? forkWords(fresh, standsAt) : [],
  });
}

function readForeign({ piece, was = piece, acts }: ForeignActs): Outcome<RecordedEvent[]> {
  const read: RecordedEvent[] = [];
  for (const [index, one] of acts.entries()) {
    const act = foreignAct.safeParse(one);
    if (!act.success) return notAnAct(index);
    const event = act.data as RecordedEvent;
    if (event.piece !== was) return notAnAct(index);
    if (hashEvent(event) !== event.hash)
      return refuse(
        'adopt.act-changed',
        `Act ${index + 1} is not as it was recorded: its hash differs.`,
        `${index}`,
      );
    if (!originHolds(event))
      return refuse(
        'adopt.origin-differs',
        `What act ${index + 1} says it was in the record it was made in is not so: its hash there differs.`,
        `${index}`,
      );
    read.push(event);
  }
  for (let first = 0; first < read.length; first += 1000) {
    const checked = readDrafts(read.slice(first, first + 1000).map(draftOf));
    if (!checked.ok) return checked;
  }
  if (read[0]?.kind !== 'piece-opened')
    return refuse('adopt.not-opened', 'The acts do not begin with the opening of the piece.');
  if (new Set(read.map(({ id }) => id)).size !== read.length)
    return refuse('adopt.twice', 'An act stands in the file twice.');
  return done(read);
}

/** The state after some acts, each held to what it may do and to what it says stood before. */
function replay(from: PieceState, acts: readonly RecordedEvent[], foreign: ForeignActs): Outcome<PieceState> {
  let state = from;
  for (const [index, act] of acts.entries()) {
    const allowed = mayAct(state, act, foreign);
    if (!allowed.ok) return allowed;
    if (canonicalJson(withBefore(state.document, act.changes)) !== canonicalJson(act.changes))
      return refuse(
        'adopt.before-differs',
        `What act ${act.id} says stood there before is not what stood there.`,
        act.id,
      );
    state = afterEvent(state, act, index);
  }
  return done(state);
}

function mayAct(state: PieceState, act: RecordedEvent, { issued }: ForeignActs): Outcome<undefined> {
  if (act.kind === 'undo' || act.kind === 'redo') {
    if (stepsBackOrOn(state, act)) return done(undefined);
    return refuse(
      'adopt.undo-differs',
      `Act ${act.id} takes back something other than the act before it.`,
      act.id,
    );
  }
  if ((act.kind as string) === 'opinion-issued') return mayIssue(act, issued);
  // A signature from before revisions were kept: only words, and only of the opinion.
  if (act.kind === 'opinion-signed' && act.changes.every(({ path }) => path[0] === 'opinion'))
    return done(undefined);
  return checkAct(state, draftOf(act), false);
}

/** Whether an undo takes back the last act that stands, or a redo brings back the last one taken back, and no more. */
function stepsBackOrOn(state: PieceState, act: RecordedEvent): boolean {
  const back = act.kind === 'undo';
  const target = (back ? state.done : state.undone).at(-1);
  if (target === undefined || act.of !== target.id) return false;
  const would = back ? invertChanges(target.changes) : target.changes;
  return canonicalJson(whatIsSet(would)) === canonicalJson(whatIsSet(act.changes));
}

function whatIsSet(changes: readonly Change[]): Pick<Change, 'path' | 'to'>[] {
  return changes.map(({ path, to }) => ({ path, to }));
}

function mayIssue(act: RecordedEvent, issued: ReadonlyMap<string, string>): Outcome<undefined> {
  for (const { path, to } of act.changes) {
    if (path[0] === 'opinion') continue;
    const manifest = (to as { manifestSha256?: unknown } | undefined)?.manifestSha256;
    const signed = path.length === 2 && path[0] === 'issued' && manifest !== undefined;
    if (!signed || issued.get(String(path[1])) !== manifest)
      return refuse(
        'adopt.revision-differs',
        'A signed revision did not come with its files as they were signed.',
        act.id,
      );
  }
  return done(undefined);
}

/** Whether the new acts may be put after those made here. */
function mayFollow(
  acts: readonly RecordedEvent[],
  fresh: readonly RecordedEvent[],
  here: readonly RecordedEvent[],
  foreign: ForeignActs,
): Outcome<undefined> {
  const apart = here.findIndex(({ id }, index) => id !== acts[index]?.id);
  if (apart < 0 || fresh.length === 0) return done(undefined);
  if (fresh.some(({ kind }) => kind === 'opinion-issued'))
    return refuse(
      'adopt.signed-meanwhile',
      'This piece was signed in the record it comes from while it was worked on here, and a revision says what stood in it to the last word: it can’t be put after what was entered here. Nothing was brought in: bring the file into a data folder of its own (--data) and compare the two there.',
      'piece',
    );
  const places = clashes(here.slice(apart), fresh);
  if (places.length > 0)
    return refuse(
      'adopt.both-changed',
      `This piece was worked on in both records, and both changed ${places.slice(0, 6).join(', ')}${places.length > 6 ? ` and ${places.length - 6} more places` : ''}. Nothing was brought in: bring the file in beside, as a piece of its own, and compare the two.`,
      'piece',
    );
  const now = stateAfterAll(here.map((event, position) => ({ event, position })));
  const followed = replay(now, fresh, foreign);
  if (followed.ok)
    return readPiece(followed.value.document, foreign.piece, false).ok ? done(undefined) : cannotFollow();
  return cannotFollow();
}

function cannotFollow(): ReturnType<typeof refuse> {
  return refuse(
    'adopt.both-changed',
    'This piece was worked on in both records in ways that can’t be put one after the other. Nothing was brought in: bring the file in beside, as a piece of its own, and compare the two.',
    'piece',
  );
}

/** Places that both changed: the same, or one within the other. */
function clashes(ours: readonly RecordedEvent[], theirs: readonly RecordedEvent[]): string[] {
  const pathsOf = (events: readonly RecordedEvent[]) =>
    events.flatMap(({ changes }) => changes.map(({ path }) => path));
  const places = pathsOf(ours);
  const mine = new Set(places.map((path) => JSON.stringify(path)));
  const mineAndAround = new Set([...mine, ...places.flatMap(around)]);
  const found = pathsOf(theirs).filter(
    (path) => mineAndAround.has(JSON.stringify(path)) || around(path).some((one) => mine.has(one)),
  );
  return [...new Set(found.map((path) => path.join(' ') || 'all of it'))];
}

/** The places that a place lies in, from the whole piece inward. */
function around(path: readonly string[]): string[] {
  return path.map((_, within) => JSON.stringify(path.slice(0, within)));
}

/** A device whose chain went on in two records from one act: told, for one of them was brought back from a copy. */
function forkWords(
  fresh: readonly RecordedEvent[],
  standsAt: (device: string, seq: number) => RecordedEvent | undefined,
): string[] {
  const forked = new Set<string>();
  for (const act of fresh) {
    // Two chains that only begin alike are two devices of one name.
    if (act.before === chainStart.hash) continue;
    const here = standsAt(act.device, act.seq);
    if (here !== undefined && here.id !== act.id && here.before === act.before) forked.add(act.device);
  }
  return [...forked].map(
    (device) =>
      `The chain of “${device}” went on in two records from the same act: one of them was brought back from a copy while the other was worked on. The acts of both are kept here.`,
  );
}

function adopted(act: RecordedEvent, record: string): AdoptedAct {
  const { seq, before, hash } = act;
  return { ...draftOf(act), origin: act.origin ?? { record, seq, before, hash } };
}

function draftOf(act: RecordedEvent): DraftEvent {
  const { seq: _seq, before: _before, hash: _hash, origin: _origin, ...draft } = act;
  return draft;
}

/** What makes two acts the same: everything but what a record fills in. */
function actText(event: RecordedEvent): string {
  return canonicalJson({ ...draftOf(event), changes: whatIsSet(event.changes) });
}

function notAnAct(index: number): ReturnType<typeof refuse> {
  return refuse(
    'adopt.not-an-act',
    `Act ${index + 1} is none of this piece, or not one this program knows.`,
    `${index}`,
  );
}
