import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { smallKnowledge } from '../evidence/testing/smallKnowledge.ts';
import type { Form, Knowledge } from '../knowledge/schema.ts';
import { weighCase } from './weighCase.ts';
import { weighing } from './weighing.ts';

const knowledge = smallKnowledge();

function weigh(input: Partial<CaseToWeigh> & Pick<CaseToWeigh, 'findings'>, known = knowledge) {
  const result = weighCase({ form: 'bench', mode: 'in-hand', draws: 0, quick: true, ...input }, known, {
    yearNow: 2026,
  });
  if (!result.ok) throw new Error(result.faults.map((each) => each.message).join(' '));
  return result.output;
}

function probabilityOf(output: ReturnType<typeof weigh>, ...ids: string[]): number {
  return output.readings
    .filter((each) => ids.includes(each.id))
    .reduce((sum, each) => sum + each.probability, 0);
}

const later = ['later-bench-copy', 'later-machine-copy', 'made-to-deceive'];
const mixed: CaseToWeigh['findings'] = [
  { sign: 'plane-tracks', part: 'leg-left', state: 'present' },
  { sign: 'darkened', part: 'rail', state: 'present' },
  { sign: 'odd-joint', part: 'rail', state: 'present' },
  { sign: 'worn', part: 'leg-right', state: 'absent' },
  { sign: 'scraped', part: 'finish', state: 'present' },
];

describe('what must hold of any weighing', () => {
  it('gives an output of the published shape, the years summing to 1', () => {
    const output = weigh({ findings: mixed, quick: false, draws: 20, seed: 3 });
    expect(weighing.parse(output)).toEqual(output);
    expect(output.years.density.reduce((sum, [, share]) => sum + share, 0)).toBeCloseTo(1, 9);
    for (const part of output.parts)
      expect(Object.values(part.origin).reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 9);
  });

  it('does not hang on the order of the findings', () => {
    const base = weigh({ findings: mixed });
    fc.assert(
      fc.property(fc.shuffledSubarray(mixed, { minLength: mixed.length }), (findings) => {
        const output = weigh({ findings });
        for (const each of output.readings) {
          expect(each.probability).toBeCloseTo(
            base.readings.find((other) => other.id === each.id)?.probability ?? 0,
            10,
          );
        }
      }),
      { seed: 1, numRuns: 20 },
    );
  });

  it.each(['could-not-tell', 'does-not-apply'] as const)(
    'is not moved by an answer that says %s',
    (state) => {
      const base = weigh({ findings: mixed });
      const output = weigh({ findings: [...mixed, { sign: 'centred', part: 'rail', state }] });
      expect(output.readings).toEqual(base.readings);
      expect(output.ignored).toEqual(base.ignored);
    },
  );

  it('puts the absence of a sign aside, and says why, where the part is made so that it cannot bear it; not its presence', () => {
    const { signs } = knowledge;
    const asking = {
      ...knowledge,
      signs: {
        ...signs,
        centred: { ...(signs.centred as Knowledge['signs'][string]), make: 'turned' as const },
      },
    };
    const square = { parts: [{ id: 'rail', makes: { turned: false } }] };
    const withIt = (state: 'absent' | 'present') => {
      const findings: CaseToWeigh['findings'] = [{ sign: 'centred', part: 'rail', state }];
      return { here: weigh({ ...square, findings }, asking), there: weigh({ findings }, asking) };
    };
    const { here, there } = withIt('absent');
    expect(here.readings).toEqual(weigh({ ...square, findings: [] }, asking).readings);
    expect(here.ignored).toEqual([
      {
        sign: 'centred',
        part: 'rail',
        why: 'It can’t be on this part as it is made, so that its absence says nothing.',
      },
    ]);
    expect(there.readings).not.toEqual(here.readings);
    expect(withIt('present').here.ignored).toEqual([]);
  });

  it('calls no part anything that was not looked at, however probable the rest of the piece makes it', () => {
    const standings = (findings: CaseToWeigh['findings']) =>
      Object.fromEntries(weigh({ findings }).parts.map(({ id, standing }) => [id, standing]));
    expect(new Set(Object.values(standings([])))).toEqual(new Set(['not-looked-at']));
    const seen = standings([
      { sign: 'plane-tracks', part: 'rail', state: 'present' },
      { sign: 'centred', part: 'leg-left', state: 'could-not-tell' },
      { sign: 'centred', part: 'leg-right', state: 'does-not-apply' },
    ]);
    expect(seen).toEqual({
      ...standings([]),
      rail: 'of-the-making',
      'leg-left': 'unsure',
    });
  });

  it('is moved less by a hint than by a plain finding, and least by a photograph that can only hint', () => {
    const centred = { sign: 'centred', part: 'rail', state: 'present' } as const;
    const [plain, hint, photo] = [{}, { sure: 'hint' as const }, { inPhotoOnly: true }].map((how) =>
      probabilityOf(weigh({ findings: [{ ...centred, ...how }] }), ...later),
    );
    const nothing = probabilityOf(weigh({ findings: [] }), ...later);
    expect(plain).toBeGreaterThan(hint ?? 1);
    expect(hint).toBeGreaterThan(nothing);
    expect(photo).toBeCloseTo(hint ?? 0, 12);
  });
});

