import { describe, expect, it } from 'vitest';
import { askedOf } from '../../src/knowledge/askedOf.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';

const knowledge = await houseKnowledge();
const { alterations, forms } = knowledge;
const signs = Object.values(knowledge.signs);

describe.each(Object.values(forms))('the signs of the form $id', (form) => {
  const kinds = [...new Set(form.parts.map((part) => part.kind))];

  it('reach every part of it', () => {
    const silent = kinds.filter((kind) => !signs.some((sign) => askedOf(sign, kind, form)));
    expect(silent).toEqual([]);
  });

  it('can tell of every alteration it is prone to, by what hangs on it or on the origin of what it changes', () => {
    const untold = form.alterations.filter((id) => {
      const changed = Object.keys(alterations[id]?.changes ?? {});
      const onIt = ['whole', ...kinds].some((kind) =>
        signs.some((sign) => sign.hangsOn === `alteration/${id}` && askedOf(sign, kind, form)),
      );
      const onItsParts = kinds.some(
        (kind) =>
          changed.includes(kind) &&
          signs.some(
            (sign) =>
              (sign.hangsOn === 'origin' || sign.hangsOn === 'part-year') && askedOf(sign, kind, form),
          ),
      );
      return !onIt && !onItsParts;
    });
    expect(untold).toEqual([]);
  });

  it('speak of making, tools, age, use, years and origin', () => {
    const asked = signs.filter((sign) => ['whole', ...kinds].some((kind) => askedOf(sign, kind, form)));
    const causes = new Set(asked.map((sign) => sign.hangsOn));
    for (const cause of ['making', 'tooling', 'ageing', 'use', 'part-year', 'origin'] as const)
      expect(causes).toContain(cause);
  });
});
