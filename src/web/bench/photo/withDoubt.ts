import { told } from '../../../units/doubt.ts';
import { formatInches } from '../../../units/length.ts';

/** A length with its doubt as it is told, about 95 in 100, in inches and millimeters; the fraction no finer than the standard uncertainty. */
export function withDoubt(mm: number, sigmaMm: number): string {
  const doubtMm = told(sigmaMm);
  const small =
    doubtMm < 25.4 / 64 ? 'less than 1/64 in' : `${formatInches(doubtMm, { denominator: 64 })} in`;
  const fraction = ([2, 4, 8, 16, 32] as const).find((each) => 25.4 / each <= sigmaMm) ?? 64;
  const places = sigmaMm < 1 ? 2 : 1;
  return `${formatInches(mm, { denominator: fraction })} in (${mm.toFixed(places)} mm), give or take ${doubtMm.toFixed(places)} mm (${small})`;
}
