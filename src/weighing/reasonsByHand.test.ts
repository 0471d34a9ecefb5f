import { describe, expect, it } from 'vitest';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { handKnowledge } from '../evidence/testing/handKnowledge.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { weighCase } from './weighCase.ts';
import { triedWords } from './wouldChange.ts';

// Every number below is worked by hand from the shares typed here; none is read from the program.
// Starting odds 40 : 30 : 20 : 10 for period : bench copy : machine copy : made to deceive.
const knowledge = handKnowledge({
  marked: ['90, 80–95', '30', '10', '60'],
  other: ['20', '50', '50', '20'],
  'period-only': ['50', '0', '0', '0'],
  'copies-only': ['0', '40', '40', '40'],
});

function weigh(
  findings: CaseToWeigh['findings'],
  more: Partial<CaseToWeigh> = {},
  known: Knowledge = knowledge,
) {
  const result = weighCase({ form: 'box', mode: 'in-hand', draws: 0, findings, ...more }, known, {
    yearNow: 2026,
  });
  if (!result.ok) throw new Error(result.faults.map((each) => each.message).join(' '));
  return result.output;
}

const decibans = (ratio: number) => 10 * Math.log10(ratio);
const present = (sign: string) => ({ sign, state: 'present' }) as const;

describe('weights worked by hand', () => {
  it('of one finding: the leading reading against the rest and against its strongest rival', () => {
    // Posterior: period 0.4·0.9 = 0.36, bench 0.3·0.3 = 0.09, machine 0.2·0.1 = 0.02, deceive 0.1·0.6 = 0.06; the rest 0.17.
    const output = weigh([present('marked')]);
    expect(output.readings[0]).toMatchObject({ id: 'period-intact' });
    expect(output.readings[0]?.probability).toBeCloseTo(0.36 / 0.53, 12);
    expect(output.leading).toBe('period-intact');
    expect(output.rival).toBe('later-bench-copy');
    const [weight] = output.weights;
    // Odds 0.36 : 0.17 after, 0.4 : 0.6 before: 3.18 times.
    expect(weight?.alone).toBeCloseTo(decibans(0.36 / 0.17 / (0.4 / 0.6)), 9);
    expect(weight?.withinWhole).toBeCloseTo(5.019, 3);
    // Against the bench copy 0.9 : 0.3 = 3 times = 4.771 decibans.
    expect(weight?.againstRival).toBeCloseTo(decibans(3), 9);
    expect(weight?.words).toBe(
      'weak support for a period piece, substantially intact rather than another reading',
    );
    expect(output.altogether.withinWhole).toBeCloseTo(decibans(0.36 / 0.17 / (0.4 / 0.6)), 9);
  });

  it('of two findings, each taken out of the whole, and of both together', () => {
    // Both: period 0.36·0.2 = 0.072, bench 0.09·0.5 = 0.045, machine 0.01, deceive 0.012; the rest 0.067.
    const output = weigh([present('marked'), present('other')]);
    const [marked, other] = output.weights;
    // Without “other” 0.36 : 0.17; without “marked” 0.4·0.2 = 0.08 : 0.15 + 0.1 + 0.02 = 0.27.
    expect(other?.withinWhole).toBeCloseTo(decibans(0.072 / 0.067 / (0.36 / 0.17)), 9);
    expect(marked?.withinWhole).toBeCloseTo(decibans(0.072 / 0.067 / (0.08 / 0.27)), 9);
    // By itself “other” 0.08 : 0.27 against 0.4 : 0.6, which speaks for another reading.
    expect(other?.alone).toBeCloseTo(decibans(0.08 / 0.27 / (0.4 / 0.6)), 9);
    expect(other?.againstRival).toBeCloseTo(decibans(0.2 / 0.5), 9);
    // (0.36 : 0.17)/(0.072 : 0.067) = 1.97 times against it: too little to be called support. “marked” does 3.63 times for it.
    expect(other?.words).toBe('no support either way');
    expect(marked?.words).toBe(
      'weak support for a period piece, substantially intact rather than another reading',
    );
    expect(output.reasonGroups).toHaveLength(1);
    const [group] = output.reasonGroups;
    expect(group?.cause.kind).toBe('making');
    expect(group?.findings).toHaveLength(2);
    expect(group?.withinWhole).toBeCloseTo(decibans(0.072 / 0.067 / (0.4 / 0.6)), 9);
    expect(group?.againstRival).toBeCloseTo(decibans((0.9 * 0.2) / (0.3 * 0.5)), 9);
  });

  it('are for the leading reading, whichever it is; period against later stands beside', () => {
    // “other” twice over would double count; alone: period 0.08, bench 0.15, machine 0.1, deceive 0.02: the bench copy leads.
    const output = weigh([present('other')]);
    expect(output.leading).toBe('later-bench-copy');
    expect(output.rival).toBe('later-machine-copy');
    const [weight] = output.weights;
    // Bench 0.15 : 0.2 after, 0.3 : 0.7 before.
    expect(weight?.alone).toBeCloseTo(decibans(0.15 / 0.2 / (0.3 / 0.7)), 9);
    // Against the machine copy it says nothing: 0.5 : 0.5.
    expect(weight?.againstRival).toBeCloseTo(0, 9);
    expect(weight?.periodAgainstLater.alone).toBeCloseTo(decibans(0.08 / 0.27 / (0.4 / 0.6)), 9);
    expect(weight?.periodAgainstLater.withinWhole).toBeCloseTo(decibans(0.08 / 0.27 / (0.4 / 0.6)), 9);
  });
});

