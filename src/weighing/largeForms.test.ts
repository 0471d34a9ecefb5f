import { beforeAll, describe, expect, it } from 'vitest';
import { houseKnowledge } from '../../test/kits/houseKnowledge.ts';
import { bestDraw } from '../evidence/figures.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import type { PreparedCase } from '../evidence/preparedCase.ts';
import { seededRandom } from '../ground/seededRandom.ts';
import { askedOf } from '../knowledge/askedOf.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { evaluate } from '../summation/evaluate.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { shares } from '../summation/readingPosterior.ts';
import { partPosterior } from './partPosterior.ts';

let knowledge: Knowledge;
beforeAll(async () => {
  knowledge = await houseKnowledge();
}, 60_000);

/** A piece of the form with three findings, drawn with a seed, on every part that the form can have. */
function fullCase(id: string): PreparedCase {
  const form = knowledge.forms[id];
  if (form === undefined) throw new Error(`no form ${id}`);
  const random = seededRandom(5);
  const findings = form.parts.flatMap((part) => {
    const signs = Object.values(knowledge.signs).filter(
      (sign) => askedOf(sign, part.kind, form) && !sign.hangsOn.startsWith('alteration/'),
    );
    return Array.from({ length: Math.min(3, signs.length) }, () => {
      const [sign] = signs.splice(Math.floor(random() * signs.length), 1);
      const state = random() < 0.4 ? ('present' as const) : ('absent' as const);
      return { sign: sign?.id ?? '', part: part.id, state };
    });
  });
  const ready = prepareCase({ form: id, mode: 'in-hand', findings }, knowledge, 2026);
  if (!ready.ok) throw new Error('the case was refused');
  return ready.prepared;
}

// Parts that one chain of alterations binds together cost twice as much with every further part.
describe('a large form with findings on all its parts', () => {
  it('binds no more than 13 parts together by its alterations, whatever the form', () => {
    for (const id of Object.keys(knowledge.forms)) {
      const { cliques } = layOut(fullCase(id));
      expect(Math.max(...cliques.map((clique) => clique.parts.length)), id).toBeLessThanOrEqual(13);
    }
  });

  it.each(['desk-and-bookcase', 'high-chest', 'chest-on-chest'])(
    'is summed whole for a %s (bench/weighTimes.ts takes its time)',
    (id) => {
      const prepared = fullCase(id);
      expect(prepared.parts.length).toBeGreaterThan(30);
      const evaluation = evaluate(fixModel(layOut(prepared), bestDraw()));
      const total = Object.values(shares(evaluation.posterior)).reduce((sum, each) => sum + each, 0);
      expect(total).toBeCloseTo(1, 12);
      for (const part of prepared.parts) {
        const { origin } = partPosterior(evaluation, part);
        expect(Object.values(origin).reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 12);
      }
    },
  );
});
