import type { Measurements } from '../knowledge/measurementSchema.ts';
import type { Form, Knowledge } from '../knowledge/schema.ts';
import { fromDarkening } from './fromDarkening.ts';
import { fromGrain } from './fromGrain.ts';
import { fromOutlines } from './fromOutlines.ts';
import { fromSeatWidth } from './fromSeatWidth.ts';
import { fromToolMarks } from './fromToolMarks.ts';
import { fromWear } from './fromWear.ts';
import { findingsOn, type MeasuredFinding } from './measuredFinding.ts';
import type { Measurement } from './measurement.ts';

/** Findings with their likelihoods, and on whose word the likelihoods stand. */
export type Findings = {
  findings: MeasuredFinding[];
  basis: Measurements['outlines']['basis'];
  /** The most it may speak for one side, where the figures hold it to one. */
  mostRatio: number | null;
};

/**
 * What a measurement says of signs, the fitting one first; no findings where it tells nothing or no sign is about it.
 *
 * @param figures  of measurements.yaml
 * @param signs    of the knowledge: a sign that is not in it is left out
 * @param form     of the piece, where it is known: what its form can’t have is not told of it
 */
export function findingsFrom(
  measured: Measurement,
  figures: Measurements,
  signs: Knowledge['signs'],
  form?: Pick<Form, 'alterations'>,
): Findings {
  const told = spoken(measured, figures, signs, form);
  return { ...told, findings: told.findings.filter(({ sign }) => signs[sign] !== undefined) };
}

function spoken(
  measured: Measurement,
  figures: Measurements,
  signs: Knowledge['signs'],
  form: Pick<Form, 'alterations'> | undefined,
): Findings {
  const told = (
    of: { basis: Findings['basis']; mostRatio?: { value: number } },
    findings: MeasuredFinding[],
  ): Findings => ({ findings, basis: of.basis, mostRatio: of.mostRatio?.value ?? null });
  switch (measured.from) {
    case 'photo.twins':
      return told(figures.outlines, fromOutlines(measured, figures.outlines));
    case 'photo.colour-balance':
      return told(figures.darkening, fromDarkening(measured, figures.darkening));
    case 'wear.contact':
      return told(figures.wear, fromWear(measured, figures.wear, signs));
    case 'photo.toolmarks':
      return told(figures['tool-marks'], fromToolMarks(measured, figures['tool-marks']));
    case 'photo.grain-match':
      return told(figures.grain, fromGrain(measured, figures.grain));
    case 'wood.roundness':
      return told(figures.roundness, shrunk(figures.roundness[measured.part], measured.likelihoodRatio));
    case 'wood.panel-loss':
      return told(figures.panel, shrunk(figures.panel[measured.part], measured.likelihoodRatio));
    case 'sets.likeness':
      return told(figures['seat-width'], fromSeatWidth(measured, figures['seat-width'], form));
  }
}

/** Old wood against recent: fresh wood and wood that was made to look old have both not shrunk. */
function shrunk(signs: readonly string[], oldToRecent: number | null): MeasuredFinding[] {
  return oldToRecent === null ? [] : findingsOn(signs, { natural: oldToRecent, none: 1, imitated: 1 });
}
