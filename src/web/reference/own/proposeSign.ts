import type { FormPart, Knowledge } from '../../../knowledge/schema.ts';
import type { Observation } from '../../../piece/observation.ts';
import { draftKey, keepDraft, readDraft } from './keptDraft.ts';
import { signFromObservation } from './signFromObservation.ts';

/** Begins a sign of one's own from an observation, for its sheet to open with; a sheet begun from it before is left as it is. */
export function proposeSign(
  observation: Observation,
  { parts, knowledge }: { parts: readonly FormPart[]; knowledge: Knowledge },
): void {
  const key = draftKey('sign', undefined, observation.id);
  if (readDraft(key) !== undefined) return;
  const kind = parts.find(({ id }) => id === observation.part)?.kind ?? 'whole';
  keepDraft(key, signFromObservation(observation, kind, knowledge.making));
}
