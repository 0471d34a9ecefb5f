import { beforeAll, expect, it } from 'vitest';
import { bestDraw } from '../../src/evidence/figures.ts';
import { prepareCase } from '../../src/evidence/prepareCase.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import type { ReadingId } from '../../src/piece/readings.ts';
import { posteriorFor } from '../../src/summation/evaluate.ts';
import { layOut } from '../../src/summation/makeLayout.ts';
import { fixModel } from '../../src/summation/model.ts';
import { shares } from '../../src/summation/readingPosterior.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';

let knowledge: Knowledge;
beforeAll(async () => {
  knowledge = await houseKnowledge();
}, 60_000);

type Seen = { sign: string; part: string; state: 'present' | 'absent' };
const seen = (sign: string, part: string, state: Seen['state'] = 'present'): Seen => ({ sign, part, state });

/** How probable a reading is among those of the period. */
function amongPeriod(form: string, reading: ReadingId, findings: Seen[], features: Record<string, string>) {
  const ready = prepareCase({ form, features, mode: 'in-hand', findings }, knowledge, 2026);
  if (!ready.ok) throw new Error(`${form} can't be weighed`);
  expect(ready.prepared.ignored).toEqual([]);
  const all = shares(posteriorFor(fixModel(layOut(ready.prepared), bestDraw())));
  const ofPeriod = all['period-intact'] + all['period-repaired'] + all['period-altered'] + all['made-up'];
  return all[reading] / ofPeriod;
}

// Common practice: what each of these is a trace of. A trace must raise the reading its alteration leads to.
it.each<[what: string, form: string, to: ReadingId, traces: Seen[], features?: Record<string, string>]>([
  ['gates hung anew', 'gate-leg-table', 'period-repaired', [seen('gate-pivot-moved', 'fly-rail-left')]],
  [
    'legs cut for casters',
    'gate-leg-table',
    'period-altered',
    [seen('foot-turning-cut-short', 'feet'), seen('leg-end-bored-for-socket', 'feet')],
  ],
  [
    'a rim added to a tea table',
    'tea-table',
    'period-altered',
    [seen('rim-over-worn-edge', 'rim'), seen('rim-without-older-traces', 'rim')],
  ],
  ['a table made from a piano', 'side-table', 'period-altered', [seen('instrument-traces', 'whole')]],
  [
    'ends of a glass under a sofa table',
    'sofa-table',
    'made-up',
    [
      seen('base-lets-into-new-cuts', 'end-support-left'),
      seen('base-too-narrow-for-top', 'end-support-left'),
    ],
  ],
  [
    'a finer crest',
    'banister-back-chair',
    'period-altered',
    [seen('crest-disagrees-with-posts', 'crest-rail'), seen('crest-finer-than-chair', 'crest-rail')],
  ],
  [
    'rockers taken off',
    'banister-back-chair',
    'period-altered',
    [seen('rocker-slot-filled', 'front-leg-left')],
  ],
  [
    'cane covered',
    'caned-back-chair',
    'period-altered',
    [seen('cane-holes-under-cover', 'front-rail')],
    { seat: 'over-upholstered' },
  ],
  [
    'a chair put on rockers',
    'rocking-chair',
    'period-altered',
    [
      seen('rocker-cut-through-foot', 'leg-front-left'),
      seen('rocker-legs-shaped-for-it', 'rocker-left', 'absent'),
    ],
  ],
  [
    'decoration added',
    'klismos-chair',
    'period-altered',
    [seen('decoration-over-worn-ground', 'finish'), seen('decoration-unlike-its-time', 'finish')],
  ],
  [
    'a slip seat stuffed over',
    'klismos-chair',
    'period-altered',
    [seen('rebate-under-stuffing', 'front-rail')],
    { seat: 'over-upholstered' },
  ],
  [
    'a dial painted anew',
    'shelf-clock',
    'period-repaired',
    [seen('dial-paint-over-losses', 'dial'), seen('dial-paint-fresh', 'dial')],
  ],
  [
    'another movement',
    'wall-clock',
    'made-up',
    [seen('case-traces-of-another-movement', 'backboard'), seen('dial-winding-holes-moved', 'dial')],
  ],
  [
    'another label',
    'shelf-clock',
    'period-altered',
    [seen('label-shadow-beyond-it', 'label'), seen('label-stuck-over-dirt', 'label')],
  ],
  [
    'a new tablet',
    'shelf-clock',
    'period-repaired',
    [seen('tablet-in-disturbed-strips', 'tablet'), seen('tablet-picture-of-another-time', 'tablet')],
  ],
])('%s (%s) raises the reading %s', (_, form, to, traces, features = {}) => {
  const before = amongPeriod(form, to, [], features);
  const after = amongPeriod(form, to, traces, features);
  expect(after / (1 - after)).toBeGreaterThan((1.5 * before) / (1 - before));
});

it('legs made for rockers speak for a chair that was made to rock', () => {
  const before = amongPeriod('rocking-chair', 'period-altered', [], {});
  const made = amongPeriod(
    'rocking-chair',
    'period-altered',
    [seen('rocker-legs-shaped-for-it', 'rocker-left')],
    {},
  );
  expect(made).toBeLessThan(before);
});