describe('where a hard limit leaves a side nothing', () => {
  it('gives no number but says which finding leaves nothing of what', () => {
    const output = weigh([present('period-only'), present('marked')]);
    const [only, marked] = output.weights;
    expect([only?.alone, only?.withinWhole, only?.againstRival]).toEqual([null, null, null]);
    expect(only?.limit).toEqual({
      leavesNothingOf: 'others',
      words:
        '“Sign period-only” on the piece as a whole leaves nothing of any reading but a period piece, substantially intact: no number can be put on that.',
    });
    // By itself “marked” still has its weight; within the whole it has none, and is told why.
    expect(marked?.alone).toBeCloseTo(decibans(0.36 / 0.17 / (0.4 / 0.6)), 9);
    expect(marked?.withinWhole).toBeNull();
    expect(marked?.limit?.words).toContain('“Sign period-only” on the piece as a whole leaves nothing');
    expect(marked?.limit?.words).toContain('with or without this');
    expect(output.altogether.limit?.leavesNothingOf).toBe('others');
    expect(JSON.stringify(output)).not.toMatch(/[^\d.]-?1[12]\d(\.\d+)?[,}]\s*"(words|againstRival)/);
  });

  it('says that the starting odds left nothing, before anything was seen', () => {
    const sure = handKnowledge({ marked: ['90', '30', '10', '60'] }, [100, 0, 0, 0]);
    const [weight] = weigh([present('marked')], {}, sure).weights;
    expect(weight?.withinWhole).toBeNull();
    expect(weight?.limit?.words).toBe(
      'The starting odds “Typed” and the form leave nothing of any reading but a period piece, substantially intact, before anything was seen.',
    );
  });

  it('says so where the findings cannot all be true', () => {
    const output = weigh([present('period-only'), present('copies-only')]);
    expect(output.unexplained.unexplained).toBe(true);
    for (const weight of output.weights) {
      expect(weight.withinWhole).toBeNull();
      expect(weight.limit?.leavesNothingOf).toBe('either');
      expect(weight.limit?.words).toBe(
        'With the other findings this leaves nothing of any reading: no number can be put on that.',
      );
    }
  });
});

