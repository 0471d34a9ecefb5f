import type { Spread } from './roundness.ts';

/** What is known of a board or panel, before its loss across the grain is reckoned. */
export type PanelPart = {
  /** Width across the grain now; of what was made round, the diameter along the grain. */
  widthMm: number;
  /** Movement across the grain as a share for each percent of moisture, and how far single boards depart. */
  coefficient: Spread;
  moistureNow: Spread;
};

/** What a width across the grain should have lost since it was made. */
export type PanelLoss = {
  /** Positive: it became narrower. */
  lossMm: number;
  sdMm: number;
  widthAtMakingMm: number;
  /** Nineteen times in twenty the loss lies here, by two standard deviations. */
  rangeMm: [number, number];
};

/**
 * What a board has lost across its grain since it was made.
 *
 * Method: loss = w₀ · c · (M₀ − M₁) with the width w₀ at making, the movement c and the moistures M₀ at making and M₁ now, all independent. Where
 * the width is measured now, w₀ = w / (1 − c (M₀ − M₁)). Its spread is that of the product: w₀² [c² s² + σ_c² (δ² + s²)], with δ and s of the difference of the moistures.
 *
 * @param moistureAtMaking  M₀, percent
 * @param isWidthAtMaking   true where the width is that at making: a width along the grain, or the groove a panel was made for
 * @returns see its type
 * @throws RangeError if the width is not above 0
 * @source ours: moments of a product of independent quantities, on the movement equation of wood-handbook, chapter 13
 */
export function panelLoss(part: PanelPart, moistureAtMaking: Spread, isWidthAtMaking: boolean): PanelLoss {
  const { widthMm, coefficient, moistureNow } = part;
  if (!(widthMm > 0)) throw new RangeError(`panelLoss needs a width above 0, got ${widthMm}`);
  const dried = moistureAtMaking.mean - moistureNow.mean;
  const variance = moistureAtMaking.sd ** 2 + moistureNow.sd ** 2;
  const atMaking = isWidthAtMaking ? widthMm : widthMm / (1 - coefficient.mean * dried);
  const lossMm = atMaking * coefficient.mean * dried;
  const sdMm =
    atMaking * Math.sqrt(coefficient.mean ** 2 * variance + coefficient.sd ** 2 * (dried ** 2 + variance));
  return { lossMm, sdMm, widthAtMakingMm: atMaking, rangeMm: [lossMm - 2 * sdMm, lossMm + 2 * sdMm] };
}
