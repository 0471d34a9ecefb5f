import type { Figure } from './figureSchema.ts';
import { figureNumbers } from './figuresOf.ts';
import { in100 } from './in100.ts';
import type { Pooling } from './judgedSchema.ts';

/** What each judge said of a figure, by the letter of the judge. */
export type Judged = Readonly<Record<string, string>>;

/**
 * One figure from several judged apart: `in100` becomes their middle with its range, `apart` keeps what each said, the figure of
 * the file first.
 *
 * Each judgment is a normal curve over the log odds: its middle at the best value, its 5th and 95th percentile at lowest and highest,
 * widened as `pooling` says. The best value is the weighted mean of the middles; the range reaches 1.645 standard deviations of all the
 * curves laid together to either side, so that judges who disagree leave a wider range than any of them gave.
 *
 * @source the logarithmic opinion pool for the middle (Genest and Zidek 1986) and the linear pool’s variance for the range
 *   (Stone 1961), both from memory
 */
export function pooledFigure(figure: Figure, judged: Judged, { judges, house, widened }: Pooling): Figure {
  const said = [
    { text: figure.in100, weight: house },
    ...Object.entries(judged).map(([judge, text]) => ({
      text,
      weight: judges[judge]?.weight ?? 0,
    })),
  ].filter(({ weight }) => weight > 0);
  const curves = said.map(({ text, weight }) => ({ ...curveOf(text, widened), weight }));
  if (curves.length < 2 || curves.some(({ middle }) => !Number.isFinite(middle))) return figure;
  const whole = curves.reduce((sum, { weight }) => sum + weight, 0);
  const middle = curves.reduce((sum, curve) => sum + curve.weight * curve.middle, 0) / whole;
  const variance =
    curves.reduce(
      (sum, curve) => sum + curve.weight * (curve.deviation ** 2 + (curve.middle - middle) ** 2),
      0,
    ) / whole;
  const reach = to95 * Math.sqrt(variance);
  const [best, low, high] = [middle, middle - reach, middle + reach].map((at) =>
    in100(1 / (1 + Math.exp(-at))),
  );
  return { ...figure, in100: `${best}, ${low}–${high}`, apart: said.map(({ text }) => text) };
}

/** The 95 % point of the normal curve. */
const to95 = 1.645;

function curveOf(text: string, widened: number): { middle: number; deviation: number } {
  const { best, low, high } = figureNumbers({ in100: text });
  return {
    middle: logOdds(best),
    deviation: (widened * (logOdds(Math.min(high, 99.99)) - logOdds(Math.max(low, 0.01)))) / (2 * to95),
  };
}

function logOdds(of100: number): number {
  return Math.log(of100 / (100 - of100));
}
