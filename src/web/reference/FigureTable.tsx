import type { ReactNode } from 'react';
import { basisWord } from '../../knowledge/basisWord.ts';
import type { Figure } from '../../knowledge/figureSchema.ts';
import { groundsInWords } from '../../knowledge/groundsInWords.ts';
import type { Knowledge, Sign } from '../../knowledge/schema.ts';
import { citeShort } from '../examination/figureWords.ts';

/** A figure as it stands in a table. */
export type Line = { name: string; best: string; range: string; who: string; link?: string };

/** A figure with its range and who says so; where it does not say itself, the basis of its entry does. */
export function figureLine(
  name: string,
  figure: Figure,
  basis: Sign['basis'],
  sources: Knowledge['sources'],
): Line {
  const [best = '', range = ''] = figure.in100.split(', ');
  const own = figure.source !== undefined || figure.by !== undefined;
  const { source, at, by } = own ? figure : (basis ?? {});
  const words = [
    groundsInWords(figure),
    source === undefined ? '' : citeShort(source, sources),
    at ?? '',
    basisWord(by),
    figure.why ?? '',
  ];
  return { name, best, range, who: words.filter((one) => one !== '').join('; ') || 'no source given' };
}

type FigureTableProps = {
  caption: string;
  head: string;
  lines: readonly Line[];
  nameOf?: (line: Line) => ReactNode;
};

/** Figures with their ranges and who says so. */
export function FigureTable({ caption, head, lines, nameOf = (line) => line.name }: FigureTableProps) {
  return (
    <table className="figures">
      <caption>{caption}</caption>
      <thead>
        <tr>
          <th scope="col">{head}</th>
          <th scope="col">Best</th>
          <th scope="col">From–to</th>
          <th scope="col">Who says so</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.name}>
            <th scope="row">{nameOf(line)}</th>
            <td data-head="Best">{line.best}</td>
            <td data-head="From–to">{line.range}</td>
            <td data-head="Who says so">{line.who}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
