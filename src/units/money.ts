/** An amount of money in whole minor units (cents, pence) with its ISO 4217 currency: 1 250.00 USD is 125000. */
export type Money = { minor: number; currency: string };

/**
 * An amount as an opinion prints it: `USD 1,250.00`.
 *
 * Method: ISO 4217 code, thousands by commas, as many decimals as the currency has minor units.
 *
 * @throws RangeError if the amount is not a whole number of minor units
 * @source ISO 4217: two minor digits, none for JPY and KRW; from memory
 */
export function formatMoney(money: Money): string {
  if (!Number.isSafeInteger(money.minor)) {
    throw new RangeError(`formatMoney needs a whole number of minor units, got ${money.minor}`);
  }
  const places = currenciesWithoutMinorUnit.includes(money.currency) ? 0 : 2;
  const digits = `${Math.abs(money.minor)}`.padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places).replace(/\B(?=(\d{3})+$)/g, ',');
  const part = places === 0 ? '' : `.${digits.slice(-places)}`;
  return `${money.minor < 0 ? '−' : ''}${money.currency} ${whole}${part}`;
}

const currenciesWithoutMinorUnit = ['JPY', 'KRW'];
