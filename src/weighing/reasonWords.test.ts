import { expect, it } from 'vitest';
import { reasonInWords, speaksFor } from './reasonWords.ts';
import { verbalScale } from './verbalScale.ts';

const finding = { sign: 'peg', part: null } as never;
const named = { finding: () => '“Peg” on the rail', own: (id: string) => `Your own observation ${id}` };
const group = {
  cause: { kind: 'alteration', id: 'married', name: 'Upper and lower part married' },
  findings: Array.from({ length: 5 }, () => finding),
  withinWhole: 32,
  againstRival: 30,
  words: '',
} as const;

it('says of findings of one cause what they do together, and for which reading', () => {
  expect(reasonInWords({ ...group, findings: [...group.findings] }, 'made-up', named)).toMatch(
    /^Upper and lower part married: five findings together speak strongly for .*old parts$/,
  );
  expect(reasonInWords({ ...group, findings: [finding], withinWhole: -12 }, 'made-up', named)).toMatch(
    /speak moderately for another reading$/,
  );
});

it('says of one finding what it does with all else taken in', () => {
  const one = { ...group, cause: undefined, findings: [finding], withinWhole: 5 };
  expect(reasonInWords(one, 'period-intact', named)).toBe(
    '“Peg” on the rail speaks weakly for a period piece, substantially intact, with all else taken in',
  );
});

it('gives the reason and no number where a limit leaves one side nothing', () => {
  const limit = { leavesNothingOf: 'others' as const, words: 'The claim leaves the others nothing.' };
  const one = { ...group, cause: undefined, findings: [finding], withinWhole: null, limit };
  expect(reasonInWords(one, 'made-up', named)).toBe(
    '“Peg” on the rail has no number: the claim leaves the others nothing',
  );
  const together = { ...group, findings: [finding, finding], withinWhole: null };
  expect(
    reasonInWords({ ...together, limit: { ...limit, words: 'No. 2 leaves nothing' } }, 'made-up', named),
  ).toBe('Upper and lower part married: two findings together have no number: no. 2 leaves nothing');
  expect(reasonInWords(together, 'made-up', named)).toMatch(
    /have no number: a limit leaves one side nothing$/,
  );
});

it('counts findings in words up to ten, and beyond in figures', () => {
  const of = (count: number) =>
    reasonInWords({ ...group, findings: Array(count).fill(finding) }, 'made-up', named);
  expect(of(10)).toContain(': ten findings together');
  expect(of(11)).toContain(': 11 findings together');
});

it('uses the words of the printed scale for every band', () => {
  for (const band of verbalScale.bands.slice(1))
    expect(speaksFor(10 * Math.log10(band.fromRatio), 'a', 'b')).toBe(`speaks ${band.adverb} for a`);
  expect(speaksFor(-34, 'a', 'b')).toBe('speaks strongly for b');
  for (const little of [0.4, 3, -3])
    expect(speaksFor(little, 'a', 'b')).toBe('says too little either way to count as support');
  expect(speaksFor(3, 'a', 'b', true)).toBe('say too little either way to count as support');
});

it('names an observation of the examiner’s own as such', () => {
  const own = { ...group, cause: undefined, findings: [], own: 'one', withinWhole: 6 };
  expect(reasonInWords(own, 'period-repaired', named)).toBe(
    'Your own observation one speaks weakly for a period piece with later repairs, with all else taken in',
  );
});
