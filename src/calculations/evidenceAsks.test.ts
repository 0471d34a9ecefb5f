import { beforeAll, describe, expect, it } from 'vitest';
import { houseKnowledge } from '../../test/kits/houseKnowledge.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { evidenceWeigh } from './evidence.ts';
import { evidenceAsks } from './evidenceAsks.ts';
import { outputOf } from './testing/outputOf.ts';

let knowledge: Knowledge;
beforeAll(async () => {
  knowledge = await houseKnowledge();
}, 60_000);

const asksFor = (form: string, findings: unknown[] = []) =>
  outputOf(evidenceAsks, { form, findings }, { knowledge, yearNow: 2026 });

describe('what to ask the owner of a piece for', () => {
  it.each(['side-chair', 'high-chest', 'tilt-top-table'])('asks for each sign of a %s once', (form) => {
    const asked = asksFor(form);
    const keys = asked.asks.flatMap((ask) => ask.shows.map(({ sign, part }) => `${sign}@${part}`));
    expect(keys.length).toBeGreaterThan(20);
    expect(new Set(keys).size).toBe(keys.length);
    for (const ask of asked.asks)
      for (const { sign } of ask.shows) expect(knowledge.signs[sign]?.inPhoto).not.toBe('no');
    for (const { sign } of asked.onlyInHand) expect(knowledge.signs[sign]?.inPhoto).toBe('no');
  });

  it('asks for a drawer of a chest and for no seat, and for the seat of a chair and no drawer', () => {
    const ids = (form: string) => asksFor(form).asks.map((ask) => ask.id);
    expect(ids('chest-of-drawers')).toContain('drawer-out');
    expect(ids('chest-of-drawers')).not.toContain('seat-out');
    expect(ids('side-chair')).toContain('seat-out');
    expect(ids('side-chair')).not.toContain('drawer-out');
  });

  it('no longer asks for what has been answered', () => {
    const before = asksFor('side-chair').asks.flatMap((ask) => ask.shows);
    const told = before.find(({ part }) => part !== null) ?? before[0];
    const after = asksFor('side-chair', [
      { sign: told?.sign, ...(told?.part === null ? {} : { part: told?.part }), state: 'present' },
    ]).asks.flatMap((ask) => ask.shows);
    expect(after.some(({ sign, part }) => sign === told?.sign && part === told?.part)).toBe(false);
  });
});

it('asks no more of a drawer than to pull it out, where the sign would have the piece turned over', () => {
  const { nextLooks } = outputOf(
    evidenceWeigh,
    { form: 'chest-of-drawers', findings: [], draws: 0, limits: { mayNot: ['turned-over'] } },
    { knowledge, yearNow: 2026 },
  );
  expect(nextLooks.some(({ part, needs }) => part === 'drawer-1' && needs === 'pulled-out')).toBe(true);
  expect(nextLooks.some(({ needs }) => needs === 'turned-over')).toBe(false);
});
