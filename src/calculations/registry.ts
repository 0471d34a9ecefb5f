import { datingLine } from './byHand/datingLine.ts';
import { datingMean } from './byHand/datingMean.ts';
import { datingOrder } from './byHand/datingOrder.ts';
import { evidenceCalibration } from './byHand/evidenceCalibration.ts';
import { inferenceInformation, inferencePosterior } from './byHand/inference.ts';
import { inferenceDecision } from './byHand/inferenceDecision.ts';
import { inferenceWeight } from './byHand/inferenceWeight.ts';
import { photoLens } from './byHand/photoLens.ts';
import { photoProfile } from './byHand/photoProfile.ts';
import { photoSagitta } from './byHand/photoSagitta.ts';
import { setsGroups } from './byHand/setsGroups.ts';
import { setsLine } from './byHand/setsLine.ts';
import { setsStatistics } from './byHand/setsStatistics.ts';
import { woodCoefficientFromShrinkage, woodShrinkageAt } from './byHand/woodShrinkage.ts';
import { worthAbsorption } from './byHand/worthAbsorption.ts';
import { worthRepeatSales } from './byHand/worthRepeatSales.ts';
import { datingSpanCalculation } from './dating.ts';
import type { Calculation } from './define.ts';
import { evidenceWeigh } from './evidence.ts';
import { evidenceAsks } from './evidenceAsks.ts';
import { evidenceSuspicion } from './evidenceSuspicion.ts';
import { findingsMeasured } from './findingsMeasured.ts';
import { photoColourDifference } from './photoColour.ts';
import { photoColourBalance } from './photoColourBalance.ts';
import { photoCircle, photoEllipse } from './photoGeometry.ts';
import { photoGrain } from './photoGrain.ts';
import { photoGrainMatch } from './photoGrainMatch.ts';
import { photoMeasure } from './photoMeasure.ts';
import { photoRectify } from './photoRectify.ts';
import { photoToolmarks } from './photoToolmarks.ts';
import { photoTwins } from './photoTwins.ts';
import { provenanceCheck } from './provenanceCheck.ts';
import { edgesSeeThrough } from './seeThrough.ts';
import { setsSize } from './sets.ts';
import { setsLikeness } from './setsLikeness.ts';
import { wearContact } from './wearContact.ts';
import { woodMoisture } from './wood.ts';
import { woodMovementCalculation } from './woodMovement.ts';
import { woodPanelLoss } from './woodPanel.ts';
import { woodRoundness } from './woodRoundness.ts';
import { worthByReading } from './worthByReading.ts';
import { worthComparables } from './worthComparables.ts';
import { worthDivision } from './worthDivision.ts';
import { worthIndex } from './worthIndex.ts';

/**
 * Those that no screen calls: plain statistics, networks, orders and single figures, for the terminal and HTTP, where the mathematics is
 * held against published examples and a case is worked by hand.
 */
export const byHand: readonly Calculation[] = [
  datingLine,
  datingMean,
  datingOrder,
  evidenceCalibration,
  inferenceDecision,
  inferenceInformation,
  inferencePosterior,
  inferenceWeight,
  photoLens,
  photoProfile,
  photoSagitta,
  setsGroups,
  setsLine,
  setsStatistics,
  woodCoefficientFromShrinkage,
  woodShrinkageAt,
  worthAbsorption,
  worthRepeatSales,
];

/** Every calculation the program knows, by id: the one door for screens, terminal, HTTP and reports. */
export const calculations: readonly Calculation[] = [
  ...byHand,
  datingSpanCalculation,
  evidenceAsks,
  evidenceSuspicion,
  evidenceWeigh,
  findingsMeasured,
  photoColourBalance,
  photoColourDifference,
  photoCircle,
  photoEllipse,
  photoGrain,
  photoGrainMatch,
  photoMeasure,
  photoRectify,
  setsLikeness,
  setsSize,
  woodMoisture,
  woodMovementCalculation,
  woodRoundness,
  photoTwins,
  edgesSeeThrough,
  wearContact,
  worthIndex,
  worthDivision,
  worthComparables,
  worthByReading,
  provenanceCheck,
  woodPanelLoss,
  photoToolmarks,
].sort((a, b) => (a.id < b.id ? -1 : 1));

/** The calculation with this id, undefined where there is none. */
export function findCalculation(id: string): Calculation | undefined {
  return calculations.find((each) => each.id === id);
}
