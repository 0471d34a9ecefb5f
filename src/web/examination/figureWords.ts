import { basisWord } from '../../knowledge/basisWord.ts';
import type { Figure } from '../../knowledge/figureSchema.ts';
import { groundsInWords } from '../../knowledge/groundsInWords.ts';
import { inSentence } from '../../knowledge/inSentence.ts';
import type { Cause, Knowledge, Sign } from '../../knowledge/schema.ts';
import { stateNames } from '../../knowledge/stateNames.ts';

/** One line of a sign's figures, as it is shown one touch below the words. */
export type FigureLine = { state: string; best: string; range: string; who: string };

/** The lines of a sign's figures: of 100 such parts, how many would show it, from what to what, and who says so. */
export function figureLines(sign: Sign, sources: Knowledge['sources']): FigureLine[] {
  return Object.entries(sign.shows).map(([state, figure]) => {
    const [best = '', range = ''] = figure.in100.split(', ');
    return { state: stateNames[state] ?? state, best, range, who: whoSays(figure, sign, sources) };
  });
}

/** What a sign tells of, in words. */
export function tellsOf(hangsOn: Cause, alterations: Knowledge['alterations']): string {
  if (hangsOn.startsWith('alteration/')) {
    const id = hangsOn.slice('alteration/'.length);
    return `whether this was done: ${inSentence(alterations[id]?.name ?? id)}`;
  }
  const words: Record<string, string> = {
    making: 'how the piece was made',
    year: 'when the piece was made',
    'part-year': 'when this part was made',
    origin: 'whether this part belongs',
    tooling: 'what it was worked with',
    ageing: 'whether it aged by itself',
    use: 'whether it was used',
  };
  return words[hangsOn] ?? hangsOn;
}

/** A work as it is cited in a line. */
export function citeShort(id: string, sources: Knowledge['sources']): string {
  const work = sources[id];
  if (work === undefined) return id;
  const names = work.author.map((one) => ('literal' in one ? one.literal : one.family));
  const who = names.length > 2 ? `${names[0]} and others` : names.join(' and ');
  return [who, work.title, work.issued === undefined ? '' : String(work.issued)]
    .filter((each) => each !== '')
    .join(', ');
}

function whoSays(figure: Figure, { basis }: Sign, sources: Knowledge['sources']): string {
  const says = (word: Word) =>
    [
      word.source === undefined ? '' : citeShort(word.source, sources),
      word.at ?? '',
      basisWord(word.by),
    ].filter((each) => each !== '');
  const own = [...says(figure), ...(figure.why === undefined ? [] : [figure.why])];
  const words = own.length > 0 || basis === undefined ? own : says(basis);
  const grounds = groundsInWords(figure);
  return [...(grounds === '' ? [] : [grounds]), ...words].join('; ') || 'no source given';
}

type Word = Pick<Figure, 'source' | 'at' | 'by'>;
