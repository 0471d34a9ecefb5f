import { sum } from '../ground/statistics.ts';
import type { Arithmetic } from './arithmetic.ts';

/** Between these a product can be scaled to a largest entry of 1 with no digit lost; 2.2e-308 is the floor. */
const [lowest, highest] = [1e-290, 1e15];

/** Plain numbers, brought to a largest entry of 1 after each clique. */
export const plainArithmetic: Arithmetic = {
  fresh: (length) => new Float64Array(length).fill(1),
  takeTable(entries, values, offsets, base) {
    let lost = false;
    for (let i = 0; i < entries.length; i++) {
      const before = entries[i] as number;
      const value = values[base + (offsets[i] as number)] as number;
      const product = before * value;
      if ((product < lowest && before !== 0 && value !== 0) || product > highest) lost = true;
      entries[i] = product;
    }
    return lost;
  },
  takeMessage(entries, message, offsets) {
    return plainArithmetic.takeTable(entries, message, offsets, 0);
  },
  settle(entries) {
    let largest = 0;
    for (const entry of entries) if (entry > largest) largest = entry;
    if (largest === 0) return Number.NEGATIVE_INFINITY;
    if (largest === 1) return 0;
    for (let i = 0; i < entries.length; i++) entries[i] = (entries[i] as number) / largest;
    return Math.log(largest);
  },
  sum(entries, offsets, length) {
    const sums = new Float64Array(length);
    for (let i = 0; i < entries.length; i++) {
      const at = offsets[i] as number;
      sums[at] = (sums[at] as number) + (entries[i] as number);
    }
    return sums;
  },
  divide(over, under) {
    return over.map((value, i) => (value === 0 ? 0 : value / (under[i] as number)));
  },
  shares(entries) {
    const total = sum(entries);
    return Array.from(entries, (entry) => entry / total);
  },
};
