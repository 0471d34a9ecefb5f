import { z } from 'zod';
import { type Observation, observation } from '../../../piece/observation.ts';
import { expectedAtFirst } from '../../../piece/observationWords.ts';
import { textStore } from '../../fields/keptText.ts';

/** An observation as it is being written: it may have no words yet. */
export type ObservationDraft = Pick<Observation, 'words' | 'part' | 'expected'>;

const draftShape = observation.pick({ part: true, expected: true }).extend({ words: z.string() });

/** A blank one on a part, or on the whole piece. */
export function blankObservation(part: string | undefined): ObservationDraft {
  return { words: '', expected: expectedAtFirst, ...(part === undefined ? {} : { part }) };
}

/** The observation of a piece that was being written when the page was left; nothing where it has no words. */
export function begunObservation(piece: string, store = textStore()): ObservationDraft | undefined {
  try {
    const read = draftShape.safeParse(JSON.parse(store?.getItem(keyOf(piece)) ?? 'null'));
    return read.success && read.data.words.trim() !== '' ? read.data : undefined;
  } catch {
    return undefined;
  }
}

/** Keeps an observation as it is being written, letter by letter; without one, lets go of what was kept. */
export function keepObservation(
  piece: string,
  draft: ObservationDraft | undefined,
  store = textStore(),
): void {
  try {
    if (draft === undefined) store?.removeItem(keyOf(piece));
    else store?.setItem(keyOf(piece), JSON.stringify(draft));
  } catch {
    // The store is shut or full: what is written lasts as long as the page.
  }
}

function keyOf(piece: string): string {
  return `underside.observation.${piece}`;
}
