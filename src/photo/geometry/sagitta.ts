/**
 * What radius has an arc of this chord and rise, and how sure?
 *
 * Method: r = c²/(8s) + s/2; the doubt by first-order propagation of both lengths, taken as independent.
 *
 * @param chord    length of the straight line between the arc's ends, > 0
 * @param sagitta  rise of the arc over the middle of the chord, > 0, in the unit of the chord
 * @returns the radius with its standard uncertainty, and the length of the arc: the lesser one where the rise is at most the radius
 * @source elementary geometry
 */
export function radiusFromSagitta(
  chord: number,
  sagitta: number,
  sigmaChord: number,
  sigmaSagitta: number,
): { radius: number; sigma: number; arcLength: number } {
  const radius = (chord * chord) / (8 * sagitta) + sagitta / 2;
  const perChord = chord / (4 * sagitta);
  const perSagitta = 0.5 - (chord * chord) / (8 * sagitta * sagitta);
  const half = 2 * Math.atan2(2 * sagitta, chord);
  return {
    radius,
    sigma: Math.hypot(perChord * sigmaChord, perSagitta * sigmaSagitta),
    arcLength: 2 * half * radius,
  };
}
