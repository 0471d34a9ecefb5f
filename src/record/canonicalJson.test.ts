import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson } from './canonicalJson.ts';

describe('canonical JSON', () => {
  // RFC 8785, section 3.2.2 and 3.2.3: the example of sorted keys and of number forms, without its control characters.
  it('writes the example of RFC 8785', () => {
    const input = JSON.parse(
      '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"literals":[null,true,false]}',
    );
    expect(canonicalJson(input)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27]}',
    );
    const keys = { '€': 1, '\r': 2, '1': 4, '😂': 5, ö: 6 };
    expect(canonicalJson(keys)).toBe('{"\\r":2,"1":4,"ö":6,"€":1,"😂":5}');
  });

  it('leaves out what stands for nothing', () => {
    expect(canonicalJson({ a: undefined, b: [undefined, 1] })).toBe('{"b":[null,1]}');
  });

  it('is the same whatever the order of keys, and reads back as the same value', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const turned = JSON.parse(JSON.stringify(value), (_key, inner) =>
          typeof inner === 'object' && inner !== null && !Array.isArray(inner)
            ? Object.fromEntries(Object.entries(inner).toReversed())
            : inner,
        );
        expect(canonicalJson(turned)).toBe(canonicalJson(value));
        expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
      { seed: 20261125, numRuns: 300 },
    );
  });
});
