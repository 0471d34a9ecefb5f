import { signDrawingSvg } from '../drawing/signDrawingSvg.ts';
import { capital } from '../ground/words.ts';
import { basisWord } from '../knowledge/basisWord.ts';
import { figureNumbers } from '../knowledge/figuresOf.ts';
import { inSentence } from '../knowledge/inSentence.ts';
import type { Knowledge, Sign } from '../knowledge/schema.ts';
import { spanWords } from '../knowledge/spanWords.ts';
import { stateNames } from '../knowledge/stateNames.ts';
import { citedBy } from './citedBy.ts';
import { tellsOf } from './tellsOf.ts';
import { stopped } from './wording.ts';

/** One sign as the guide prints it. */
export type GuideEntry = {
  number: number;
  name: string;
  mine: boolean;
  look: string;
  caution: string;
  /** What it tells of, on which parts, how long it takes. */
  facts: string;
  mistakenFor: string;
  figures: string;
  works: string;
  drawings: { id: string; svg: string; alternative: string; caption: string }[];
};

type Around = {
  knowledge: Knowledge;
  number: number;
  numberOf: ReadonlyMap<string, number>;
  workNumbers: ReadonlyMap<string, number>;
  on: string;
};

/** A sign in the words and figures of the guide; another sign is named with its number where the guide has it. */
export function entryOfGuide(sign: Knowledge['signs'][string], around: Around): GuideEntry {
  const { knowledge, number, numberOf, workNumbers, on } = around;
  const others = sign.mistakenFor.map((other) => {
    const name = inSentence(knowledge.signs[other]?.name ?? other);
    return numberOf.has(other) ? `${name} (${numberOf.get(other)})` : name;
  });
  const works = [...new Set(citedBy(sign))]
    .flatMap((id) => workNumbers.get(id) ?? [])
    .toSorted((a, b) => a - b);
  return {
    number,
    name: sign.name,
    mine: sign.mine === true,
    look: sign.look,
    caution: sign.caution ?? '',
    facts: `Tells of ${tellsOf(sign, knowledge)}. On: ${on}. ${minutesWords(sign.minutes)}.`,
    mistakenFor: others.length === 0 ? '' : stopped(others.join('; ')),
    figures: figuresOfSign(sign),
    works: works.join(', '),
    drawings: printedDrawings(sign.id, knowledge),
  };
}

function figuresOfSign(sign: Sign): string {
  const { shows, span, basis } = sign;
  const rows = Object.entries(shows).map(([state, figure]) => {
    const { best, low, high } = figureNumbers(figure);
    const counted = figure.counts === undefined ? '' : ', counted';
    return `${inSentence(stateNames[state] ?? state)} ${best} (${low}–${high}${counted})`;
  });
  const word =
    basis === undefined ? '' : [basisWord(basis.by), basis.at ?? ''].filter((each) => each !== '').join(', ');
  const years = span === undefined ? '' : ` ${capital(spanWords(span))}.`;
  return `Of 100 show it: ${rows.join('; ')}${word === '' ? '' : `. Basis: ${word}`}.${years}`;
}

function minutesWords(minutes: number): string {
  if (minutes < 1) return 'Less than a minute';
  return minutes === 1 ? 'One minute' : `${minutes} minutes`;
}

/** The drawings of signs, ready to print. */
function printedDrawings(sign: string, { signDrawings }: Knowledge): GuideEntry['drawings'] {
  return Object.values(signDrawings ?? {})
    .filter((drawing) => drawing.signs.includes(sign))
    .map((drawing) => ({
      id: drawing.id,
      svg: signDrawingSvg(drawing),
      alternative: `${drawing.title}. ${drawing.what}`,
      caption: drawing.what,
    }));
}
