import { expect, it } from 'vitest';
import { bestDraw } from '../evidence/figures.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import { handPieces, makingSign, shopOf } from '../evidence/testing/handPieces.ts';
import { posteriorFor } from './evaluate.ts';
import { layOut } from './makeLayout.ts';
import { fixModel } from './model.ts';
import { shares } from './readingPosterior.ts';

const open = shopOf('open', 20, { mark: 60 });
// Shut in the slack before the claimed years: near enough to be looked up, too early to have made any such piece.
const closed = { ...shopOf('closed', 30, { mark: 90 }), years: [1600, 1785] as [number, number] };

function readings(...shops: (typeof open)[]) {
  const knowledge = handPieces({ signs: [makingSign('mark', 20, 5)], shops, odds: [70, 10, 10, 10] });
  const ready = prepareCase(
    {
      form: 'box',
      mode: 'in-hand',
      claim: { period: [1800, 1820] },
      findings: [{ sign: 'mark', part: 'whole', state: 'present' }],
    },
    knowledge,
    2026,
  );
  if (!ready.ok) throw new Error('the case was refused');
  expect(ready.prepared.shops).toHaveLength(shops.length);
  return shares(posteriorFor(fixModel(layOut(ready.prepared), bestDraw())));
}

it('lets a shop that had closed before the first year of such pieces say nothing of them', () => {
  expect(readings(open, closed)).toEqual(readings(open));
  expect(readings(open)['period-intact']).toBeGreaterThan(0.5);
});
