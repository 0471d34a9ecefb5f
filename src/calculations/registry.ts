import { datingSpanCalculation } from './dating.ts';
import { datingLine } from './datingLine.ts';
import { datingMean } from './datingMean.ts';
import { datingOrder } from './datingOrder.ts';
import type { Calculation } from './define.ts';
import { evidenceWeigh } from './evidence.ts';
import { evidenceAsks } from './evidenceAsks.ts';
import { evidenceCalibration } from './evidenceCalibration.ts';
import { findingsMeasured } from './findingsMeasured.ts';
import { inferenceInformation, inferencePosterior } from './inference.ts';
import { inferenceDecision } from './inferenceDecision.ts';
import { inferenceWeight } from './inferenceWeight.ts';
import { photoColourDifference } from './photoColour.ts';
import { photoColourBalance } from './photoColourBalance.ts';
import { photoCircle, photoEllipse, photoLens, photoSagitta } from './photoGeometry.ts';
import { photoGrain } from './photoGrain.ts';
import { photoGrainMatch } from './photoGrainMatch.ts';
import { photoMeasure } from './photoMeasure.ts';
import { photoProfile } from './photoProfile.ts';
import { photoRectify } from './photoRectify.ts';
import { photoToolmarks } from './photoToolmarks.ts';
import { photoTwins } from './photoTwins.ts';
import { edgesSeeThrough } from './seeThrough.ts';
import { setsSize } from './sets.ts';
import { setsGroups } from './setsGroups.ts';
import { setsLikeness } from './setsLikeness.ts';
import { setsLine } from './setsLine.ts';
import { setsStatistics } from './setsStatistics.ts';
import { wearContact } from './wearContact.ts';
import { woodCoefficientFromShrinkage, woodMoisture, woodShrinkageAt } from './wood.ts';
import { woodMovementCalculation } from './woodMovement.ts';
import { woodPanelLoss } from './woodPanel.ts';
import { woodRoundness } from './woodRoundness.ts';

/** Every calculation the program knows, by id: the one door for screens, terminal, HTTP and reports. */
export const calculations: readonly Calculation[] = [
  datingLine,
  datingMean,
  datingOrder,
  datingSpanCalculation,
  evidenceAsks,
  evidenceCalibration,
  evidenceWeigh,
  findingsMeasured,
  inferenceDecision,
  inferenceInformation,
  inferencePosterior,
  inferenceWeight,
  photoColourBalance,
  photoColourDifference,
  photoCircle,
  photoEllipse,
  photoGrain,
  photoGrainMatch,
  photoLens,
  photoMeasure,
  photoProfile,
  photoRectify,
  photoSagitta,
  setsGroups,
  setsLikeness,
  setsSize,
  setsLine,
  setsStatistics,
  woodCoefficientFromShrinkage,
  woodMoisture,
  woodMovementCalculation,
  woodRoundness,
  woodShrinkageAt,
  photoTwins,
  edgesSeeThrough,
  wearContact,
  woodPanelLoss,
  photoToolmarks,
].sort((a, b) => (a.id < b.id ? -1 : 1));

/** The calculation with this id, undefined where there is none. */
export function findCalculation(id: string): Calculation | undefined {
  return calculations.find((each) => each.id === id);
}