describe('what would change the reading', () => {
  it('a finding seen otherwise', () => {
    // “marked” not there: period 0.4·0.1·0.2 = 0.008, bench 0.3·0.7·0.5 = 0.105, machine 0.09, deceive 0.008.
    // “other” not there: period 0.36·0.8 still leads.
    expect(weigh([present('marked'), present('other')]).wouldChange).toEqual([
      { findings: [{ sign: 'marked', part: null, otherwise: 'not been there' }], to: 'later-bench-copy' },
    ]);
  });

  it('a measured finding, had it spoken as strongly for the other side', () => {
    // 9 : 1 for the sign: 0.99 if there, 0.11 if not. Turned: period 0.4·(0.9·0.11 + 0.1·0.99) = 0.0792,
    // bench 0.3·(0.3·0.11 + 0.7·0.99) = 0.2178, machine 0.2·(0.1·0.11 + 0.9·0.99) = 0.1804: the bench copy leads.
    const output = weigh([{ ...present('marked'), likelihoods: { present: 9, absent: 1 } }]);
    // As it was: 0.4·(0.9·0.99 + 0.1·0.11) = 0.3608, bench 0.3·(0.3·0.99 + 0.7·0.11) = 0.1122.
    expect(output.leading).toBe('period-intact');
    expect(output.weights[0]?.againstRival).toBeCloseTo(decibans(0.902 / 0.374), 9);
    expect(output.wouldChange).toEqual([
      {
        findings: [{ sign: 'marked', part: null, otherwise: 'been measured as strongly the other way' }],
        to: 'later-bench-copy',
      },
    ]);
    expect(output.wouldChangeTried).toBe('');
  });

  it('a measurement of the cause itself, had it spoken for another state', () => {
    // As it was 40·1 : 30·0.5 : 20·0.1 : 10·0.1. For the bench copy instead: 40·0.5 = 20 : 30·1; for the machine copy
    // 40·0.1 = 4 : 15 : 20·1; made to deceive 4 : 15 : 2 : 10. The last leaves period the least against the rest? 4 : 39 for
    // the machine copy, 4 : 27 for the bench copy by the last, 20 : 33 for the first: the machine copy is told.
    const likelihoods = { period: 1, 'bench-copy': 0.5, 'machine-copy': 0.1, 'to-deceive': 0.1 };
    const output = weigh([{ ...present('marked'), likelihoods }]);
    expect(output.leading).toBe('period-intact');
    expect(output.wouldChange).toEqual([
      {
        findings: [
          {
            sign: 'marked',
            part: null,
            otherwise: 'been measured as strongly for “later copy by machine”',
          },
        ],
        to: 'later-machine-copy',
      },
    ]);
  });

  it('no more than five, those that would move the leading reading most first', () => {
    // Each turned alone puts another first: 40 : 30 : 20 : 10 with shares of 60 to 90 against 30, turned 40 to 10 against 70.
    const shares = ['60', '65', '70', '75', '80', '85'];
    const signs = Object.fromEntries(
      shares.map((share) => [`s${share}`, [share, '30', '30', '30'] as const]),
    );
    const one = (share: string) =>
      weigh([present(`s${share}`)], {}, handKnowledge(signs)).wouldChange.map(({ to }) => to);
    // 40·0.4 = 16 : 30·0.7 = 21.
    expect(one('60')).toEqual(['later-bench-copy']);
    // 25 : 30 times 1.72, the product of 90/80 … 85.5/80, is 1.43 : 1; any of the six turned makes it 0.97 : 1 or less.
    const six = Object.fromEntries(
      [90, 89, 88, 87, 86, 85.5].map((share, n) => [`t${n}`, [`${share}`, '80', '80', '80'] as const]),
    );
    const output = weigh(Object.keys(six).map(present), {}, handKnowledge(six, [25, 30, 25, 20]));
    expect(output.leading).toBe('period-intact');
    expect(output.wouldChange.map(({ findings }) => findings.map(({ sign }) => sign))).toEqual([
      ['t0'],
      ['t1'],
      ['t2'],
      ['t3'],
      ['t4'],
    ]);
  });

  it('says no more than was tried where nothing would change it', () => {
    const sure = handKnowledge({ marked: ['60', '40', '40', '40'] }, [97, 1, 1, 1]);
    const output = weigh([present('marked')], {}, sure);
    expect(output.wouldChange).toEqual([]);
    expect(output.wouldChangeTried).toBe(
      'Had the finding come out otherwise, the same reading would still lead.',
    );
    expect(weigh([], {}, sure).wouldChangeTried).toBe(
      'There is no finding that could have come out otherwise.',
    );
    const named = ['two of the ten', 'three of the seven', 'four of the six', 'all five of the five'];
    for (const findings of [2, 3, 4, 5, 9])
      expect(triedWords(findings)).toBe(
        `No single finding, had it come out otherwise, would put another reading first; nor would ${named.slice(0, findings - 1).join(', ')} that would move it most.`,
      );
  });

  it('two findings where no single one would', () => {
    // 60 : 20 : 10 : 10, each sign 70 to 40: one turned 60·0.7·0.3 = 12.6 : 20·0.4·0.6 = 4.8; both 60·0.09 = 5.4 : 20·0.36 = 7.2.
    const two = handKnowledge({ a: ['70', '40', '40', '40'], b: ['70', '40', '40', '40'] }, [60, 20, 10, 10]);
    expect(weigh([present('a'), present('b')], {}, two).wouldChange).toEqual([
      {
        findings: ['a', 'b'].map((sign) => ({ sign, part: null, otherwise: 'not been there' })),
        to: 'later-bench-copy',
      },
    ]);
  });
});

