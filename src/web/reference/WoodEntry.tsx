import type { Wood } from '../../knowledge/woodSchema.ts';
import { Cited } from './Cited.tsx';
import { StandardTerms } from './StandardTerms.tsx';

type Read = NonNullable<Wood['shrinkage']>['read'];
type Line = { name: string; value: string; read: string; at: string };

/** A wood: its names, and how much it moves across the grain, with how far each figure was read. */
export function WoodEntry({ wood }: { wood: Wood }) {
  return (
    <div className="stack">
      <h2>{wood.name}</h2>
      <dl className="facts">
        <dt>Botanical name</dt>
        <dd>
          <i>{wood.botanical}</i> ({readWords(wood.botanicalRead)})
        </dd>
        {wood.otherNames.length === 0 ? null : (
          <>
            <dt>Also called</dt>
            <dd>{wood.otherNames.join(', ')}</dd>
          </>
        )}
        {wood.fibreSaturationPercent === undefined ? null : (
          <>
            <dt>Begins to move at</dt>
            <dd>{wood.fibreSaturationPercent} % moisture</dd>
          </>
        )}
      </dl>
      <table className="figures wordy">
        <caption>How it moves across the grain</caption>
        <thead>
          <tr>
            <th scope="col">Direction</th>
            <th scope="col">Figure</th>
            <th scope="col">How far it was read</th>
            <th scope="col">Where</th>
          </tr>
        </thead>
        <tbody>
          {linesOf(wood).map((line) => (
            <tr key={line.name}>
              <th scope="row">{line.name}</th>
              <td data-head="Figure">{line.value}</td>
              <td data-head="How far it was read">{line.read}</td>
              <td data-head="Where">{line.at}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {wood.note === undefined ? null : <p className="said">{wood.note}</p>}
      <p className="small soft">
        Shrinkage is from green to dry, in percent of the green width. The coefficient is the share of the
        width for each percent of moisture. Where one is missing, the bench works it out from the other and
        says so.
      </p>
      <StandardTerms aat={wood.aat} />
      <Cited ids={[wood.shrinkage?.source, wood.coefficient?.source].flatMap((id) => id ?? [])} />
    </div>
  );
}

function linesOf({ shrinkage, coefficient }: Wood): Line[] {
  const lines: Line[] = [];
  if (shrinkage !== undefined) {
    const { radialPercent, tangentialPercent, read, at = '' } = shrinkage;
    lines.push(
      {
        name: 'Shrinkage across the rings',
        value: `${radialPercent} %`,
        read: readWords(sideOf(read, 'radial')),
        at,
      },
      {
        name: 'Shrinkage along the rings',
        value: `${tangentialPercent} %`,
        read: readWords(sideOf(read, 'tangential')),
        at,
      },
    );
  }
  if (coefficient !== undefined) {
    const { radial, tangential, read, at = '' } = coefficient;
    if (radial !== undefined)
      lines.push({
        name: 'Coefficient across the rings',
        value: `${radial}`,
        read: readWords(sideOf(read, 'radial')),
        at,
      });
    lines.push({
      name: 'Coefficient along the rings',
      value: `${tangential}`,
      read: readWords(sideOf(read, 'tangential')),
      at,
    });
  }
  return lines;
}

function sideOf(read: Read, side: 'radial' | 'tangential'): Wood['botanicalRead'] {
  return typeof read === 'string' ? read : read[side];
}

function readWords(read: Wood['botanicalRead']): string {
  const words: Record<Wood['botanicalRead'], string> = {
    handbook: 'read in the handbook',
    transcription: 'read in a copy of its table',
    'trade page': 'read on a trade page',
    memory: 'from memory',
  };
  return words[read];
}
