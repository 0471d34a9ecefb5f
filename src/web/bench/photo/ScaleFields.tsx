import { scaleCard } from '../../../photo/geometry/scaleCard.ts';
import type { Marks } from '../../board/useMarks.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { LengthField } from '../../fields/LengthField.tsx';
import { faultWords } from '../benchContext.ts';
import { FindCard } from './FindCard.tsx';
import { MarkButtons } from './MarkButtons.tsx';
import type { ScaleLengths, Scaling } from './useScale.ts';

type Props = { scaling: Scaling; marks: Marks };

/** Where the scale of a photo comes from. */
export function ScaleFields({ scaling, marks }: Props) {
  const { way, lengths } = scaling;
  const length = (key: keyof ScaleLengths) => (mm: number | undefined) =>
    scaling.say({ ...lengths, [key]: mm });
  return (
    <section className="stack-tight photo-scale" aria-label="Scale">
      <ChoiceField
        label="Scale by"
        value={way}
        save={scaling.choose}
        choices={[
          { id: 'card', name: 'The printed card', note: 'Lying in the plane; found by itself.' },
          { id: 'rectangle', name: 'A rectangle', note: 'Four corners; both sides known.' },
          { id: 'distances', name: 'Four points', note: 'Four sides and one diagonal known.' },
          { id: 'known', name: 'One known length', note: 'Only for a plane seen squarely.' },
        ]}
      />
      {way === 'card' && <ByCard scaling={scaling} />}
      {(way === 'rectangle' || way === 'distances') && (
        <>
          <MarkButtons
            marks={marks}
            label="Marks of the scale"
            wanted={[{ id: 'scale-corners', name: 'the four corners', kind: 'corners' }]}
          />
          <div className="bench-fields" key={way}>
            <LengthField label="From corner 1 to corner 2" onLength={length('first')} />
            <LengthField label="From corner 2 to corner 3" onLength={length('second')} />
            {way === 'distances' && (
              <>
                <LengthField label="From corner 3 to corner 4" onLength={length('third')} />
                <LengthField label="From corner 4 to corner 1" onLength={length('fourth')} />
                <LengthField label="Across, from corner 1 to corner 3" onLength={length('diagonal')} />
              </>
            )}
          </div>
        </>
      )}
      {way === 'known' && (
        <>
          <MarkButtons
            marks={marks}
            label="Marks of the scale"
            wanted={[{ id: 'scale-line', name: 'the known length', kind: 'line' }]}
          />
          <div className="bench-fields">
            <LengthField label="How long it is" onLength={length('known')} />
          </div>
        </>
      )}
      {scaling.faults.length > 0 && (
        <p className="caution" role="alert">
          {faultWords(scaling.faults)}
        </p>
      )}
      {scaling.scale?.kind === 'plane' && (
        <p className="small" role="status">
          The plane is fixed{residual(scaling)}. {scaling.scale.rectified.says.join(' ')}
        </p>
      )}
    </section>
  );
}

function residual({ scale }: Scaling): string {
  if (scale?.kind !== 'plane' || scale.asked.image.length <= 4) return '';
  return `: its ${scale.asked.image.length} marks lie ${scale.rectified.residualPx.toFixed(2)} pixels off it, in the root mean square`;
}

function ByCard({ scaling }: { scaling: Scaling }) {
  const { card } = scaling;
  return (
    <>
      <p className="small">
        Print the card (
        <a href="/api/scale-card.pdf?paper=a4" target="_blank" rel="noreferrer">
          A4
        </a>
        ,{' '}
        <a href="/api/scale-card.pdf?paper=letter" target="_blank" rel="noreferrer">
          Letter
        </a>
        ) at full size. Before the first use measure its check line: {scaleCard.checkLine.words}. Lay it flat
        in the plane that is to be measured.
      </p>
      <FindCard card={card} />
    </>
  );
}
