import type { ReactNode } from 'react';
import type { Piece } from '../../piece/piece.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { YearsField } from '../fields/YearsField.tsx';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { FeatureChoices } from '../pieces/FeatureChoices.tsx';
import type { UsedPiece } from '../record/usePiece.ts';

/** What the piece is called and said to be, and whether it is in the hand or only in photographs. */
export function ClaimFields({
  used,
  piece,
  background,
}: {
  used: UsedPiece;
  piece: Piece;
  background: ReactNode;
}) {
  const form = useKnowledge().forms[piece.form];
  const { readOnly } = used;
  const describe = (path: string[], to: string | [number, number] | undefined) =>
    used.record('piece-described', [{ path, ...(to === undefined ? {} : { to }) }]);
  return (
    <section className="stack" aria-labelledby="claim">
      <h2 id="claim">The piece, and what it is said to be</h2>
      <TextField
        label="Name of the piece"
        note="As it will head the opinion."
        value={piece.title}
        save={(words) => describe(['title'], words)}
        readOnly={readOnly}
      />
      <ChoiceField
        label="Seen"
        choices={[
          { id: 'in-hand', name: 'In the hand', note: 'It can be touched, turned and measured.' },
          {
            id: 'photo-only',
            name: 'In photographs only',
            note: 'Weighs less, and can’t settle a reading by itself.',
          },
        ]}
        value={piece.mode}
        save={(mode) => describe(['mode'], mode)}
        readOnly={readOnly}
      />
      {form === undefined ? null : (
        <FeatureChoices
          form={form}
          features={piece.features}
          choose={(feature, option) => describe(['features', feature], option)}
          readOnly={readOnly}
        />
      )}
      <div className="pair">
        <YearsField
          label="Said to be of"
          note="Years, as told or as the style has it: 1760–1790, 1760s, about 1775."
          value={piece.claim.period}
          save={(years) => describe(['claim', 'period'], years)}
          readOnly={readOnly}
        />
        <TextField
          label="Said to come from"
          note="Town or region."
          value={piece.claim.place ?? ''}
          save={(words) => describe(['claim', 'place'], words === '' ? undefined : words)}
          readOnly={readOnly}
        />
        <TextField
          label="Said to be by"
          note="Maker or shop."
          value={piece.claim.maker ?? ''}
          save={(words) => describe(['claim', 'maker'], words === '' ? undefined : words)}
          readOnly={readOnly}
        />
      </div>
      <TextField
        label="What they believe it is"
        note="Who believes it, and why."
        value={piece.engagement.belief}
        save={(words) => used.record('engagement-changed', [{ path: ['engagement', 'belief'], to: words }])}
        readOnly={readOnly}
        lines
      />
      {background}
    </section>
  );
}
