import { describe, expect, it } from 'vitest';
import { act, opening } from '../../test/kits/drafts.ts';
import type { Change, DraftEvent, EventKind, RecordedEvent } from '../piece/event.ts';
import { isSignature } from '../piece/undo.ts';
import { afterEvent, newState, type PieceState, stateAfterAll, stepsFrom } from './pieceState.ts';

const recorded = (draft: DraftEvent, hour = 10): RecordedEvent => ({
  ...draft,
  at: `2026-11-25T${hour}:00:00.000+01:00`,
  seq: 1,
  before: '0'.repeat(64),
  hash: '0'.repeat(64),
});
const titled = (to: string) => act('one', 'piece-described', [{ path: ['title'], to }]);
const signing = act('one', 'opinion-signed', [{ path: ['opinion', 'status'], to: 'signed' }]);
const cameTo = (...events: RecordedEvent[]) =>
  stateAfterAll(events.map((event, index) => ({ event, position: 10 + index })));
const ids = (events: readonly RecordedEvent[]) => events.map(({ id }) => id);

describe('what a piece comes to', () => {
  it('is nothing before its opening, or the document of an example', () => {
    const empty: PieceState = newState();
    expect(empty).toEqual({
      document: undefined,
      position: 0,
      done: [],
      undone: [],
      overwritten: [],
      count: 0,
      stopsAt: 'opening',
      firstAt: undefined,
      lastAt: undefined,
    });
    expect(newState({ title: 'Ours' }).document).toEqual({ title: 'Ours' });
  });

  it('counts acts, with the time of the first and the last and the place of the last', () => {
    const state = cameTo(recorded(opening('one'), 8), recorded(titled('A'), 9), recorded(titled('B'), 11));
    expect(state).toMatchObject({ count: 3, position: 12, document: { title: 'B' } });
    expect(state.firstAt).toContain('T8:');
    expect(state.lastAt).toContain('T11:');
  });

  it('never has its opening undone, and every act since, the last first', () => {
    const [a, b] = [recorded(titled('A')), recorded(titled('B'))];
    expect(ids(cameTo(recorded(opening('one')), a, b).done)).toEqual([a.id, b.id]);
    expect(cameTo(recorded(opening('one'))).done).toEqual([]);
  });

  it('moves an act over by an undo and back by a redo, and forgets it with the next act', () => {
    const [a, b, c] = [recorded(titled('A')), recorded(titled('B')), recorded(titled('C'))];
    const undo = recorded(act('one', 'undo', [{ path: ['title'], to: 'A' }], { of: b.id }));
    const redo = recorded(act('one', 'redo', [{ path: ['title'], to: 'B' }], { of: b.id }));
    const undone = cameTo(recorded(opening('one')), a, b, undo);
    expect([ids(undone.done), ids(undone.undone), undone.document]).toMatchObject([
      [a.id],
      [b.id],
      { title: 'A' },
    ]);
    const redone = afterEvent(undone, redo, 20);
    expect([ids(redone.done), ids(redone.undone), redone.document]).toMatchObject([
      [a.id, b.id],
      [],
      { title: 'B' },
    ]);
    const onward = afterEvent(undone, c, 20);
    expect([ids(onward.done), ids(onward.undone)]).toEqual([[a.id, c.id], []]);
    // Nothing to take back: nothing moves.
    expect(cameTo(recorded(opening('one')), undo)).toMatchObject({ done: [], undone: [] });
    // What came before is left as it was.
    expect(ids(undone.undone)).toEqual([b.id]);
  });

  it('stops an undo at a signature, with all before it', () => {
    const [a, b] = [recorded(titled('A')), recorded(titled('B'))];
    const undo = recorded(act('one', 'undo', [{ path: ['title'], to: 'A chair' }], { of: a.id }));
    const signed = cameTo(recorded(opening('one')), a, undo, recorded(signing));
    expect(signed).toMatchObject({ done: [], undone: [], stopsAt: 'signature' });
    expect(ids(afterEvent(signed, b, 20).done)).toEqual([b.id]);
    expect(cameTo(recorded(opening('one')), a).stopsAt).toBe('opening');
  });

  it('keeps what was written over unseen until it is settled, and the state handed out is not changed by what follows', () => {
    const over = recorded(
      act('one', 'piece-described', [{ path: ['title'], from: 'A chair', to: 'B', saw: {} }]),
    );
    const steps = stepsFrom(cameTo(recorded(opening('one'))));
    expect(steps.at(['title'])).toBe('A chair');
    expect(steps.make(over.changes)).toMatchObject([{ path: ['title'], to: 'B', from: 'A chair' }]);
    steps.count(over, 11);
    const state = steps.state();
    expect(state.overwritten).toMatchObject([{ act: over.id, earlier: 'A chair', later: 'B' }]);
    const next = recorded(titled('C'));
    steps.make(next.changes);
    steps.count(next, 12);
    expect([ids(state.done), state.document]).toMatchObject([[over.id], { title: 'B' }]);
    const undo = recorded(act('one', 'undo', [{ path: ['title'], to: 'A chair' }], { of: over.id }));
    expect(afterEvent(state, undo, 12).overwritten).toMatchObject([{ isTakenBack: true }]);
    expect(ids(state.undone)).toEqual([]);
  });
});

describe('a signature', () => {
  const is = (kind: EventKind, path: string[], to: Change['to']) =>
    isSignature({ kind, changes: [{ path, ...(to === undefined ? {} : { to }) }] });

  it('is an issued opinion, or the old act that set the status to signed', () => {
    expect(is('opinion-issued', ['issued', '1'], {})).toBe(true);
    expect(is('opinion-signed', ['opinion', 'status'], 'signed')).toBe(true);
    expect(is('opinion-signed', ['opinion', 'status'], 'draft')).toBe(false);
    expect(is('opinion-signed', ['opinion', 'words'], 'signed')).toBe(false);
    expect(is('opinion-changed', ['opinion', 'status'], 'signed')).toBe(false);
  });

  it('is found among several changes', () => {
    const changes = [
      { path: ['opinion', 'place'], to: 'x' },
      { path: ['opinion', 'status'], to: 'signed' },
    ];
    expect(isSignature({ kind: 'opinion-signed', changes })).toBe(true);
  });
});
