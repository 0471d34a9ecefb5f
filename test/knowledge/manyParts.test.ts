import { beforeAll, describe, expect, it } from 'vitest';
import { bestDraw } from '../../src/evidence/figures.ts';
import { prepareCase } from '../../src/evidence/prepareCase.ts';
import { askedOf } from '../../src/knowledge/askedOf.ts';
import type { Knowledge, Sign } from '../../src/knowledge/schema.ts';
import { posteriorFor } from '../../src/summation/evaluate.ts';
import { layOut } from '../../src/summation/makeLayout.ts';
import { fixModel } from '../../src/summation/model.ts';
import { shares } from '../../src/summation/readingPosterior.ts';
import { makingShares } from '../../src/weighing/makingFirst.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';

let knowledge: Knowledge;
beforeAll(async () => {
  knowledge = await houseKnowledge();
}, 60_000);

/** The form that has the most parts a sign is asked of, and these. */
function mostParts(sign: Sign): { form: string; parts: string[] } {
  const all = Object.values(knowledge.forms).map((form) => ({
    form: form.id,
    parts: form.parts.filter((part) => askedOf(sign, part.kind, form)).map(({ id }) => id),
  }));
  return all.reduce((most, each) => (each.parts.length > most.parts.length ? each : most), {
    form: '',
    parts: [],
  });
}

/** Decibans for a period piece against a later one when a sign was found alike on some parts of a form. */
function against(form: string, sign: string, parts: readonly string[], state: 'present' | 'absent'): number {
  const findings = parts.map((part) => ({ sign, part, state }));
  const ready = prepareCase({ form, mode: 'in-hand', findings }, knowledge, 2026);
  if (!ready.ok) throw new Error(`${form} was refused`);
  const made = makingShares(shares(posteriorFor(fixModel(layOut(ready.prepared), bestDraw()))));
  return 10 * Math.log10(made['of-the-period'] / (made['later-copy'] + made['to-deceive']));
}

// What is done to a piece at one time shows on many of its parts: the sixth part tells little that the fourth did not.
// Review of the model, section A: white glue in six joints took a sound period chair to 0.10, planer ripple on ten parts −100 dB.
describe('one event is one witness, on however many parts it shows', () => {
  it.each(['present', 'absent'] as const)(
    'levels off for every sign that is %s',
    (state) => {
      const steep: string[] = [];
      let tried = 0;
      for (const sign of Object.values(knowledge.signs)) {
        const { form, parts } = mostParts(sign);
        if (parts.length < 6) continue;
        tried++;
        const curve = [0, 1, 4, 6].map((count) => against(form, sign.id, parts.slice(0, count), state));
        const by = (at: number) => Math.abs((curve[at] ?? 0) - (curve[0] ?? 0));
        // By six parts at most 25 decibans, or twice what a single one weighs; and under 3 for each of the last two.
        if (by(3) > Math.max(25, 2 * by(1)) || (by(3) - by(2)) / 2 > 3)
          steep.push(`${sign.id} on a ${form}: ${curve.map((each) => each.toFixed(1)).join(' ')}`);
      }
      expect(tried).toBeGreaterThan(100);
      expect(steep).toEqual([]);
    },
    60_000,
  );

  it('leaves a side chair with seven old signs more probably of the period, though six joints hold modern glue', () => {
    const old = [
      { sign: 'bare-wood-darkened', part: 'back-rail' },
      { sign: 'bare-wood-darkened', part: 'front-rail' },
      { sign: 'mortises-chopped-square', part: 'rear-post-left' },
      { sign: 'jack-plane-tracks', part: 'side-rail-left' },
      { sign: 'jack-plane-tracks', part: 'front-rail' },
      { sign: 'patina-in-recesses', part: 'crest-rail' },
      { sign: 'crack-dirty-and-old', part: 'rear-post-right' },
    ].map((each) => ({ ...each, state: 'present' as const }));
    const form = knowledge.forms['side-chair'];
    const glued = (form?.parts ?? [])
      .filter((part) => askedOf(knowledge.signs['glue-white-or-yellow'] as never, part.kind, form as never))
      .slice(0, 6)
      .map(({ id }) => ({ sign: 'glue-white-or-yellow', part: id, state: 'present' as const }));
    expect(glued).toHaveLength(6);
    const ready = prepareCase(
      { form: 'side-chair', mode: 'in-hand', findings: [...old, ...glued] },
      knowledge,
      2026,
    );
    if (!ready.ok) throw new Error('the case was refused');
    expect(ready.prepared.ignored).toEqual([]);
    const made = makingShares(shares(posteriorFor(fixModel(layOut(ready.prepared), bestDraw()))));
    expect(made['of-the-period']).toBeGreaterThan(0.8);
  });
});