describe('what the model is there for', () => {
  it('turns an odd habit from a charge into a proof once the shop file is there', () => {
    const findings: CaseToWeigh['findings'] = [
      { sign: 'odd-joint', part: 'rail', state: 'present' },
      { sign: 'darkened', part: 'rail', state: 'present' },
      { sign: 'darkened', part: 'leg-left', state: 'present' },
      { sign: 'plane-tracks', part: 'rail', state: 'present' },
    ];
    const claim = { period: [1745, 1785] as [number, number], place: 'Northam' };
    const without = weigh({ findings, claim, shops: [] });
    const withFile = weigh({ findings, claim, shops: ['north'] });
    expect(probabilityOf(withFile, ...later)).toBeLessThan(probabilityOf(without, ...later));
    expect(
      without.weights.find((each) => each.sign === 'odd-joint')?.periodAgainstLater.withinWhole,
    ).toBeLessThan(0);
    expect(
      withFile.weights.find((each) => each.sign === 'odd-joint')?.periodAgainstLater.withinWhole,
    ).toBeGreaterThan(0);
    expect(withFile.shops[0]?.id).toBe('north');
  });

  it('takes a habit that shows from a copyist of the claimed place, who would have copied it', () => {
    const claim = { period: [1745, 1785] as [number, number], place: 'Northam' };
    const findings = [{ sign: 'odd-joint', part: 'rail', state: 'present' as const }];
    const odd = knowledge.signs['odd-joint'] as (typeof knowledge.signs)[string];
    const shown = {
      ...knowledge,
      signs: { ...knowledge.signs, 'odd-joint': { ...odd, needs: 'nothing' as const } },
    };
    const [hidden, plain] = [knowledge, shown].map((each) => weigh({ findings, claim }, each));
    const ofPeriod = (output: typeof hidden) => 1 - probabilityOf(output as never, ...later);
    expect(ofPeriod(plain)).toBeLessThan(ofPeriod(hidden));
    // Where no place is claimed there is nobody’s work to be after: whether it shows makes no odds.
    const [a, b] = [knowledge, shown].map((each) => weigh({ findings }, each));
    expect(ofPeriod(a)).toBeCloseTo(ofPeriod(b), 12);
  });

  it('asks by itself whether the claimed place is right, and says what the claim did', () => {
    const claim = { period: [1745, 1785] as [number, number], place: 'Northam' };
    const findings = [{ sign: 'odd-joint', part: 'rail', state: 'present' as const }];
    const { place, making } = weigh({ findings, claim });
    const open = weigh({ findings, claim: { period: claim.period } });
    expect(place?.claimed).toBe('Northam');
    const ofPeriod = (output: Pick<typeof open, 'making'>) =>
      output.making.answers.find(({ id }) => id === 'of-the-period')?.probability;
    expect(place?.ofThePeriod.asClaimed).toBe(ofPeriod({ making }));
    expect(place?.ofThePeriod.noneClaimed).toBe(ofPeriod(open));
    const { there, elsewhere, unlisted } = place?.ifOfThePeriod ?? { there: 0, elsewhere: 0, unlisted: 0 };
    expect(there + elsewhere + unlisted).toBeCloseTo(1, 9);
    // The odd joint is Northam’s habit and rare otherwise.
    expect(there).toBeGreaterThan(0.5);
    expect(
      weigh({ findings: [{ ...findings[0], state: 'absent' } as never], claim }).place?.ifOfThePeriod.there,
    ).toBeLessThan(there);
    expect(open.place).toBeUndefined();
  });

  it('lets a late screw date the part, and the piece only as far as the part is of the making', () => {
    const output = weigh({
      findings: [
        { sign: 'late-screw', part: 'rail', state: 'present' },
        ...mixed.filter((each) => each.part !== 'rail'),
      ],
    });
    const rail = output.parts.find((each) => each.id === 'rail');
    // Nothing of the making before 1840 can hold it; only a misreading could, one in a hundred.
    const before1840 = (density: [number, number][]) =>
      density.filter(([year]) => year < 1835).reduce((sum, [, share]) => sum + share, 0);
    expect(before1840(rail?.years.density ?? [])).toBeLessThan(0.1);
    expect(before1840(output.years.density)).toBeGreaterThan(before1840(rail?.years.density ?? []));
  });

  it('calls nothing firm from photographs alone', () => {
    const output = weigh({ findings: mixed, mode: 'photo-only', quick: false, draws: 20 });
    expect(output.firm).toBe(false);
    expect(output.firmness.why).toContain('photograph');
  });

  it('calls nothing firm that is more probably wrong than right, however often it leads', () => {
    const output = weigh({
      findings: [{ sign: 'worn', part: 'leg-left', state: 'present' }],
      quick: false,
      draws: 100,
      seed: 2,
    });
    const leads = output.readings[0];
    expect(output.firm).toBe((output.firmness.shareOfDraws ?? 0) >= 0.95 && (leads?.low ?? 0) >= 0.8);
    expect(leads?.probability).toBeLessThan(0.5);
    expect(output.firm).toBe(false);
  });

  it('repeats itself for a seed', () => {
    const once = weigh({ findings: mixed, quick: false, draws: 30, seed: 9 });
    expect(weigh({ findings: mixed, quick: false, draws: 30, seed: 9 })).toEqual(once);
    expect(weigh({ findings: mixed, quick: false, draws: 30, seed: 10 }).readings).not.toEqual(once.readings);
  });

  it('stops the redraws when told to', () => {
    const result = weighCase({ form: 'bench', mode: 'in-hand', findings: mixed, draws: 200 }, knowledge, {
      yearNow: 2026,
      onProgress: (share) => share < 0.1,
    });
    expect(result.ok && result.output.firmness.draws).toBeLessThan(200);
  });

  it('says that nothing explains findings that clash under every reading', () => {
    const on = (sign: string) => ({ sign, part: 'rail', state: 'present' as const });
    const clashing = ['plane-tracks', 'sander-swirl', 'odd-holes', 'late-screw'].map(on);
    const output = weigh({ findings: clashing });
    const one = (sign: string) => weigh({ findings: [on(sign)] }).logEvidence;
    const bare = weigh({ findings: [] }).logEvidence;
    // Two in a hundred before; the single probabilities multiplied over all together, after.
    const ratio = Math.exp(
      clashing.reduce((sum, { sign }) => sum + one(sign) - bare, 0) - (output.logEvidence - bare),
    );
    expect(output.unexplained.probability).toBeCloseTo((0.02 * ratio) / (0.02 * ratio + 0.98), 9);
    expect(output.unexplained.probability).toBeGreaterThan(0.1);
    expect(output.unexplained.unexplained).toBe(true);
    expect(output.firm).toBe(false);
    const sound = weigh({ findings: [on('plane-tracks'), on('darkened')] }).unexplained;
    expect(sound.unexplained).toBe(false);
    expect(sound.probability).toBeLessThan(0.02);
  });
});

