import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { bestDraw, drawWith } from '../evidence/figures.ts';
import { prepareCase } from '../evidence/prepareCase.ts';
import { reportOf } from '../evidence/signShares.ts';
import { handKnowledge } from '../evidence/testing/handKnowledge.ts';
import { smallKnowledge } from '../evidence/testing/smallKnowledge.ts';
import type { Figure } from '../knowledge/figureSchema.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { type ReadingId, readingIds, readingsOfMaking } from '../piece/readings.ts';
import { posteriorFor } from '../summation/evaluate.ts';
import { layOut } from '../summation/makeLayout.ts';
import { fixModel } from '../summation/model.ts';
import { trials } from './trials.ts';

function prepared(knowledge: Knowledge, input: CaseToWeigh) {
  const ready = prepareCase(input, knowledge, 2019);
  if (!ready.ok) throw new Error(ready.faults.map((each) => each.message).join(' '));
  return ready.prepared;
}

describe('what a settled case tells of a figure, worked on paper', () => {
  // Of 40 period pieces in 100, 20 of 100 show it; of 30 bench copies 60, of 20 machine copies 50, of 10 fakes 30. Never misread.
  const knowledge = handKnowledge({ mark: ['20, 10–30', '60, 50–70', '50, 40–60', '30, 20–40'] });
  const found = (state: 'present' | 'absent', sure: 'plain' | 'fairly' = 'plain'): CaseToWeigh => ({
    form: 'box',
    mode: 'in-hand',
    findings: [{ sign: 'mark', part: 'board', state, sure }],
  });
  const told = (verdict: readonly ReadingId[], state: 'present' | 'absent', sure?: 'fairly') =>
    Object.fromEntries(
      trials(prepared(knowledge, found(state, sure)), verdict, bestDraw()).map((each) => [each.state, each]),
    );

  it('is one trial, and one success, of the figure of the making that is known', () => {
    const { period, ...others } = told(readingsOfMaking['of-the-period'], 'present');
    expect(period).toMatchObject({ of: expect.closeTo(1, 9), seen: expect.closeTo(1, 9) });
    expect(others).toEqual({});
    expect(told(readingsOfMaking['of-the-period'], 'absent').period).toMatchObject({
      of: expect.closeTo(1, 9),
      seen: expect.closeTo(0, 9),
    });
  });

  it('is shared out where the verdict leaves two makings, as Bayes has it', () => {
    // Present: 30 · 0.6 = 18 against 20 · 0.5 = 10. Absent: 30 · 0.4 = 12 against 20 · 0.5 = 10.
    const present = told(readingsOfMaking['later-copy'], 'present');
    expect(present['bench-copy']).toMatchObject({
      of: expect.closeTo(18 / 28, 9),
      seen: expect.closeTo(18 / 28, 9),
    });
    expect(present['machine-copy']).toMatchObject({ of: expect.closeTo(10 / 28, 9) });
    const absent = told(readingsOfMaking['later-copy'], 'absent');
    expect(absent['bench-copy']).toMatchObject({
      of: expect.closeTo(12 / 22, 9),
      seen: expect.closeTo(0, 9),
    });
  });

  it('counts what an unsure eye saw by how probable it is that the sign was there', () => {
    // Usual share (20 + 60 + 50 + 30) / 4 = 40 of 100, so a false report comes at 0.1 · (0.4 / 0.6) = 1 / 15.
    // There and told: 0.2 · 0.9 = 0.18. Not there and told: 0.8 / 15 = 0.05333.
    const { period } = told(readingsOfMaking['of-the-period'], 'present', 'fairly');
    expect(period).toMatchObject({
      of: expect.closeTo(1, 9),
      seen: expect.closeTo(0.18 / (0.18 + 0.8 / 15), 9),
    });
  });
});

