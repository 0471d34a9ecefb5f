import { beforeAll, describe, expect, it } from 'vitest';
import { bestDraw } from '../../src/evidence/figures.ts';
import { prepareCase } from '../../src/evidence/prepareCase.ts';
import { askedOf } from '../../src/knowledge/askedOf.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { posteriorFor } from '../../src/summation/evaluate.ts';
import { layOut } from '../../src/summation/makeLayout.ts';
import { fixModel } from '../../src/summation/model.ts';
import { shares } from '../../src/summation/readingPosterior.ts';
import { makingShares } from '../../src/weighing/makingFirst.ts';
import { houseKnowledge } from '../kits/opinions.ts';

let knowledge: Knowledge;
beforeAll(async () => {
  knowledge = await houseKnowledge();
}, 60_000);

/** Decibans for a period piece against a later one when a sign was seen on so many parts of the form. */
function against(form: string, sign: string, count: number): number {
  const ofForm = knowledge.forms[form];
  const mark = knowledge.signs[sign];
  if (ofForm === undefined || mark === undefined) throw new Error(`no ${form} or ${sign}`);
  const parts = ofForm.parts.filter((part) => askedOf(mark, part.kind, ofForm)).slice(0, count);
  const findings = parts.map(({ id }) => ({ sign, part: id, state: 'present' as const }));
  const ready = prepareCase({ form, mode: 'in-hand', findings }, knowledge, 2026);
  if (!ready.ok || parts.length < count) throw new Error(`${form} has too few parts for ${sign}`);
  const posterior = posteriorFor(fixModel(layOut(ready.prepared), bestDraw()));
  const made = makingShares(shares(posterior));
  return 10 * Math.log10(made['of-the-period'] / (made['later-copy'] + made['to-deceive']));
}

// What is done to a piece at one time shows on many of its parts: the tenth part tells little that the fourth did not.
// Review of the model, section A: white glue in six joints took a sound period chair to 0.10, planer ripple on ten parts −100 dB.
describe('one event is one witness, on however many parts it shows', () => {
  it.each([
    ['side-chair', 'glue-white-or-yellow'],
    ['chest-of-drawers', 'nail-wire'],
    ['chest-of-drawers', 'stain-on-hidden-wood'],
    ['side-chair', 'disc-sander-swirl'],
    ['chest-of-drawers', 'planer-ripple'],
  ])('levels off on a %s for %s', (form, sign) => {
    const curve = [0, 1, 2, 3, 4, 5, 6].map((count) => against(form, sign, count));
    const told = curve.map((each) => each.toFixed(1)).join(' ');
    const by = (count: number) => Math.abs((curve[count] ?? 0) - (curve[0] ?? 0));
    // At most 25 decibans by six parts, and under 2 for each of the last two.
    expect(by(6), told).toBeLessThan(25);
    expect((by(6) - by(4)) / 2, told).toBeLessThan(2);
  });

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
