import { capital } from '../../../ground/words.ts';
import { inSentence } from '../../../knowledge/inSentence.ts';
import { causeStates, causes, type Knowledge } from '../../../knowledge/schema.ts';
import { tellsOf } from '../../examination/figureWords.ts';

/** Everything a sign can hang on, in plain words: the causes first, then each alteration. */
export function causesToChoose(alterations: Knowledge['alterations']): { id: string; name: string }[] {
  return [
    ...causes.map((id) => ({ id, name: capital(tellsOf(id, alterations)) })),
    ...Object.values(alterations).map(({ id, name }) => ({
      id: `alteration/${id}`,
      name: `Whether this was done: ${inSentence(name)}`,
    })),
  ];
}

/** The states a sign that hangs on this must give a figure for, and those it may. */
export function statesOf(hangsOn: unknown): { must: readonly string[]; may: readonly string[] } {
  const cause = typeof hangsOn === 'string' ? hangsOn.replace(/^alteration\/.*$/, 'alteration') : '';
  return { must: causeStates[cause] ?? [], may: cause === 'making' ? ['later'] : [] };
}

/** Whether what it hangs on is a matter of years, so that it needs a span. */
export function hangsOnYears(hangsOn: unknown): boolean {
  return hangsOn === 'year' || hangsOn === 'part-year';
}