describe('contradictions, worked by hand', () => {
  // Period work leads whatever is seen: 97 : 1 : 1 : 1.
  const jars = handKnowledge(
    {
      below: ['9.9', '60', '60', '60'],
      above: ['10.1', '60', '60', '60'],
      'hardly-eased': ['9', '26.9', '5', '5'],
      eased: ['9', '27.1', '5', '5'],
    },
    [97, 1, 1, 1],
  );
  const found = (sign: string) => weigh([present(sign)], {}, jars).contradictions;

  it('are findings less probable than 1 in 10 under the leading reading', () => {
    expect(found('below').map((each) => each.sign)).toEqual(['below']);
    expect(found('below')[0]?.share).toBeCloseTo(0.099, 9);
    expect(found('below')[0]?.question).toContain('about 10 in 100 would show this');
    expect(found('above')).toEqual([]);
  });

  it('are explained by what makes them at least three times as probable', () => {
    // Three times 9 in 100 is 27.
    expect(found('hardly-eased')[0]?.explanations).toEqual([]);
    expect(found('eased')[0]?.explanations.map((each) => each.id)).toEqual(['later-bench-copy']);
  });

  it('are asked about in the words of what was found, where, and how seldom', () => {
    // 99,970 : 10 : 10 : 10, so that period work leads whatever is seen.
    const known = handKnowledge(
      { rare: ['0.5', '60', '60', '60'], usual: ['95', '30', '30', '30'], some: ['4', '5', '5', '5'] },
      [99970, 10, 10, 10],
    );
    const question = (finding: CaseToWeigh['findings'][number]) =>
      weigh([finding], {}, known).contradictions[0]?.question;
    const leads = 'if it were a period piece, substantially intact, and all else as found';
    expect(question(present('rare'))).toBe(
      `“Sign rare” was seen on the piece as a whole: ${leads}, fewer than 1 in 100 would show this. What explains it?`,
    );
    expect(question({ ...present('some'), part: 'lid' })).toBe(
      `“Sign some” was seen on the lid: ${leads}, about 4 in 100 would show this. What explains it?`,
    );
    // 5 in 100 period pieces do not show it.
    expect(question({ sign: 'usual', state: 'absent' })).toBe(
      `“Sign usual” was looked for and not seen on the piece as a whole: ${leads}, about 5 in 100 would show this. What explains it?`,
    );
    const several = weigh([present('some'), present('rare'), { sign: 'usual', state: 'absent' }], {}, known);
    expect(
      several.contradictions.map(({ sign, part, state, explained }) => [sign, part, state, explained]),
    ).toEqual([
      ['rare', null, 'present', false],
      ['some', null, 'present', false],
      ['usual', null, 'absent', false],
    ]);
    expect(several.contradictions[0]).not.toHaveProperty('measured');
  });

  it('name every reading that would explain them, the one that does so best first', () => {
    // All three show it as often: in which order they are named is left open.
    const named = found('below')[0]?.explanations.map(({ kind, words, share }) => [
      kind,
      words,
      Math.round(100 * share),
    ]);
    expect(named?.toSorted()).toEqual([
      ['reading', 'If it were a later copy made by hand.', 60],
      ['reading', 'If it were a later copy made by machine.', 60],
      ['reading', 'If it were a piece made or altered to pass as older.', 60],
    ]);
    const graded = handKnowledge({ g: ['5', '20', '60', '14'] }, [9970, 10, 10, 10]);
    // Three times 5 is 15: the last is not named.
    expect(weigh([present('g')], {}, graded).contradictions[0]?.explanations.map(({ id }) => id)).toEqual([
      'later-machine-copy',
      'later-bench-copy',
    ]);
    // Three times 2 is 6, but what is not 10 in 100 probable explains nothing.
    const low = handKnowledge({ g: ['2', '9.9', '10.1', '1'] }, [9970, 10, 10, 10]);
    expect(weigh([present('g')], {}, low).contradictions[0]?.explanations.map(({ id }) => id)).toEqual([
      'later-machine-copy',
    ]);
  });

  it('are told of a measurement in its own words', () => {
    // 9 in 100 show it, measured 99 to 1: 0.99·(0.09 + 0.91/99) = 0.0982, about 10 times less than at best.
    const likelihoods = { present: 99, absent: 1 };
    const [jar] = weigh([{ ...present('eased'), likelihoods }], {}, jars).contradictions;
    expect(jar?.measured).toBe(true);
    expect(jar?.question).toContain('is about 10 times less probable for a period piece');
  });
});

