/** A body measure of adults, mm: mean and standard deviation of men and of women. */
export type BodyMeasure = { men: Spread; women: Spread };
type Spread = { mean: number; sd: number };

/**
 * Body measures of adults that decide where a piece is touched.
 *
 * @source Pheasant, Bodyspace (British adults of 19 to 65 years), as reproduced by an anthropometry course of the City
 *         University of Hong Kong: read there for popliteal height (the women’s spread worked out from its percentiles), elbow
 *         height, hip breadth, foot breadth; the others from memory of the same table, the middle of foot and buttock–popliteal length
 *         agreeing with figures read in another’s use of it
 */
export const bodyMeasures = {
  /** Floor to the underside of the knee, barefoot: read. */
  poplitealHeight: { men: { mean: 440, sd: 29 }, women: { mean: 400, sd: 27 } },
  /** Seat to the underside of the elbow: read. */
  elbowRestHeight: { men: { mean: 245, sd: 31 }, women: { mean: 235, sd: 29 } },
  /** Across the hips, sitting: read. */
  hipBreadth: { men: { mean: 360, sd: 29 }, women: { mean: 370, sd: 38 } },
  /** Across the foot: read. */
  footBreadth: { men: { mean: 95, sd: 6 }, women: { mean: 90, sd: 6 } },
  /** Heel to toe: from memory. */
  footLength: { men: { mean: 265, sd: 14 }, women: { mean: 235, sd: 12 } },
  /** Back of the seat to the hollow of the knee: from memory. */
  buttockPopliteal: { men: { mean: 495, sd: 32 }, women: { mean: 480, sd: 30 } },
  /** Seat to the shoulder: from memory. */
  shoulderHeightSitting: { men: { mean: 595, sd: 32 }, women: { mean: 555, sd: 31 } },
  /** Across the hand without the thumb: from memory. */
  handBreadth: { men: { mean: 85, sd: 5 }, women: { mean: 75, sd: 4 } },
} as const satisfies Record<string, BodyMeasure>;

/** How much a shoe lifts the foot, mm: Pheasant’s 25 for men, read in another’s use of it; taken for all. */
export const shoeMm = 25;

/**
 * How tall people were against those of the table: 0.97 ± 0.02.
 *
 * @source judgement: adult statures of the 18th and 19th century are commonly put 3 to 5 in 100 below those of today
 */
export const peopleScale = { mean: 0.97, sd: 0.02 } as const;

/**
 * What share of adults have a measure below a size.
 *
 * Method: normal in men and in women, half of each; both scaled as people were.
 */
export function shareBelow({ men, women }: BodyMeasure, mm: number): number {
  return (below(men, mm) + below(women, mm)) / 2;
}

/** The mean and standard deviation of a measure among men and women together. */
export function allAdults({ men, women }: BodyMeasure): { mean: number; sd: number } {
  const mean = (men.mean + women.mean) / 2;
  const within = (men.sd ** 2 + women.sd ** 2) / 2 + ((men.mean - women.mean) / 2) ** 2;
  const scaled = mean * peopleScale.mean;
  return { mean: scaled, sd: Math.hypot(Math.sqrt(within) * peopleScale.mean, mean * peopleScale.sd) };
}

function below({ mean, sd }: Spread, mm: number): number {
  return normalBelow(
    (mm - mean * peopleScale.mean) / Math.hypot(sd * peopleScale.mean, mean * peopleScale.sd),
  );
}

/**
 * The share of a normal spread below z standard deviations.
 *
 * @accuracy 1.5e-7
 * @source Abramowitz and Stegun 7.1.26
 */
export function normalBelow(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const series =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const erf = 1 - series * Math.exp(-x * x);
  return z < 0 ? (1 - erf) / 2 : (1 + erf) / 2;
}
