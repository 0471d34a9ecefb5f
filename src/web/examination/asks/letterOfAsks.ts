import type { PhotographsToAsk } from '../../../weighing/photographsToAsk.ts';

type Ask = PhotographsToAsk['asks'][number];

/**
 * A letter that asks the owner for photographs and answers, ready to be sent.
 *
 * @param what  the piece in a few words: “the armchair”
 * @param asks  what is asked for, in order
 */
export function letterOfAsks(what: string, asks: readonly Ask[]): string {
  const photographs = asks.filter((ask) => ask.kind === 'photograph');
  const answers = asks.filter((ask) => ask.kind === 'answer');
  const caution = (ask: Ask) => (ask.caution === undefined ? '' : ` (${ask.caution})`);
  const listed = (some: readonly Ask[], from: number) =>
    some.map((ask, index) => `${from + index}. ${ask.ask}${caution(ask)}`);
  return [
    `To say more about ${what} I need to see what the photographs so far do not show.`,
    ...(photographs.length === 0
      ? []
      : [
          'Please take these, and send the files as the camera made them, neither cropped nor as screen shots:',
          listed(photographs, 1).join('\n'),
        ]),
    ...(answers.length === 0
      ? []
      : ['And please tell me, as far as you know it:', listed(answers, photographs.length + 1).join('\n')]),
    'Leave out whatever would mean forcing, lifting alone or taking apart anything: an answer “could not be reached” helps too.',
    'An opinion from photographs says less than one with the piece in the hand, and it will say so.',
  ].join('\n\n');
}
