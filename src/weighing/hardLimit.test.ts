import { describe, expect, it } from 'vitest';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import type { Look } from '../evidence/preparedCase.ts';
import { handKnowledge } from '../evidence/testing/handKnowledge.ts';
import { type ReadingId, readingIds } from '../piece/readings.ts';
import type { Evaluation } from '../summation/evaluation.ts';
import type { Posterior } from '../summation/readingPosterior.ts';
import { hardLimit } from './hardLimit.ts';
import { weighCase } from './weighCase.ts';

// Of 100 pieces of each making, how many show a sign; a reading whose making never shows what was seen has nothing left.
const knowledge = handKnowledge({
  only: ['50', '0', '0', '0'],
  alone: ['40', '0', '0', '0'],
  sole: ['30', '0', '0', '0'],
  'all-later': ['50', '100', '100', '100'],
  'no-copies': ['50', '0', '0', '50'],
  'no-fakes': ['50', '50', '50', '0'],
  marked: ['90', '30', '10', '60'],
});
const rest = 'any reading but a period piece, substantially intact';

function weigh(findings: CaseToWeigh['findings']) {
  const result = weighCase({ form: 'box', mode: 'in-hand', draws: 0, findings }, knowledge, {
    yearNow: 2026,
  });
  if (!result.ok) throw new Error(result.faults.map((each) => each.message).join(' '));
  return result.output;
}

const present = (sign: string, part?: string) =>
  ({ sign, state: 'present', ...(part === undefined ? {} : { part }) }) as const;
const limitOf = (output: ReturnType<typeof weigh>, sign: string) =>
  output.weights.find((each) => each.sign === sign)?.limit?.words;

describe('what leaves a side nothing is named', () => {
  it('one finding on a part, seen or not there', () => {
    expect(limitOf(weigh([present('only', 'lid')]), 'only')).toBe(
      `“Sign only” on the lid leaves nothing of ${rest}: no number can be put on that.`,
    );
    expect(limitOf(weigh([{ ...present('all-later', 'board'), state: 'absent' }]), 'all-later')).toBe(
      `“Sign all-later” not there on the board leaves nothing of ${rest}: no number can be put on that.`,
    );
  });

  it('several findings, each of which would by itself', () => {
    const two = weigh([present('only'), present('alone', 'lid')]);
    expect(limitOf(two, 'only')).toBe(
      `“Sign alone” on the lid leaves nothing of ${rest}, with or without this: it can’t be weighed beside that.`,
    );
    expect(two.reasonGroups[0]?.limit).toEqual({
      leavesNothingOf: 'others',
      words: `“Sign only” on the piece as a whole and “Sign alone” on the lid leave nothing of ${rest}: no number can be put on that.`,
    });
    const three = weigh([present('only'), present('alone'), present('sole'), present('marked')]);
    const all = ['only', 'alone', 'sole'].map((sign) => `“Sign ${sign}” on the piece as a whole`);
    expect(limitOf(three, 'marked')).toBe(
      `${all[0]}, ${all[1]} and ${all[2]} leave nothing of ${rest}, with or without this: it can’t be weighed beside that.`,
    );
  });

  it('findings that do so only together', () => {
    const output = weigh([present('no-copies'), present('no-fakes'), present('marked')]);
    expect(limitOf(output, 'marked')).toBe(
      `The other findings together leave nothing of ${rest}, with or without this: it can’t be weighed beside that.`,
    );
    for (const sign of ['no-copies', 'no-fakes'])
      expect(limitOf(output, sign)).toBe(
        `With the other findings this leaves nothing of ${rest}: no number can be put on that.`,
      );
    expect(output.altogether.limit?.words).toBe(
      `With the other findings this leaves nothing of ${rest}: no number can be put on that.`,
    );
  });
});

describe('which side has nothing left', () => {
  const posterior = (...ids: ReadingId[]): Posterior => ({
    readings: Object.fromEntries(
      readingIds.map((id) => [id, ids.includes(id) ? 0.5 : 0]),
    ) as Posterior['readings'],
    total: 1,
    log: 0,
  });
  const odds = { name: 'Typed', period: 40, 'bench-copy': 30, 'machine-copy': 0, 'to-deceive': 10 };
  const evaluation = (left: Posterior, used = 'typed') =>
    ({
      posterior: left,
      model: {
        layout: {
          prepared: {
            odds: used,
            knowledge: { making: { startingOdds: { typed: odds } } },
            parts: [
              { id: 'whole', name: 'whole' },
              { id: 'lid', name: 'lid' },
            ],
          },
        },
      },
    }) as unknown as Evaluation;
  const look = (part: string, state = 'present') =>
    ({ part, state, sign: { name: `Sign of the ${part}` } }) as unknown as Look;
  const all = posterior(...readingIds);
  const later = posterior('later-bench-copy', 'made-to-deceive');

  it('is the leading reading, the others, or both', () => {
    const of = (left: Posterior) => hardLimit(evaluation(left), 'period-intact', [], all, all, []);
    expect(of(later)).toEqual({
      leavesNothingOf: 'leading',
      words:
        'With the other findings this leaves nothing of a period piece, substantially intact: no number can be put on that.',
    });
    expect(of(posterior('period-intact')).leavesNothingOf).toBe('others');
    expect(of(posterior()).leavesNothingOf).toBe('either');
    expect(of(posterior()).words).toContain('leaves nothing of any reading:');
  });

  it('is blamed on the findings asked about where they do it by themselves, else on the others that do', () => {
    const [mine, theirs] = [look('whole'), look('lid', 'absent')];
    const by = (...those: [Look, Posterior][]) =>
      hardLimit(
        evaluation(later),
        'period-intact',
        those.map(([each, byItself]) => ({ look: each, byItself })),
        all,
        later,
        [mine],
      ).words;
    const nothing = 'nothing of a period piece, substantially intact';
    expect(by([mine, later], [theirs, all])).toBe(
      `“Sign of the whole” on the piece as a whole leaves ${nothing}: no number can be put on that.`,
    );
    expect(by([mine, all], [theirs, later])).toBe(
      `“Sign of the lid” not there on the lid leaves ${nothing}, with or without this: it can’t be weighed beside that.`,
    );
    expect(by([mine, later], [theirs, later])).toBe(by([mine, all], [theirs, later]));
    expect(by([mine, all], [theirs, all])).toBe(
      `The other findings together leave ${nothing}, with or without this: it can’t be weighed beside that.`,
    );
  });

  it('had nothing before anything was seen, for the odds or for what was claimed', () => {
    const beforehand = (left: Posterior, leading: ReadingId, used?: string) =>
      hardLimit(evaluation(left, used), leading, [], left, left, []).words;
    const machine = posterior(...readingIds.filter((id) => id !== 'later-machine-copy'));
    // The odds give machine copies nothing.
    expect(beforehand(machine, 'later-machine-copy')).toBe(
      'The starting odds “Typed” and the form leave nothing of a later copy made by machine, before anything was seen.',
    );
    // They give bench copies something: it is the claim or the form that does not.
    const bench = 'The form, the starting odds and what is claimed leave nothing of';
    expect(beforehand(posterior('later-bench-copy'), 'later-bench-copy')).toBe(
      `${bench} any reading but a later copy made by hand, before anything was seen.`,
    );
    expect(beforehand(machine, 'later-machine-copy', 'rosy')).toBe(
      `${bench} a later copy made by machine, before anything was seen.`,
    );
  });
});
