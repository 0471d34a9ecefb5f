import { purposeNames } from '../../engagement/purposeNames.ts';
import { listed } from '../../ground/words.ts';
import { dayWords } from '../../units/days.ts';
import { formatYears } from '../../units/years.ts';
import type { Section } from '../opinionDocument.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { paragraphs } from '../wording.ts';

/** The job as it was taken on: asked by whom, for what, believed to be what, relied on by whom; and what was not stated. */
export function engagementSection({ piece }: OpinionMaterial): Section {
  const { engagement, claim } = piece;
  const day = (value: string | undefined) => (value === undefined ? '' : dayWords(value));
  const said = [
    claim.period === undefined ? '' : `of ${formatYears(claim.period)}`,
    (claim.place ?? '').trim() === '' ? '' : `from ${claim.place?.trim()}`,
    (claim.maker ?? '').trim() === '' ? '' : `by ${claim.maker?.trim()}`,
  ].filter((each) => each !== '');
  const asked = [
    { name: 'Client', words: [engagement.client, engagement.clientAddress] },
    { name: 'Owner', words: [engagement.owner] },
    {
      name: 'Intended use',
      words: [engagement.purpose === undefined ? '' : purposeNames[engagement.purpose]],
    },
    { name: 'The question', words: paragraphs(engagement.question) },
    { name: 'What is believed', words: paragraphs(engagement.belief) },
    { name: 'Said to be', words: [said.join(', ')] },
    { name: 'Background told', words: paragraphs(engagement.background) },
    { name: 'Intended users', words: paragraphs(engagement.mayRely) },
    { name: 'Asked on', words: [day(engagement.askedOn)] },
    { name: 'Examined on', words: [day(engagement.examinedOn)] },
    { name: 'Examined at', words: [engagement.examinedAt] },
    { name: 'Effective date', words: [day(engagement.effectiveOn)] },
    { name: 'What the owner allowed', words: paragraphs(engagement.leave) },
    { name: 'Fee', words: paragraphs(engagement.fee) },
    { name: 'Interest of the examiner', words: paragraphs(engagement.interest) },
    {
      name: 'Examiner',
      words: [engagement.examiner, engagement.examinerQualification, engagement.examinerAddress],
    },
  ].map(({ name, words }) => ({
    name,
    words: words.map((each) => each.trim()).filter((each) => each !== ''),
  }));
  const blank = asked.filter(({ words }) => words.length === 0).map(({ name }) => name.toLowerCase());
  return {
    id: 'engagement',
    title: 'The engagement',
    appendix: true,
    blocks: [
      ...(blank.length === asked.length
        ? []
        : [{ kind: 'facts', rows: asked.filter(({ words }) => words.length > 0) } as const]),
      ...(blank.length === 0
        ? []
        : [{ kind: 'paragraph', as: 'note', words: `Not stated: ${listed(blank)}.` } as const]),
    ],
  };
}
