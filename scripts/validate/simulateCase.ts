import { blunting } from '../../src/evidence/bluntedDraw.ts';
import type { CaseToWeigh } from '../../src/evidence/caseToWeigh.ts';
import { bestDraw, type Draw } from '../../src/evidence/figures.ts';
import { prepareCase } from '../../src/evidence/prepareCase.ts';
import type { Look } from '../../src/evidence/preparedCase.ts';
import { type Random, seededRandom } from '../../src/ground/seededRandom.ts';
import { askedOf } from '../../src/knowledge/askedOf.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import type { ReadingId } from '../../src/piece/readings.ts';
import { posteriorFor } from '../../src/summation/evaluate.ts';
import { layOut } from '../../src/summation/makeLayout.ts';
import { fixModel } from '../../src/summation/model.ts';
import { type Posterior, shares } from '../../src/summation/readingPosterior.ts';

/** A case drawn from the model, with how probable each reading is of it under the figures it was drawn with. */
export type SimulatedCase = { input: CaseToWeigh; readings: Record<ReadingId, number> };

/**
 * Draws a case from the model with given figures: which signs are looked for is drawn evenly, what is found one after another from what
 * the findings before make probable. How probable each reading then is under the figures it was drawn with is what share of
 * such cases it is true of, whatever figures they are then weighed with; no truth is drawn, which would only add chance.
 */
export function simulateCase(
  knowledge: Knowledge,
  form: string,
  count: number,
  seed: number,
  draw: Draw,
): SimulatedCase {
  const random = seededRandom(seed);
  const asked = placesOf(knowledge, form, count, random);
  const ready = prepareCase(
    { form, mode: 'in-hand', findings: asked.map((place) => ({ ...place, state: 'present' as const })) },
    knowledge,
    2026,
  );
  if (!ready.ok) throw new Error('a simulated case was refused');
  const model = fixModel(layOut(ready.prepared), draw);
  const found: Look[] = [];
  const total = (looks: readonly Look[]): Posterior =>
    posteriorFor(fixModel(model.layout, draw, looks), looks);
  let before = total(found);
  // Drawn as so many witnesses as there are parts, which is more than what is found alike is then counted for.
  for (const { alike: _, ...look } of ready.prepared.looks) {
    const seen = total([...found, look]);
    const probability = (seen.total / before.total) * Math.exp(seen.log - before.log);
    found.push({ ...look, state: random() < probability ? 'present' : 'absent' });
    before = total(found);
  }
  return {
    input: {
      form,
      mode: 'in-hand',
      findings: found.map(({ sign, part, state }) => ({
        sign: sign.id,
        ...(part === 'whole' ? {} : { part }),
        state,
      })),
    },
    readings: shares(before),
  };
}

function placesOf(knowledge: Knowledge, id: string, count: number, random: Random) {
  const form = knowledge.forms[id];
  if (form === undefined) throw new Error(`no form ${id}`);
  const places = Object.values(knowledge.signs).flatMap((sign) => [
    ...(askedOf(sign, 'whole', form) ? [{ sign: sign.id }] : []),
    ...form.parts
      .filter((part) => Object.keys(part.when).length === 0 && askedOf(sign, part.kind, form))
      .map((part) => ({ sign: sign.id, part: part.id })),
  ]);
  return Array.from({ length: Math.min(count, places.length) }, () =>
    places.splice(Math.floor(random() * places.length), 1),
  ).flat();
}

/** The best figures, but every sign speaks less sharply: each of its figures half its range nearer to the mean of its row. */
export function blunterDraw(knowledge: Knowledge): Draw {
  return blunting(Object.values(knowledge.signs))(bestDraw(), 1);
}