describe('what the figures and the shown probabilities come to', () => {
  it('moves the leading reading over the range of each figure of the weightiest findings', () => {
    // Period shows it 80 to 95 in 100: 0.4·0.8 = 0.32 and 0.38 beside 0.17. The others have no range.
    const output = weigh([present('marked')]);
    expect(output.sensitivity[0]?.figure).toBe('Sign marked: period');
    expect(output.sensitivity[0]?.low).toBeCloseTo(0.32 / 0.49, 9);
    expect(output.sensitivity[0]?.high).toBeCloseTo(0.38 / 0.55, 9);
    expect(output.sensitivity[1]?.high).toBeCloseTo(output.sensitivity[1]?.low ?? Number.NaN, 12);
  });

  it('leaves the sign’s own figures out where its cause was measured', () => {
    const likelihoods = { period: 1, 'bench-copy': 0.5, 'machine-copy': 0.1, 'to-deceive': 0.1 };
    expect(weigh([{ ...present('marked'), likelihoods }]).sensitivity).toEqual([]);
  });

  it('shows no probability above 999 or below 1 in 1000', () => {
    // 9999 : 1 : 0.1 : 0.01 before and the same after a sign that all show alike.
    const sure = handKnowledge({ alike: ['50', '50', '50', '50'] }, [9999, 1, 0.1, 0.01]);
    const { readings, byStartingOdds } = weigh([present('alike')], {}, sure);
    expect(readings[0]?.probability).toBe(0.999);
    expect(readings.at(-1)?.probability).toBe(0.001);
    expect(byStartingOdds[0]?.probabilities['period-intact']).toBe(0.999);
  });
});