// Fisher's identity: the slope of the log probability of all that is known, by a figure θ, is seen / θ − (of − seen) / (1 − θ),
// each look weighed by how much of a witness it counts for. The slope is taken by moving the figure in the whole sum, which
// knows nothing of trials.
describe('trials agree with the slope of the whole sum', () => {
  const knowledge = smallKnowledge();
  // Signs without a group; a habit and those of one hand on one part only, the others on any.
  const places = [
    ['centred', 'rail'],
    ['saw-arcs', 'rail'],
    ['plane-tracks', 'leg-left'],
    ['sander-swirl', 'leg-left'],
    ['sander-swirl', 'rail'],
    ['new-glue', 'leg-right'],
    ['darkened', 'rail'],
    ['darkened', 'leg-left'],
    ['darkened', 'leg-right'],
    ['worn', 'leg-left'],
    ['worn', 'leg-right'],
    ['late-screw', 'rail'],
    ['early-nail', 'leg-left'],
    ['odd-holes', 'rail'],
    ['odd-holes', 'leg-left'],
    ['cuff', 'leg-left'],
    ['mismatch', undefined],
    ['scraped', 'finish'],
    ['late-line', undefined],
  ] as const;
  const anyFindings = fc
    .uniqueArray(fc.integer({ min: 0, max: places.length - 1 }), { minLength: 1, maxLength: 8 })
    .chain((chosen) =>
      fc.tuple(
        ...chosen.map((at) =>
          fc
            .record({
              state: fc.constantFrom('present' as const, 'absent' as const),
              sure: fc.constantFrom('plain' as const, 'fairly' as const, 'hint' as const),
            })
            .map((rest) => {
              const [sign, part] = places[at] as (typeof places)[number];
              return { sign, ...(part === undefined ? {} : { part }), ...rest };
            }),
        ),
      ),
    );
  const anyVerdict = fc.constantFrom<readonly ReadingId[]>(
    ...Object.values(readingsOfMaking),
    ['period-altered'],
    ['period-repaired'],
  );

  type Findings = CaseToWeigh['findings'];
  function agrees(findings: Findings, verdict: readonly ReadingId[], place: string): void {
    const ready = prepared(knowledge, { form: 'bench', mode: 'in-hand', claim: { place }, findings });
    const draw = bestDraw();
    const all = trials(ready, verdict, draw);
    const layout = layOut(ready);
    const log = (figure: Figure, share: number) => {
      const posterior = posteriorFor(fixModel(layout, drawWith(draw, figure, share)));
      return Math.log(verdict.reduce((sum, id) => sum + posterior.readings[id], 0)) + posterior.log;
    };
    for (const sign of new Set(ready.looks.map((look) => look.sign)))
      for (const [state, figure] of Object.entries(sign.shows)) {
        const theta = draw(figure);
        const step = 1e-4 * Math.min(theta, 1 - theta);
        const slope = (log(figure, theta + step) - log(figure, theta - step)) / (2 * step);
        const mine = all.filter((each) => each.look.sign === sign && each.state === state);
        const foretold = mine.reduce((sum, { look, seen, of }) => {
          const counts = reportOf(look, knowledge.making, draw).counts ?? 1;
          return sum + counts * (seen / theta - (of - seen) / (1 - theta));
        }, 0);
        const scale = theta * (1 - theta);
        expect(foretold * scale, `${sign.id} ${state}`).toBeCloseTo(slope * scale, 6);
      }
  }

  it('for every figure of every sign looked for', () => {
    fc.assert(fc.property(anyFindings, anyVerdict, fc.constantFrom('North Riding', ''), agrees), {
      numRuns: 30,
    });
  });

  it('where the same was found on several parts, each of which counts for less than one', () => {
    const found = (part: string, sign: string) => ({ sign, part, state: 'present', sure: 'hint' }) as const;
    const parts = ['rail', 'leg-left', 'leg-right'];
    for (const sign of ['saw-arcs', 'sander-swirl'])
      agrees(
        parts.map((part) => found(part, sign)),
        readingsOfMaking['of-the-period'],
        '',
      );
  });

  it('and leave no part out: the states of a cause share one trial between them', () => {
    const ready = prepared(knowledge, {
      form: 'bench',
      mode: 'in-hand',
      findings: [
        { sign: 'darkened', part: 'rail', state: 'present' },
        { sign: 'darkened', part: 'leg-left', state: 'absent' },
        { sign: 'odd-joint', part: 'rail', state: 'present' },
        { sign: 'odd-joint-twin', part: 'rail', state: 'absent' },
        { sign: 'centred', part: 'rail', state: 'present' },
        { sign: 'centred', part: 'leg-left', state: 'present' },
      ],
    });
    const byLook = new Map<string, number>();
    for (const { look, of } of trials(ready, readingIds, bestDraw()))
      byLook.set(look.key, (byLook.get(look.key) ?? 0) + of);
    // What a shop's own file has the say over is no trial of the general rate.
    for (const [key, of] of byLook)
      key.startsWith('centred') || key.startsWith('odd-joint')
        ? expect(of).toBeLessThanOrEqual(1 + 1e-9)
        : expect(of, key).toBeCloseTo(1, 9);
    expect(byLook.size).toBe(6);
  });
});
