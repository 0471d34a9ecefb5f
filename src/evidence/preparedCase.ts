import type { KnownOfPiece } from '../knowledge/canApply.ts';
import type { Figure } from '../knowledge/figureSchema.ts';
import type { Alteration, Form, Knowledge, Shop, Sign } from '../knowledge/schema.ts';
import type { Sureness } from '../piece/finding.ts';
import type { ObservationToWeigh } from './caseToWeigh.ts';
import type { Report } from './groupLikelihood.ts';
import { binOf, type YearAxis } from './yearAxis.ts';

/** A finding that carries weight, tied to the sign and part it is of. */
export type Look = {
  key: string;
  sign: Sign;
  /** A part's id, or `whole`. */
  part: string;
  state: 'present' | 'absent';
  sure: Sureness;
  /** How common the sign is altogether, worked out once for all redraws. */
  usual?: number;
  /** Where it was measured: the report of the measurement in the place of the examiner's. */
  measured?: Report;
  /** Where the measurement speaks of the sign’s cause: how probable it is under each state, in proportion to the best. */
  byState?: Readonly<Record<string, number>>;
  /** On how many parts the same was found, if on several: together they are fewer witnesses (`alikeLooks.ts`). */
  alike?: number;
};

/** A part as the model has it. `whole` stands for the piece as a whole: always of the making. */
export type ModelPart = {
  id: string;
  kind: string;
  name: string;
  structural: boolean;
  renewed: Figure | undefined;
};

/** A finding left out of the weighing, and why. */
export type Ignored = { sign: string; part: string | null; why: string };

/** A case with its ids looked up: all that the model is composed from. */
export type PreparedCase = {
  knowledge: Knowledge;
  form: Form;
  parts: ModelPart[];
  alterations: Alteration[];
  shops: Shop[];
  /** Looks that carry weight, one per sign and part. */
  looks: Look[];
  ignored: Ignored[];
  observations: readonly ObservationToWeigh[];
  /** True where the piece was looked over for mends, later parts and changes, and none was found. */
  lookedOver: boolean;
  span: readonly [number, number];
  place: string;
  odds: string;
  /** What was said of its features and of how its parts are made. */
  known: KnownOfPiece;
  photoOnly: boolean;
  axis: YearAxis;
  yearNow: number;
};

/** The bin of the current year, the last that anything can have been made in. */
export function nowBin(prepared: PreparedCase): number {
  return binOf(prepared.axis, prepared.yearNow);
}
