import type { Figure } from './figureSchema.ts';
import type { YamlPath } from './parseYaml.ts';

/** A figure of an entry, with the path it stands at. */
export type PlacedFigure = { path: YamlPath; figure: Figure };

/** Every figure in an entry that fits its schema, in the order it stands. */
export function figuresOf(value: unknown, path: YamlPath = []): PlacedFigure[] {
  if (value === null || typeof value !== 'object') return [];
  if (Array.isArray(value)) return value.flatMap((each, index) => figuresOf(each, [...path, index]));
  const fields = value as Record<string, unknown>;
  if (typeof fields.in100 === 'string') return [{ path, figure: fields as unknown as Figure }];
  return Object.entries(fields).flatMap(([key, each]) => figuresOf(each, [...path, key]));
}

/** The three numbers of a figure `98, 95–99`: best, lowest and highest, of 100. */
export function figureNumbers(figure: Figure): { best: number; low: number; high: number } {
  const [best = Number.NaN, low = Number.NaN, high = Number.NaN] = figure.in100.split(/, |–/).map(Number);
  return { best, low, high };
}
