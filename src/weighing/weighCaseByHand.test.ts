import { describe, expect, it } from 'vitest';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { handKnowledge } from '../evidence/testing/handKnowledge.ts';
import { alterationOf, handPieces, makingSign, shopOf, signOf } from '../evidence/testing/handPieces.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { type EarlyLooks, weighCase } from './weighCase.ts';

// Worked by hand from the shares typed here. Starting odds 40 : 30 : 20 : 10.
const knowledge = handKnowledge({
  marked: ['90, 80–95', '30', '10', '60'],
  other: ['20', '50', '50', '20'],
  'period-only': ['50', '0', '0', '0'],
  'copies-only': ['0', '40', '40', '40'],
});
const marked = { sign: 'marked', state: 'present' } as const;

type Context = Partial<Parameters<typeof weighCase>[2]>;
function weigh(input: Partial<CaseToWeigh>, known: Knowledge = knowledge, context: Context = {}) {
  const result = weighCase({ form: 'box', mode: 'in-hand', findings: [marked], ...input }, known, {
    yearNow: 2026,
    ...context,
  });
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.output;
}

describe('a weighing asked for in a hurry', () => {
  /** Made within each test: a lie can only be tried there. */
  const hurried = () => {
    const first: unknown[] = [];
    const early: unknown[] = [];
    const output = weigh({ quick: true, draws: 50 }, knowledge, {
      onFirst: (answer) => first.push(answer),
      onEarly: (looks) => early.push(looks),
    });
    return { first, early, output };
  };

  it('leaves out what takes long, and says so', () => {
    const { output } = hurried();
    expect(output).toMatchObject({ nextLooks: [], wouldChange: [], wouldChangeTried: '', sensitivity: [] });
    expect(output).not.toHaveProperty('plan');
    expect(output.versions).toEqual({ knowledge: 'small', seed: 1, draws: 0 });
    expect(output.firmness).toMatchObject({ draws: 0, shareOfDraws: null });
    expect(output.firm).toBe(false);
  });

  it('tells its first answer before, and no next looks', () => {
    const { first, early, output } = hurried();
    expect(first).toMatchObject([
      { leading: 'period-intact', readings: output.readings, parts: output.parts },
    ]);
    expect(early).toEqual([]);
  });

  it('tells what the findings say all the same', () => {
    const { output } = hurried();
    // Period 0.4·0.9 = 0.36 beside 0.09, 0.02 and 0.06: 0.53 of all pieces would show it.
    expect(output.leading).toBe('period-intact');
    expect(output.rival).toBe('later-bench-copy');
    expect(output.logEvidence).toBeCloseTo(Math.log(0.53), 9);
    for (const { probability, low, high } of output.readings)
      expect([low, high]).toEqual([probability, probability]);
    expect(output.weights).toEqual([
      {
        sign: 'marked',
        part: null,
        state: 'present',
        alone: expect.closeTo(10 * Math.log10(0.36 / 0.17 / (0.4 / 0.6)), 9),
        withinWhole: expect.closeTo(10 * Math.log10(0.36 / 0.17 / (0.4 / 0.6)), 9),
        againstRival: expect.closeTo(10 * Math.log10(3), 9),
        words: 'weak support for a period piece, substantially intact rather than another reading',
        periodAgainstLater: {
          alone: expect.closeTo(10 * Math.log10(0.36 / 0.17 / (0.4 / 0.6)), 9),
          withinWhole: expect.closeTo(10 * Math.log10(0.36 / 0.17 / (0.4 / 0.6)), 9),
        },
      },
    ]);
    expect(output.altogether).toEqual({
      withinWhole: expect.closeTo(10 * Math.log10(0.36 / 0.17 / (0.4 / 0.6)), 9),
      againstRival: expect.closeTo(10 * Math.log10(3), 9),
      words: 'weak support for a period piece, substantially intact rather than another reading',
      periodAgainstLater: expect.closeTo(10 * Math.log10(0.36 / 0.17 / (0.4 / 0.6)), 9),
    });
    expect(output.altogether).not.toHaveProperty('limit');
    const { p90, density, binding } = output.years;
    expect(density.reduce((all, [, share]) => all + share, 0)).toBeCloseTo(1, 9);
    expect(p90[0]).toBeLessThan(p90[1]);
    // But for the mark a copy would be likelier.
    expect(binding).toEqual([{ sign: 'marked', part: null, end: 'to' }]);
    expect(output.reasonGroups).toEqual([]);
    expect(output.shops).toEqual([
      { id: 'unlisted', name: 'No listed shop, or not period work', probability: 0.999 },
    ]);
    expect(output).not.toHaveProperty('place');
    expect(output.alterations).toEqual([]);
    expect(output.ignored).toEqual([]);
  });

  it('needs nobody who listens', () => {
    expect(weigh({ quick: true }).leading).toBe('period-intact');
  });
});

