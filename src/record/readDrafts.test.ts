import { describe, expect, it } from 'vitest';
import { act, opening } from '../../test/kits/drafts.ts';
import { pieceIdPattern, readDrafts } from './readDrafts.ts';

const faultsOf = (events: unknown) => {
  const read = readDrafts(events);
  return read.ok ? [] : read.faults;
};
const nested = (depth: number): unknown => (depth === 0 ? 1 : { a: nested(depth - 1) });
const titled = (to: never) => [act('one', 'piece-described', [{ path: ['title'], to }])];

describe('acts as a device hands them in', () => {
  it('are read, with what may be left out filled in', () => {
    const { who: _who, ...draft } = opening('one');
    expect(readDrafts([draft])).toEqual({ ok: true, value: [{ ...draft, who: '' }] });
  });

  it.each([[undefined], [null], ['events'], [{}], [[]]])('%j is nothing to record', (events) => {
    expect(faultsOf(events)).toEqual([
      {
        code: 'record.no-events',
        path: 'events',
        message: 'There is nothing to record: hand in a list "events".',
      },
    ]);
  });

  it('come in batches of a thousand at most', () => {
    const many = (count: number) => Array.from({ length: count }, () => opening('one'));
    expect(faultsOf(many(1000))).toEqual([]);
    expect(faultsOf(many(1001))).toEqual([
      { code: 'record.too-many-events', path: 'events', message: 'Hand in at most 1000 acts at once.' },
    ]);
  });

  it('have each fault named with its place', () => {
    const faults = faultsOf([opening('one'), { ...opening('one'), id: 'x', who: 5 }]);
    expect(faults.map(({ code, path }) => [code, path])).toEqual([
      ['record.not-an-event', 'events.1.id'],
      ['record.not-an-event', 'events.1.who'],
    ]);
    for (const { message } of faults) expect(message).toMatch(/^\S.*[^.]\.$/);
  });

  it('may nest as deep as any document of ours does, and no deeper', () => {
    // The list, the act, its changes and the change stand above the value: it nests twenty-one levels more.
    expect(faultsOf(titled(nested(21) as never))).toEqual([]);
    expect(faultsOf(titled(nested(22) as never))).toEqual([
      {
        code: 'record.too-deep',
        path: '',
        message: 'This nests deeper than any record does: nothing was written.',
      },
    ]);
  });

  it.each(['__proto__', 'prototype', 'constructor'])(
    'may not use the name %s, as a key or within a path',
    (key) => {
      const message = `Nothing in a record may be called "${key}": nothing was written.`;
      const value = JSON.parse(`{"a":{"${key}":1}}`) as never;
      expect(faultsOf(titled(value))).toEqual([{ code: 'record.forbidden-key', path: '', message }]);
      const path = [act('one', 'piece-described', [{ path: ['findings', key], to: 1 }])];
      expect(faultsOf(path)).toEqual([{ code: 'record.forbidden-key', path: '', message }]);
      // As a text it is only a word; and nothing at all is no key.
      expect(faultsOf(titled(null as never))).toEqual([]);
      expect(faultsOf(titled(key as never))).toEqual([]);
    },
  );

  it('name a piece and a device soberly', () => {
    const bad = {
      code: 'record.bad-id',
      message: 'A piece and a device are named with letters, digits and hyphens.',
    };
    expect(faultsOf([opening('one'), opening('one/two')])).toEqual([{ ...bad, path: 'events.1' }]);
    expect(faultsOf([opening('one', { device: 'a\nb' })])).toEqual([{ ...bad, path: 'events.0' }]);
    expect(faultsOf([opening('one', { device: 'Ännchens Täfelchen 2' })])).toEqual([]);
    expect(faultsOf([opening('one', { device: '' })])).toEqual([{ ...bad, path: 'events.0' }]);
    expect(['a', 'A-1_b', 'x'.repeat(80)].every((id) => pieceIdPattern.test(id))).toBe(true);
    expect(
      ['', '-a', '_a', 'a b', 'a.b', 'x'.repeat(81), 'a\n', 'ä'].some((id) => pieceIdPattern.test(id)),
    ).toBe(false);
  });
});
