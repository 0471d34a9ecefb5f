import { expect, test } from 'vitest';
import { effectWords } from '../../scripts/knowledge/effectWords.ts';
import type { Weighing } from '../../src/weighing/weighing.ts';

/** A weighing with only what the words are made of. */
function weighing(intact: number, from: number, alone: number, standing: string): Weighing {
  const readings = [
    { id: 'period-intact', probability: intact },
    { id: 'later-machine-copy', probability: 1 - intact },
  ];
  return {
    readings,
    leading: intact > 0.5 ? 'period-intact' : 'later-machine-copy',
    years: { p90: [from, 1800] },
    parts: [{ id: 'splat', name: 'Splat', standing }],
    weights: [{ sign: 'saw-arcs', part: 'splat', periodAgainstLater: { alone, withinWhole: alone } }],
    unexplained: { unexplained: false, probability: 0.01, reason: '' },
  } as unknown as Weighing;
}

test('nothing moved: one line that says so', () => {
  const same = weighing(0.8, 1750, 4, 'of-the-making');
  expect(effectWords(same, same)).toHaveLength(1);
  expect(effectWords(same, weighing(0.806, 1752, 4.5, 'of-the-making'))[0]).toMatch(/^Nothing moved/);
});

test('leading reading, readings, years, standings and weights are each told', () => {
  const told = effectWords(weighing(0.8, 1750, 4, 'of-the-making'), weighing(0.3, 1770, -6.25, 'repair'));
  expect(told).toEqual([
    'Another reading leads: a later copy made by machine; no longer a period piece, substantially intact.',
    '“Of the period, substantially intact” fell from 80 to 30 in 100.',
    '“A later copy, made by machine” rose from 20 to 70 in 100.',
    'The years (90 in 100) moved from 1750–1800 to 1770–1800.',
    'The splat now stands as repair, no longer as of-the-making.',
    'saw-arcs on splat by itself moved from +4 decibans to −6.3 decibans.',
  ]);
});