describe('a whole weighing', () => {
  it('makes 500 redraws where nothing else is asked, and tells next looks before', () => {
    const early: EarlyLooks[] = [];
    const first: unknown[] = [];
    const output = weigh({}, knowledge, {
      onEarly: (looks) => early.push(looks),
      onFirst: (answer) => first.push(answer),
    });
    expect(output.versions.draws).toBe(500);
    expect(output.firmness.draws).toBe(500);
    expect(early).toEqual([{ nextLooks: output.nextLooks }]);
    expect(first).toEqual([]);
    expect(output.nextLooks.length).toBeGreaterThan(0);
    const [period] = output.readings;
    expect(period?.low).toBeLessThan(period?.probability ?? 0);
    expect(period?.high).toBeGreaterThan(period?.probability ?? 1);
    expect(output.making.answers[0]?.low).toBeLessThan(output.making.answers[0]?.probability ?? 0);
    expect(output.sensitivity[0]?.figure).toBe('Sign marked: period');
  });

  it('asks for nothing again that was answered, in whatever way', () => {
    const saw = signOf('saw', 'tooling', { hand: 10, 'early-machine': 60, 'modern-machine': 40 });
    const asked = (findings: CaseToWeigh['findings']) =>
      weigh({ draws: 0, findings }, handPieces({ signs: [saw], odds: [40, 30, 20, 10] }))
        .nextLooks.map(({ part }) => part)
        .toSorted();
    expect(asked([])).toEqual(['board', 'lid', null]);
    expect(asked([{ sign: 'saw', part: 'lid', state: 'could-not-tell' }])).toEqual(['board', null]);
  });

  it('goes by its seed and number of redraws', () => {
    const drawn = weigh({ draws: 20, seed: 7 });
    expect(drawn.versions).toEqual({ knowledge: 'small', seed: 7, draws: 20 });
    expect(weigh({ draws: 20, seed: 8 }).readings).not.toEqual(drawn.readings);
    expect(weigh({ draws: 20, seed: 1 })).toEqual(weigh({ draws: 20 }));
    expect(weigh({ draws: 20 }, knowledge, { onProgress: () => false }).versions.draws).toBeLessThan(20);
  });

  it('is settled only on the grounds it has', () => {
    const sure = handKnowledge({ marked: ['90', '30', '10', '60'] }, [9970, 10, 10, 10]);
    const why = (input: Partial<CaseToWeigh>) => weigh({ draws: 20, ...input }, sure);
    expect(why({})).toMatchObject({ firm: true, making: { firm: true } });
    expect(why({ mode: 'photo-only' }).firmness.why).toContain('photographs alone');
    expect(why({ findings: [] }).firmness.why).toContain('Nothing has been looked at yet');
    expect(why({ findings: [], lookedOver: true }).firm).toBe(true);
    expect(why({ lookedOver: true }).firm).toBe(true);
    const observed = {
      id: 'a',
      words: 'one stain over all',
      expected: {
        original: 'sometimes',
        repaired: 'sometimes',
        altered: 'sometimes',
        married: 'sometimes',
        copied: 'sometimes',
        faked: 'sometimes',
      },
    } as const;
    const told = why({ findings: [], observations: [observed] });
    expect(told.firm).toBe(true);
    expect(told.observations.map(({ id }) => id)).toEqual(['a']);
    expect(why({ observations: [observed] }).firm).toBe(true);
    // A clash is no ground for anything.
    const clash = weigh({
      draws: 5,
      findings: [
        { sign: 'period-only', state: 'present' },
        { sign: 'copies-only', state: 'present' },
      ],
    });
    expect(clash.unexplained.probability).toBe(1);
    expect(clash.firmness.why).toContain('none of the readings explains the findings well');
    expect(clash.logEvidence).toBeLessThan(-600);
    expect(clash.shops).toEqual([{ id: 'unlisted', name: expect.any(String), probability: 0.999 }]);
  });

  it('says what was tried where nothing would change it', () => {
    const sure = handKnowledge({ marked: ['60', '40', '40', '40'] }, [97, 1, 1, 1]);
    expect(weigh({ draws: 0 }, sure).wouldChangeTried).toBe(
      'Had the finding come out otherwise, the same reading would still lead.',
    );
    expect(weigh({ draws: 0 })).toMatchObject({
      wouldChangeTried: '',
      wouldChange: [
        { findings: [{ sign: 'marked', part: null, otherwise: 'not been there' }], to: 'later-bench-copy' },
      ],
    });
  });

  it('keeps to the limits of the visit, and plans it where the minutes are told', () => {
    const all = weigh({ draws: 0 }).nextLooks;
    expect(weigh({ draws: 0, limits: { mayNot: ['nothing'] } })).toMatchObject({ nextLooks: [] });
    expect(weigh({ draws: 0, limits: { mayNot: [] } })).not.toHaveProperty('plan');
    // Each look takes a minute.
    const planned = weigh({ draws: 0, limits: { minutesLeft: 1 } });
    expect(planned.nextLooks).toEqual(all);
    const best = all.toSorted((a, b) => b.bits - a.bits)[0];
    expect(planned.plan).toEqual([{ sign: best?.sign, part: best?.part, bits: best?.bits, minutesGone: 1 }]);
    expect(weigh({ draws: 0, limits: { minutesLeft: 0.5 } })).toMatchObject({ nextLooks: [], plan: [] });
  });

  it('says what is wrong with a case, and weighs nothing', () => {
    const result = weighCase({ form: 'sofabed', mode: 'in-hand', findings: [] }, knowledge, {
      yearNow: 2026,
    });
    expect(result).toMatchObject({ ok: false, faults: [{ message: expect.stringContaining('sofabed') }] });
  });
});

