import { z } from 'zod';
import { type Observation, observation } from '../../../piece/observation.ts';
import { expectedAtFirst } from '../../../piece/observationWords.ts';
import { keep, names, readKeptAs } from '../../drawer/drawer.ts';

/** An observation as it is being written: it may have no words yet. */
export type ObservationDraft = Pick<Observation, 'words' | 'part' | 'expected'>;

const draftShape = observation.pick({ part: true, expected: true }).extend({ words: z.string() });

/** A blank one on a part, or on the whole piece. */
export function blankObservation(part: string | undefined): ObservationDraft {
  return { words: '', expected: expectedAtFirst, ...(part === undefined ? {} : { part }) };
}

/** The observation of a piece that was being written when the page was left; nothing where it has no words. */
export function begunObservation(piece: string, store?: Storage): ObservationDraft | undefined {
  const read = readKeptAs(names.observation(piece), draftShape, store);
  return read?.words.trim() === '' ? undefined : read;
}

/** Keeps an observation as it is being written, letter by letter; without one, lets go of what was kept. */
export function keepObservation(piece: string, draft: ObservationDraft | undefined, store?: Storage): void {
  keep(names.observation(piece), draft && JSON.stringify(draft), store);
}
