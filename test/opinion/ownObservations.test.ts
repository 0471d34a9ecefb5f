import { beforeAll, expect, it } from 'vitest';
import { smallKnowledge } from '../../src/evidence/testing/smallKnowledge.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import type { OpinionDocument } from '../../src/opinion/opinionDocument.ts';
import type { Observation } from '../../src/piece/observation.ts';
import type { Piece } from '../../src/piece/piece.ts';
import { emptyPiece, opinionMaker, textsOf } from '../kits/opinions.ts';

const observation: Observation = {
  id: 'scribe',
  words: 'A second scribe line that was never cut to.',
  part: 'rail',
  expected: {
    original: 'often',
    repaired: 'seldom',
    altered: 'seldom',
    married: 'seldom',
    copied: 'hardly ever',
    faked: 'hardly ever',
  },
  photos: [],
};
const known: { knowledge: Knowledge; opinionOn: ReturnType<typeof opinionMaker> } = {} as never;
beforeAll(() => {
  known.knowledge = smallKnowledge();
  known.opinionOn = opinionMaker(known.knowledge);
});

const bench = (more: Partial<Piece>) => emptyPiece({ form: 'bench', ...more });
const finding = (sign: string, part: string) =>
  ({
    id: `${sign}@${part}`,
    sign,
    part,
    state: 'present',
    sure: 'plain',
    inPhotoOnly: false,
    words: '',
    photos: [],
  }) as const;

function textIn(document: OpinionDocument, id: string): string {
  return textsOf(document.sections.find((each) => each.id === id)).join('\n');
}

it('prints an observation among the findings and the reasons, marked as the examiner’s own both times', () => {
  const opinion = known.opinionOn(bench({ observations: { scribe: observation } }));
  const findings = textIn(opinion, 'findings');
  expect(findings).toContain('A second scribe line that was never cut to. (Examiner’s own.)');
  expect(findings).toContain(
    'Often if original; seldom if repaired, altered or married; hardly ever if a later copy or made to pass as older.',
  );
  const weights = textIn(opinion, 'weights');
  expect(weights).toContain('The examiner’s own observation “A second scribe line that was never cut to”');
  expect(weights).toContain('counts at most 10 to 1');
  expect(textIn(opinion, 'limits')).toContain('1 observation is the examiner’s own');
  expect(textIn(opinion, 'figures')).toContain('Nearly always');
});

it('prints what was stated in looking the whole over, weighed while nothing tells against it and only then', () => {
  const notWeighed = 'This is not weighed';
  const alone = known.opinionOn(bench({ lookedOver: true }));
  expect(textIn(alone, 'findings')).toContain('the whole was looked over for mends');
  expect(textIn(alone, 'findings')).not.toContain(notWeighed);
  expect(textIn(alone, 'weights')).toContain('The examiner’s own statement that nothing later was found');
  const mended = known.opinionOn(
    bench({ lookedOver: true, findings: { cuff: finding('cuff', 'leg-left') as never } }),
  );
  expect(textIn(mended, 'findings')).toContain(notWeighed);
  expect(textIn(mended, 'weights')).not.toContain('own statement that nothing later was found');
});

it('tells the making before the condition and both before the seven readings', () => {
  const opinion = known.opinionOn(bench({ observations: { scribe: observation } }));
  const says = textIn(opinion, 'reasons');
  const at = [
    'How it came to be.',
    'Its condition, if it is of the period',
    'the first of the seven readings',
  ].map((words) => says.indexOf(words));
  expect(at.every((place, index) => place > (at[index - 1] ?? -1))).toBe(true);
  expect(says).toContain('From even starting odds, left as they are, and these findings');
});

it('prints no probability for an answer that the form leaves no way to', () => {
  const form = known.knowledge.forms.bench;
  if (form === undefined) throw new Error('no bench');
  const alterations = form.alterations.filter((id) => known.knowledge.alterations[id]?.class !== 'make-up');
  const knowledge = { ...known.knowledge, forms: { bench: { ...form, alterations } } };
  const rows = (of: Knowledge) =>
    opinionMaker(of)(bench({ observations: { scribe: observation } }))
      .sections.find(({ id }) => id === 'readings')
      ?.blocks.flatMap((block) => (block.kind === 'table' ? block.groups.flatMap((group) => group.rows) : []))
      .filter(([name]) => name === 'Married, or assembled from old parts');
  expect(rows(knowledge)).toEqual(
    Array.from({ length: 2 }, () => ['Married, or assembled from old parts', 'not considered', '–', '–']),
  );
  expect(rows(known.knowledge)?.flat()).not.toContain('not considered');
});
