import type { Json } from '../../../piece/event.ts';
import type { Observation } from '../../../piece/observation.ts';
import type { Act } from '../answerSign.ts';

/** The act of recording an observation of one's own, or of changing one: the same id is replaced. */
export function recordObservation({ part, ...told }: Observation): Act {
  const to = { ...told, words: told.words.trim(), ...(part === undefined ? {} : { part }) };
  return { kind: 'observation-recorded', changes: [{ path: ['observations', told.id], to: to as Json }] };
}

/** The act of taking an observation back; undo brings it again. */
export function withdrawObservation(id: string): Act {
  return { kind: 'observation-withdrawn', changes: [{ path: ['observations', id] }] };
}

/** The act of stating that the whole was looked over and nothing later found, or of taking that back. */
export function stateLookedOver(lookedOver: boolean): Act {
  return { kind: 'looked-over', changes: [{ path: ['lookedOver'], to: lookedOver }] };
}
