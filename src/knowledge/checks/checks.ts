import { campaignsFit } from './campaignsFit.ts';
import type { Check } from './check.ts';
import { conditionsMet } from './conditionsMet.ts';
import { countsFit } from './countsFit.ts';
import { entriesSorted } from './entriesSorted.ts';
import { figuresInOrder } from './figuresInOrder.ts';
import { figuresSourced } from './figuresSourced.ts';
import { fileNames } from './fileNames.ts';
import { filesShort } from './filesShort.ts';
import { habitsFit } from './habitsFit.ts';
import { idsUnique } from './idsUnique.ts';
import { judgedFit } from './judgedFit.ts';
import { makingComplete } from './makingComplete.ts';
import { measuresInOrder } from './measuresInOrder.ts';
import { referencesExist } from './referencesExist.ts';
import { repeatsGrouped } from './repeatsGrouped.ts';
import { rowsComplete } from './rowsComplete.ts';
import { rowsDiffer } from './rowsDiffer.ts';
import { sentencesStop } from './sentencesStop.ts';
import { shape } from './shape.ts';
import { sharesBelievable } from './sharesBelievable.ts';
import { signsDrawnOrTold } from './signsDrawnOrTold.ts';
import { worksUsed } from './worksUsed.ts';
import { yearsInOrder } from './yearsInOrder.ts';

/** Every rule of the knowledge files, in the order they are run. */
export const checks: readonly Check[] = [
  shape,
  idsUnique,
  fileNames,
  referencesExist,
  signsDrawnOrTold,
  worksUsed,
  figuresSourced,
  figuresInOrder,
  countsFit,
  judgedFit,
  sharesBelievable,
  yearsInOrder,
  measuresInOrder,
  rowsComplete,
  rowsDiffer,
  habitsFit,
  campaignsFit,
  conditionsMet,
  makingComplete,
  repeatsGrouped,
  sentencesStop,
  entriesSorted,
  filesShort,
];
