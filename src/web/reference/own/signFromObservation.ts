import { figureNumbers } from '../../../knowledge/figuresOf.ts';
import type { Making } from '../../../knowledge/schema.ts';
import type { ExpectedWord, Observation, PieceHistory } from '../../../piece/observation.ts';
import { shortWords } from '../../../piece/observationWords.ts';
import type { Draft } from './draft.ts';

/** The states of a cause, each with the kind of piece whose word gives its figure. */
const figuresFrom: Record<'making' | 'origin', Record<string, PieceHistory>> = {
  making: {
    period: 'original',
    'bench-copy': 'copied',
    'machine-copy': 'copied',
    'to-deceive': 'faked',
  },
  origin: { 'of-the-making': 'original', repair: 'repaired', improve: 'altered', 'other-old': 'married' },
};

/**
 * What of a sign of one's own can be taken from an observation: its words, where it is, and, where the examiner's words part the
 * kinds of piece by one cause alone, that cause with the figures the words stand for. The rest is left to be filled in.
 *
 * @param kind  the kind of part it was seen on, `whole` for the piece as a whole
 */
export function signFromObservation(
  { words, expected }: Pick<Observation, 'words' | 'expected'>,
  kind: string,
  { expected: figures }: Pick<Making, 'expected'>,
): Draft {
  const text = words.trim();
  const cause = causeOf(expected);
  const figure = (word: ExpectedWord) => {
    const { best, low, high } = figureNumbers(figures[word]);
    return `${best}, ${low}–${high}`;
  };
  return {
    name: shortWords(text, 60).replace(/ …$/, ''),
    look: /[.?!]$/.test(text) ? text : `${text}.`,
    on: [kind],
    basis: { by: 'judgement' },
    ...(cause === undefined
      ? {}
      : {
          hangsOn: cause,
          shows: Object.fromEntries(
            Object.entries(figuresFrom[cause]).map(([state, history]) => [state, figure(expected[history])]),
          ),
        }),
  };
}

/** Whether it parts period work from later work, or parts of the making from others; undefined where it does both, or neither. */
function causeOf(expected: Observation['expected']): 'making' | 'origin' | undefined {
  const differs = (...kinds: PieceHistory[]) => kinds.some((each) => expected[each] !== expected.original);
  const byMaking = differs('copied', 'faked');
  const byOrigin = differs('repaired', 'altered', 'married');
  if (byMaking === byOrigin) return undefined;
  return byMaking ? 'making' : 'origin';
}
