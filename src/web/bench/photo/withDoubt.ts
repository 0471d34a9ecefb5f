import { formatInches } from '../../../units/length.ts';

/** A length with its standard uncertainty, in inches and millimetres; the fraction no finer than the doubt. */
export function withDoubt(mm: number, sigmaMm: number): string {
  const small =
    sigmaMm < 25.4 / 64 ? 'less than 1/64 in' : `${formatInches(sigmaMm, { denominator: 64 })} in`;
  const fraction = ([2, 4, 8, 16, 32] as const).find((each) => 25.4 / each <= sigmaMm) ?? 64;
  const places = sigmaMm < 1 ? 2 : 1;
  return `${formatInches(mm, { denominator: fraction })} in (${mm.toFixed(places)} mm), give or take ${sigmaMm.toFixed(places)} mm (${small})`;
}
