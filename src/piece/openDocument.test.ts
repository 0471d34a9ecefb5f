import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Change, Json } from './event.ts';
import { foldEvents, invertChanges, openDocument, valueAt, withBefore } from './fold.ts';

/** The plain way, one whole copy for each change: what the quick way must agree with, to the order of fields. */
function copiedAnew(here: Json | undefined, path: readonly string[], to: Json | undefined): Json | undefined {
  const [key, ...rest] = path;
  if (key === undefined) return to;
  const record = typeof here === 'object' && here !== null && !Array.isArray(here) ? here : {};
  const inner = copiedAnew(Object.hasOwn(record, key) ? record[key] : undefined, rest, to);
  const kept = Object.entries(record).filter(([name]) => name !== key);
  return Object.fromEntries(inner === undefined ? kept : [...kept, [key, inner]]);
}

const key = fc.constantFrom('a', 'b', 'c', 'toString');
const value: fc.Arbitrary<Json> = fc.oneof(
  fc.constantFrom(0, 'x', null, true, [1]),
  fc.dictionary(key, fc.oneof(fc.constant(1), fc.dictionary(key, fc.constant(2)))),
);
const change: fc.Arbitrary<Change> = fc.record(
  { path: fc.array(key, { maxLength: 3 }), to: value },
  { requiredKeys: ['path'] },
);
const changes = fc.array(change, { maxLength: 12 });

/** Frozen through and through, so that a change of it throws. */
function frozen<Value>(one: Value): Value {
  if (typeof one === 'object' && one !== null) for (const inner of Object.values(one)) frozen(inner);
  return Object.freeze(one);
}

describe('a document that is open for many changes', () => {
  it('comes to what one whole copy for each change comes to, and changes nothing it was given', () => {
    fc.assert(
      fc.property(value, fc.array(changes, { maxLength: 4 }), (start, acts) => {
        const events = frozen(acts).map((one) => ({ changes: one }));
        const plain = acts
          .flat()
          .reduce<Json | undefined>((now, { path, to }) => copiedAnew(now, path, to), start);
        expect(JSON.stringify(foldEvents(frozen(start), events))).toBe(JSON.stringify(plain));
      }),
      { seed: 3, numRuns: 500 },
    );
  });

  it('never changes a document it has handed out', () => {
    fc.assert(
      fc.property(value, changes, (start, all) => {
        const open = openDocument(start);
        for (const one of all) {
          open.make(one);
          frozen(open.document());
        }
      }),
      { seed: 4, numRuns: 300 },
    );
  });

  it('says what stood before each change, so that taking back comes to what was there', () => {
    fc.assert(
      fc.property(fc.dictionary(key, value), changes, (start, all) => {
        const told = withBefore(start, all);
        let now: Json | undefined = start;
        for (const [index, { path, to }] of all.entries()) {
          expect(told[index]?.from).toEqual(valueAt(now, path));
          now = copiedAnew(now, path, to);
        }
        const whole = all.filter(({ path }) => path.length === 1);
        const there = foldEvents(start, [{ changes: whole }]);
        expect(foldEvents(there, [{ changes: invertChanges(withBefore(start, whole)) }])).toEqual(start);
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('copies what 20,000 acts change, not the piece for each of them', () => {
    const finding = (n: number): Change => ({
      path: ['findings', `sign-${n % 5000}@top`],
      to: { id: `sign-${n % 5000}@top`, state: 'present' },
    });
    const work = { fields: 0 };
    const open = openDocument({ id: 'p', findings: {} }, (fields) => {
      work.fields += fields;
    });
    for (let n = 0; n < 20_000; n++) open.make(finding(n));
    expect(Object.keys(valueAt(open.document(), ['findings']) as object)).toHaveLength(5000);
    expect(work.fields).toBeLessThan(10);
  });
});