describe('an observation that no sign covers', () => {
  const expected = {
    original: 'hardly ever',
    repaired: 'seldom',
    altered: 'seldom',
    married: 'seldom',
    copied: 'sometimes',
    faked: 'nearly always',
  } as const;
  const odds = (output: ReturnType<typeof weigh>, one: string, other: string) => {
    const of = (id: string) => output.readings.find((each) => each.id === id)?.probability ?? Number.NaN;
    return of(one) / of(other);
  };

  it('moves two readings against each other by its two words, and by no more than ten to one', () => {
    const plain = weigh({ findings: mixed });
    const told = weigh({
      findings: mixed,
      observations: [{ id: 'a', words: 'one stain over all', expected }],
    });
    const moved = (one: string, other: string) => odds(told, one, other) / odds(plain, one, other);
    expect(moved('later-bench-copy', 'period-repaired')).toBeCloseTo(30 / 12, 6);
    // 90 to 4 would be 22.5; an eye without figures is not trusted so far.
    expect(moved('made-to-deceive', 'period-intact')).toBeCloseTo(10, 6);
  });

  it('is told with its weight, which is what taking it away would do', () => {
    const told = weigh({
      findings: mixed,
      observations: [{ id: 'a', words: 'one stain over all', expected }],
    });
    const without = weigh({ findings: mixed });
    const logit = (output: ReturnType<typeof weigh>) => {
      const p = output.readings.find((each) => each.id === told.leading)?.probability ?? Number.NaN;
      return 10 * Math.log10(p / (1 - p));
    };
    expect(told.observations.map((each) => each.id)).toEqual(['a']);
    expect(told.observations[0]?.withinWhole).toBeCloseTo(logit(told) - logit(without), 6);
  });

  it('takes the piece for whole sooner where it was looked over, but not against a repair that was found', () => {
    const over = weigh({ findings: [], lookedOver: true });
    const not = weigh({ findings: [] });
    expect(
      odds(over, 'period-intact', 'period-repaired') / odds(not, 'period-intact', 'period-repaired'),
    ).toBeCloseTo(92 / 35, 6);
    expect(over.observations.map((each) => each.id)).toEqual(['looked-over']);
    const found = [{ sign: 'cuff', part: 'leg-left', state: 'present' as const }];
    expect(weigh({ findings: found, lookedOver: true }).readings).toEqual(
      weigh({ findings: found }).readings,
    );
  });
});

