import { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import type { Wood, WoodMovement } from '../knowledge/woodSchema.ts';
import type { CalculationContext, CalculationResult } from './define.ts';

const ringAngleDeg = z.number().min(0).max(90);

/** How a board was cut: in a word, or by the angle of its rings to its width, 0 (flat-sawn) to 90 (quarter-sawn). */
const cut = z.union([z.enum(['flat-sawn', 'quarter-sawn']), ringAngleDeg, z.strictObject({ ringAngleDeg })]);
export type Cut = z.infer<typeof cut>;

/** The fields that choose a wood and its cut. */
export const woodFields = {
  wood: z.string().min(1),
  cut: cut.optional(),
  ringAngleDeg: ringAngleDeg.optional(),
};

/** The angle of the rings to the width, in radians; undefined where neither field says it. */
export function ringAngleRad(input: {
  cut?: Cut | undefined;
  ringAngleDeg?: number | undefined;
}): number | undefined {
  const degrees = degreesOf(input.cut) ?? input.ringAngleDeg;
  return degrees === undefined ? undefined : (degrees * Math.PI) / 180;
}

function degreesOf(chosen: Cut | undefined): number | undefined {
  if (chosen === 'flat-sawn') return 0;
  if (chosen === 'quarter-sawn') return 90;
  return typeof chosen === 'object' ? chosen.ringAngleDeg : chosen;
}

/** What is wrong where no cut is given. */
export const cutMissing: Fault = {
  code: 'wood.cut-missing',
  path: 'cut',
  message:
    'Say how the wood was cut: flat-sawn, quarter-sawn, or the angle of its rings to the width as ringAngleDeg, 0 to 90.',
};

/** A wood of the knowledge files by its id, with the figures that hold for all woods. */
export function chosenWood(
  id: string,
  { knowledge }: CalculationContext,
): CalculationResult<{ wood: Wood; movement: WoodMovement }> {
  const wood = knowledge.woods[id];
  if (wood === undefined) return { ok: false, faults: [unknownWood(id, Object.values(knowledge.woods))] };
  const movement = knowledge.woodMovement;
  if (movement === undefined) return { ok: false, faults: [movementMissing] };
  return { ok: true, output: { wood, movement } };
}

/** What is wrong where the figures that hold for all woods are not there. */
export const movementMissing: Fault = {
  code: 'wood.movement-file-missing',
  path: '',
  message: 'The knowledge folder has no wood-movement.yaml: put it back, for the moistures stand there.',
};

function unknownWood(id: string, woods: readonly Wood[]): Fault {
  const wanted = wordsOf(id);
  const near = woods
    .map((wood) => ({
      wood,
      shared: wordsOf([wood.id, wood.name, wood.botanical, ...wood.otherNames].join(' ')),
    }))
    .map(({ wood, shared }) => ({
      id: wood.id,
      count: wanted.filter((word) => shared.includes(word)).length,
    }))
    .filter((each) => each.count > 0)
    .sort((a, b) => b.count - a.count || (a.id < b.id ? -1 : 1))
    .slice(0, 6)
    .map((each) => each.id);
  const advice =
    near.length > 0
      ? `take one of ${near.join(', ')}`
      : 'take an id from woods.yaml, or add the wood there with its source';
  return { code: 'wood.unknown', path: 'wood', message: `There is no wood “${id}” in the list: ${advice}.` };
}

function wordsOf(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter((word) => word.length > 2);
}
