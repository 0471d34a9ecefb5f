import type { Form, FormPart, Knowledge } from '../../knowledge/schema.ts';
import type { Piece } from '../../piece/piece.ts';
import type { Weighing } from '../../weighing/weighing.ts';

/** What every section of the readings leans on. */
export type ReadingsContext = {
  piece: Piece;
  readOnly: boolean;
  knowledge: Knowledge;
  form: Form;
  parts: FormPart[];
  weighing: Weighing;
};

/** The name of a sign, or its id where the knowledge no longer has it. */
export function signName(knowledge: Knowledge, sign: string): string {
  return knowledge.signs[sign]?.name ?? sign;
}

/** Whether anything was looked at that carries weight. */
export function wasLooked({ weights, observations }: Pick<Weighing, 'weights' | 'observations'>): boolean {
  return weights.length + observations.length > 0;
}