describe('the making first, the condition second', () => {
  it('adds up the readings of each answer, and tells the condition as it would be of a period piece', () => {
    const output = weigh({ findings: mixed });
    const of = (id: string) => output.readings.find((each) => each.id === id)?.probability ?? Number.NaN;
    const period = of('period-intact') + of('period-repaired') + of('period-altered');
    const answer = (id: string) => output.making.answers.find((each) => each.id === id)?.probability;
    expect(answer('of-the-period')).toBeCloseTo(period, 2);
    expect(answer('later-copy')).toBeCloseTo(of('later-bench-copy') + of('later-machine-copy'), 2);
    for (const { id, share } of output.condition.ifOfThePeriod) expect(share).toBeCloseTo(of(id) / period, 2);
    expect(output.condition.seen.parts + output.condition.unseen.parts).toBe(output.parts.length);
  });
});

describe('a case that cannot be weighed', () => {
  it('says of a form that nothing puts together from old parts that this was not considered', () => {
    const marked = (output: ReturnType<typeof weigh>) => [
      ...output.readings.filter(({ considered }) => considered === false).map(({ id }) => id),
      ...output.making.answers.filter(({ considered }) => considered === false).map(({ id }) => id),
    ];
    expect(marked(weigh({ findings: mixed }))).toEqual([]);
    const bench = knowledge.forms.bench as Form;
    const kept = bench.alterations.filter((id) => knowledge.alterations[id]?.class !== 'make-up');
    expect(kept.length).toBeLessThan(bench.alterations.length);
    const without = { ...knowledge, forms: { bench: { ...bench, alterations: kept } } };
    expect(marked(weigh({ findings: mixed }, without))).toEqual(['made-up', 'put-together']);
  });

  it('takes having been looked over for something looked at', () => {
    const why = (input: Parameters<typeof weigh>[0]) =>
      weigh({ ...input, draws: 5, quick: false }).making.firmness.why;
    expect(why({ findings: [] })).toContain('Nothing has been looked at yet');
    expect(why({ findings: [], lookedOver: true })).not.toContain('Nothing has been looked at yet');
  });

  it('weighs all findings together for period against later by what they change of those odds, marriages left out', () => {
    const sides = (output: ReturnType<typeof weigh>) =>
      10 *
      Math.log10(
        probabilityOf(output, 'period-intact', 'period-repaired', 'period-altered') /
          probabilityOf(output, ...later),
      );
    const findings = mixed.slice(0, 1);
    expect(weigh({ findings }).altogether.periodAgainstLater).toBeCloseTo(
      sides(weigh({ findings })) - sides(weigh({ findings: [] })),
      1,
    );
  });

  it('names the form, the odds or the shop that is not known', () => {
    for (const wrong of [{ form: 'sofabed' }, { startingOdds: 'rosy' }, { shops: ['west'] }]) {
      const result = weighCase({ form: 'bench', mode: 'in-hand', findings: [], ...wrong }, knowledge, {
        yearNow: 2026,
      });
      expect(result.ok).toBe(false);
      if (!result.ok) expect(result.faults[0]?.message).toContain(Object.values(wrong).flat()[0]);
    }
  });

  it('keeps what it cannot weigh, with a reason', () => {
    const output = weigh({
      findings: [
        ...mixed,
        { sign: 'no-such-sign', state: 'present' },
        { sign: 'worn', part: 'drawer', state: 'present' },
      ],
    });
    expect(output.ignored.map((each) => each.sign)).toEqual(['no-such-sign', 'worn']);
  });
});
