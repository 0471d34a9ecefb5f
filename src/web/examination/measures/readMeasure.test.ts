import { describe, expect, it } from 'vitest';
import { measureAct, readMeasure } from './readMeasure.ts';

const seatHeight = { lowMm: 380, highMm: 500 };

describe('reading a measure', () => {
  // 37 1/8 in × 25.4 mm = 942.975 mm; the inch is 25.4 mm exactly (NIST SP 811, appendix B).
  it.each(['37⅛"', '37 1/8', '3 ft 1 1/8 in', '37-1/8"'])('reads %s and echoes both units', (text) => {
    const entry = readMeasure(text, undefined);
    expect(entry.kind === 'length' && Math.abs(entry.mm - 942.975) < 1e-9).toBe(true);
    expect(entry.kind === 'length' && entry.echo).toBe('37 1/8 in (943 mm)');
  });

  it('asks about a doubtful length and takes it all the same', () => {
    const entry = readMeasure('4 in', seatHeight);
    expect(entry).toMatchObject({ kind: 'length', doubt: expect.stringContaining('less than is usual') });
    expect(measureAct('seat-height', '4 in', undefined)?.kind).toBe('measure-recorded');
    expect(readMeasure('17 in', seatHeight)).toMatchObject({ doubt: undefined });
  });

  it('leaves what stood there when the entry can’t be read', () => {
    const before = { id: 'seat-height', mm: 430, asEntered: '430 mm', words: '' };
    expect(readMeasure('about so', seatHeight).kind).toBe('unreadable');
    expect(measureAct('seat-height', 'about so', before)).toBeUndefined();
    expect(measureAct('seat-height', '430 mm', before)).toBeUndefined();
    expect(measureAct('seat-height', ' ', before)?.kind).toBe('measure-withdrawn');
  });
});
