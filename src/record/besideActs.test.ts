import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { act, opening } from '../../test/kits/drafts.ts';
import type { Json, RecordedEvent } from '../piece/event.ts';
import { besideActs, besideId } from './besideActs.ts';
import { chainStart, hashEvent, linkEvent } from './chain.ts';

const sha256 = (text: string) => createHash('sha256').update(text).digest('hex');
const open = linkEvent(opening('one'), chainStart);
const origin = { record: 'theirs', seq: 1, before: '0'.repeat(64), hash: '1'.repeat(64) };
const withDocument = (to: Json | undefined): RecordedEvent => ({
  ...open,
  changes: [{ path: [], ...(to === undefined ? {} : { to }) }],
});

describe('a piece brought in beside one of its own name', () => {
  it('has a name from both names, the same each time, that fits', () => {
    expect(besideId('chair', 'theirs')).toBe(`chair-${sha256('theirs').slice(0, 8)}`);
    expect(besideId('chair', 'another')).not.toBe(besideId('chair', 'theirs'));
    expect(besideId('x'.repeat(80), 'theirs')).toBe(`${'x'.repeat(60)}-${sha256('theirs').slice(0, 8)}`);
  });

  it('has acts of its own, the same each time, that say its name and are sealed anew', () => {
    const undo = linkEvent(act('one', 'undo', [{ path: ['title'], to: 'A' }], { of: open.id }), open);
    const moved = besideActs([{ ...open, origin }, undo], 'two');
    const hex = sha256(`two ${open.id}`);
    // A UUID of version 8: the 13th digit is 8, the 17th one of 8, 9, a, b (RFC 9562).
    const id = `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
    expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-a[0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(moved[0]).toMatchObject({ id, piece: 'two', kind: 'piece-opened', who: open.who, at: open.at });
    expect(moved[0]).not.toHaveProperty('origin');
    expect(moved[0]).not.toHaveProperty('of');
    // What stood before it is what the act before it set: both say that they are of the one beside.
    expect(moved[1]).toMatchObject({
      of: id,
      changes: [{ path: ['title'], to: 'A (brought in beside)', from: 'A piece (brought in beside)' }],
    });
    for (const event of moved) expect(event.hash).toBe(hashEvent(event));
    expect(besideActs([open], 'two')).toEqual([moved[0]]);
    expect(besideActs([open], 'three')[0]?.id).not.toBe(id);
  });

  it('is called after the first one, with its new name wherever the piece says its own', () => {
    const document = (to: Json | undefined) => besideActs([withDocument(to)], 'two')[0]?.changes[0]?.to;
    expect(document({ id: 'one', title: 'A chair', form: 'x' })).toEqual({
      id: 'two',
      title: 'A chair (brought in beside)',
      form: 'x',
    });
    // A title that is no text is a fault of the file, kept for what reads it to tell.
    expect(document({ id: 'one', title: 5 })).toEqual({ id: 'two', title: 5 });
    for (const title of ['', undefined])
      expect(document({ id: 'one', ...(title === undefined ? {} : { title }) })).toEqual({
        id: 'two',
        title: 'A piece (brought in beside)',
      });
    for (const odd of [null, 'x', ['x']]) expect(document(odd)).toEqual(odd);
    expect(document(undefined)).toBeUndefined();
  });

  it('keeps a change of one place as it is', () => {
    const one = { ...open, changes: [{ path: ['parts'], to: { id: 'one' } }] };
    expect(besideActs([one], 'two')[0]?.changes).toEqual(one.changes);
  });
});
