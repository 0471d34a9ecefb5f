import { describe, expect, it } from 'vitest';
import { standsApart } from './yearSpans.ts';

describe('the spans of years', () => {
  it('says where a part’s years and the piece’s have nothing in common', () => {
    expect(standsApart({ p90: [1740, 1790] }, { p90: [1860, 1900] })).toBe('later than the piece');
    expect(standsApart({ p90: [1860, 1900] }, { p90: [1740, 1790] })).toBe('older than the piece');
    expect(standsApart({ p90: [1740, 1790] }, { p90: [1780, 1900] })).toBeUndefined();
  });
});
