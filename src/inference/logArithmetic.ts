import { sum } from '../ground/statistics.ts';
import type { Arithmetic } from './arithmetic.ts';

/** Natural logarithms: slower, and without a floor. Nothing is −Infinity. */
export const logArithmetic: Arithmetic = {
  fresh: (length) => new Float64Array(length),
  takeTable(entries, values, offsets, base) {
    for (let i = 0; i < entries.length; i++) {
      entries[i] = (entries[i] as number) + Math.log(values[base + (offsets[i] as number)] as number);
    }
    return false;
  },
  takeMessage(entries, message, offsets) {
    for (let i = 0; i < entries.length; i++) {
      entries[i] = (entries[i] as number) + (message[offsets[i] as number] as number);
    }
    return false;
  },
  settle(entries) {
    const largest = entries.reduce((most, entry) => Math.max(most, entry), Number.NEGATIVE_INFINITY);
    if (largest === Number.NEGATIVE_INFINITY) return largest;
    for (let i = 0; i < entries.length; i++) entries[i] = (entries[i] as number) - largest;
    return largest;
  },
  sum(entries, offsets, length) {
    const largest = new Float64Array(length).fill(Number.NEGATIVE_INFINITY);
    entries.forEach((entry, i) => {
      const at = offsets[i] as number;
      if (entry > (largest[at] as number)) largest[at] = entry;
    });
    const sums = new Float64Array(length);
    entries.forEach((entry, i) => {
      const at = offsets[i] as number;
      if (entry !== Number.NEGATIVE_INFINITY)
        sums[at] = (sums[at] as number) + Math.exp(entry - (largest[at] as number));
    });
    return sums.map((value, at) =>
      value === 0 ? Number.NEGATIVE_INFINITY : Math.log(value) + (largest[at] as number),
    );
  },
  divide(over, under) {
    return over.map((value, i) =>
      value === Number.NEGATIVE_INFINITY ? value : value - (under[i] as number),
    );
  },
  shares(entries) {
    const largest = entries.reduce((most, entry) => Math.max(most, entry), Number.NEGATIVE_INFINITY);
    const weights = Array.from(entries, (entry) => Math.exp(entry - largest));
    const total = sum(weights);
    return weights.map((weight) => weight / total);
  },
};
