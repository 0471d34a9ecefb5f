import type { Look } from '../evidence/preparedCase.ts';
import type { Evaluation } from './evaluation.ts';
import { type PartJoints, posteriorWithLook } from './partJoints.ts';
import { posteriorAfter } from './posteriorAfter.ts';
import type { Posterior } from './readingPosterior.ts';

/** The posterior with one more look, by the part's joints where they tell it and by summing its clique anew where not. */
export function posteriorSeen(evaluation: Evaluation, joints: PartJoints, look: Look): Posterior {
  return posteriorWithLook(joints, look) ?? posteriorAfter(evaluation, look, [...evaluation.looks, look]);
}
