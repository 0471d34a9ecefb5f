import { ownNamesOnly } from '../../knowledge/ownNamesOnly.ts';
import type { Knowledge } from '../../knowledge/schema.ts';
import { answerWeigher } from './answerWeigher.ts';
import type { FromWeigher, ToWeigher } from './messages.ts';

/** Weighs off the page's own thread, so that a finger on the drawing is never kept waiting. */
const desk: { known: { knowledge: Knowledge; yearNow: number } | undefined } = { known: undefined };
const page = self as unknown as DedicatedWorkerGlobalScope;

page.addEventListener('message', ({ data }: MessageEvent<ToWeigher>) => {
  if (data.say === 'know') desk.known = { knowledge: ownNamesOnly(data.knowledge), yearNow: data.yearNow };
  else if (desk.known !== undefined)
    answerWeigher(data.ask, data.caseToWeigh, desk.known, (answer: FromWeigher) => page.postMessage(answer));
});
