import { describe, expect, it } from 'vitest';
import type { CaseToWeigh } from '../evidence/caseToWeigh.ts';
import { handKnowledge } from '../evidence/testing/handKnowledge.ts';
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
