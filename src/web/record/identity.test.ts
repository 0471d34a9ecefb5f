import { describe, expect, test } from 'vitest';
import { draftEvent } from '../../piece/event.ts';
import { freshId, momentWithZone } from './identity.ts';

describe('the moment as kept', () => {
  test('carries the zone of the device and stays the same instant', () => {
    const moment = new Date('2026-11-25T23:30:00.000Z');
    expect(momentWithZone(moment, 60)).toBe('2026-11-26T00:30:00.000+01:00');
    expect(momentWithZone(moment, -210)).toBe('2026-11-25T20:00:00.000-03:30');
    for (const offset of [-720, -210, 0, 330, 840]) {
      expect(new Date(momentWithZone(moment, offset)).getTime()).toBe(moment.getTime());
      expect(draftEvent.shape.at.safeParse(momentWithZone(moment, offset)).success).toBe(true);
    }
  });
});

test('an id is one the record takes', () => {
  expect(draftEvent.shape.id.safeParse(freshId()).success).toBe(true);
});
