import { describe, expect, it } from 'vitest';
import { applyChange, foldEvents, invertChanges, openDocument, valueAt, withBefore } from './fold.ts';

const before = { title: 'A chair', findings: { a: { state: 'present' } } };

describe('a change', () => {
  it('sets one place and leaves the rest and its arguments alone', () => {
    const frozen = structuredClone(before);
    expect(applyChange(before, { path: ['findings', 'a', 'state'], to: 'absent' })).toEqual({
      title: 'A chair',
      findings: { a: { state: 'absent' } },
    });
    expect(before).toEqual(frozen);
  });

  it('makes what its path goes through, also where a text or a list stood', () => {
    expect(applyChange(undefined, { path: ['a', 'b'], to: 1 })).toEqual({ a: { b: 1 } });
    expect(applyChange({ a: 'text' }, { path: ['a', 'b'], to: 1 })).toEqual({ a: { b: 1 } });
    expect(applyChange({ a: [1, 2] }, { path: ['a', 'b'], to: 1 })).toEqual({ a: { b: 1 } });
    expect(applyChange({ a: null }, { path: ['a', 'b'], to: 1 })).toEqual({ a: { b: 1 } });
  });

  it('takes a place out when it sets it to nothing, and puts it last when it sets it anew', () => {
    const after = applyChange(before, { path: ['title'] });
    expect(after).toEqual({ findings: before.findings });
    expect(Object.keys(after as object)).toEqual(['findings']);
    expect(Object.keys(applyChange(before, { path: ['title'], to: 'B' }) as object)).toEqual([
      'findings',
      'title',
    ]);
  });

  it('of no path is the whole, and a name of the language is a name like any other', () => {
    expect(applyChange(before, { path: [], to: 5 })).toBe(5);
    const odd = applyChange({}, { path: ['__proto__', 'x'], to: 1 }) as object;
    expect(Object.hasOwn(odd, '__proto__')).toBe(true);
    expect(({} as { x?: number }).x).toBeUndefined();
  });
});

describe('a place', () => {
  it('is read as it stands, and is nothing where nothing stands', () => {
    expect(valueAt(before, ['findings', 'a', 'state'])).toBe('present');
    expect(valueAt(before, [])).toBe(before);
    expect(valueAt(before, ['findings', 'b', 'state'])).toBeUndefined();
    expect(valueAt(before, ['title', 'length'])).toBeUndefined();
    expect(valueAt({ a: [1] }, ['a', '0'])).toBeUndefined();
    expect(valueAt({ a: null }, ['a', 'b'])).toBeUndefined();
    expect(valueAt(before, ['toString'])).toBeUndefined();
    expect(valueAt(undefined, ['a'])).toBeUndefined();
  });
});

describe('a document on its way', () => {
  it('tells what stands at a place now', () => {
    const open = openDocument(before);
    expect(open.at(['title'])).toBe('A chair');
    open.make({ path: ['title'], to: 'B' });
    expect(open.at(['title'])).toBe('B');
  });

  it('has fields like any other object’s', () => {
    const after = applyChange(before, { path: ['title'], to: 'B' });
    expect(Object.getOwnPropertyDescriptor(after, 'title')).toEqual(
      Object.getOwnPropertyDescriptor({ title: 'B' }, 'title'),
    );
  });
});

describe('several changes', () => {
  const changes = [
    { path: ['title'], to: 'B' },
    { path: ['title'], to: 'C', from: 'a lie' },
    { path: ['mode'], to: 'in-hand' },
    { path: ['findings', 'a'] },
  ];

  it('say what stood there before each of them', () => {
    expect(withBefore(before, changes)).toStrictEqual([
      { path: ['title'], to: 'B', from: 'A chair' },
      { path: ['title'], to: 'C', from: 'B' },
      { path: ['mode'], to: 'in-hand' },
      { path: ['findings', 'a'], to: undefined, from: { state: 'present' } },
    ]);
  });

  it('keep what the device showed there', () => {
    const saw = { value: 'An older title' };
    expect(withBefore(before, [{ path: ['title'], to: 'B', saw }])).toStrictEqual([
      { path: ['title'], to: 'B', from: 'A chair', saw },
    ]);
  });

  it('are taken back, last first, to what stood before', () => {
    const told = withBefore(before, changes);
    const after = foldEvents(before, [{ changes: told.slice(0, 2) }, { changes: told.slice(2) }]);
    expect(after).toEqual({ findings: {}, title: 'C', mode: 'in-hand' });
    const back = invertChanges(told);
    expect(back[0]).toEqual({ path: ['findings', 'a'], to: { state: 'present' }, from: undefined });
    expect(foldEvents(after, [{ changes: back }])).toEqual(before);
  });
});
