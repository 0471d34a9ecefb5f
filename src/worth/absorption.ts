/** A year of selling off a block. */
export type SoldYear = { year: number; sold: number; net: number; presentValue: number };

/** What a block of like pieces would bring, sold off over years. */
export type Absorption = {
  schedule: SoldYear[];
  presentValue: number;
  /** All of them at their single value, today. */
  aggregate: number;
  discountPercent: number;
};

/**
 * What is a block of like pieces worth, where the market takes only so many a year?
 *
 * Method: as many a year as the market takes, at a price that grows, less commission, each year's proceeds brought to today; they come in
 * at the end of the year.
 *
 * @param rates  as shares: 0.08 for eight percent
 * @source discounted absorption, common practice of appraisers
 */
export function absorption(
  items: number,
  unitValue: number,
  soldPerYear: number,
  rates: { discount: number; growth: number; commission: number },
): Absorption {
  const years = Math.ceil(items / soldPerYear);
  const schedule = Array.from({ length: years }, (_, index): SoldYear => {
    const year = index + 1;
    const sold = Math.min(soldPerYear, items - index * soldPerYear);
    const net = sold * unitValue * (1 + rates.growth) ** year * (1 - rates.commission);
    return { year, sold, net, presentValue: net / (1 + rates.discount) ** year };
  });
  const presentValue = schedule.reduce((sum, each) => sum + each.presentValue, 0);
  const aggregate = items * unitValue;
  return { schedule, presentValue, aggregate, discountPercent: 100 * (1 - presentValue / aggregate) };
}