describe('what is told of alterations, shops and places', () => {
  const trace = signOf('trace', 'alteration/waxed', { happened: 60, not: 2 });
  const made = handPieces({
    signs: [trace, makingSign('joint', 2, 2)],
    alterations: [alterationOf('oiled', 'upkeep', 30), alterationOf('waxed', 'upkeep', 10)],
    shops: [shopOf('south', 20, { trace: 60 }), shopOf('north', 50, { joint: 90 })],
  });

  it('is how probable each is, the most probable first', () => {
    const { alterations, shops } = weigh(
      {
        quick: true,
        findings: [
          { sign: 'trace', part: 'lid', state: 'present' },
          { sign: 'joint', state: 'present' },
        ],
      },
      made,
    );
    // 0.1·0.6 : 0.9·0.02 for waxing; of oiling nothing was seen.
    expect(alterations).toEqual([
      { id: 'waxed', name: 'Changed by waxed', probability: expect.closeTo(0.06 / 0.078, 9) },
      { id: 'oiled', name: 'Changed by oiled', probability: expect.closeTo(0.3, 9) },
    ]);
    // Of 10,000 pieces 9,970 are of the period: 0.997·0.5·0.9 beside 0.997·0.5·0.02 and 0.003·0.02; of the 0.5 the south shop has 0.2.
    const all = 0.997 * 0.5 * 0.9 + 0.997 * 0.5 * 0.02 + 0.003 * 0.02;
    expect(shops).toEqual([
      { id: 'north', name: 'The north shop', probability: expect.closeTo((0.997 * 0.45) / all, 6) },
      {
        id: 'unlisted',
        name: 'No listed shop, or not period work',
        probability: expect.closeTo((0.997 * 0.3 * 0.02 + 0.003 * 0.02) / all, 6),
      },
      { id: 'south', name: 'The south shop', probability: expect.closeTo((0.997 * 0.2 * 0.02) / all, 6) },
    ]);
  });

  it('is nothing where the findings cannot all be true', () => {
    const never = handPieces({
      signs: [signOf('trace', 'alteration/waxed', { happened: 0, not: 0 })],
      alterations: [alterationOf('waxed', 'upkeep', 10)],
    });
    const { alterations } = weigh(
      { quick: true, findings: [{ sign: 'trace', part: 'lid', state: 'present' }] },
      never,
    );
    expect(alterations.map(({ probability }) => probability)).toEqual([0.001]);
  });

  it('is of the claimed place only where one is claimed', () => {
    const claimed = weigh({ quick: true, findings: [], claim: { place: 'Northam' } }, made);
    expect(claimed.place?.claimed).toBe('Northam');
    expect(weigh({ quick: true, findings: [] }, made)).not.toHaveProperty('place');
  });

  it('is the parts as they stand, and what jars on them', () => {
    const holes = signOf('holes', 'origin', { 'of-the-making': 3, repair: 60, improve: 8, 'other-old': 20 });
    const output = weigh(
      { quick: true, findings: [{ sign: 'holes', part: 'lid', state: 'present' }] },
      handPieces({ signs: [holes], renewed: 40 }),
    );
    expect(output.contradictions).toMatchObject([{ sign: 'holes', part: 'lid', explained: true }]);
    expect(output.condition.seen).toEqual({ parts: 1, original: 0 });
    expect(output.weights[0]).toMatchObject({ sign: 'holes', part: 'lid' });
    expect(output.parts.map(({ id, looked }) => [id, looked])).toEqual([
      ['board', 0],
      ['lid', 1],
    ]);
  });

  it('is that a finding was measured, and why one has no number', () => {
    const measured = { ...marked, likelihoods: { present: 9, absent: 1 } };
    expect(weigh({ quick: true, findings: [measured] }).weights[0]).toMatchObject({ measured: true });
    expect(weigh({ quick: true }).weights[0]).not.toHaveProperty('measured');
    const only = weigh({
      quick: true,
      findings: [{ sign: 'period-only', state: 'present' }, marked],
    });
    expect(only.weights[0]?.limit?.leavesNothingOf).toBe('others');
    expect(only.reasonGroups).toMatchObject([
      {
        cause: { id: 'making' },
        findings: [
          { sign: 'period-only', part: null },
          { sign: 'marked', part: null },
        ],
        withinWhole: null,
        limit: { leavesNothingOf: 'others' },
      },
    ]);
    expect(only.altogether).toMatchObject({ withinWhole: null, periodAgainstLater: null });
  });
});
